// Text of somebody else's file on a page: build_tools/book/printable.py says why, and a test holds the two together.

const SPACES_OF_A_LINE = " \u00a0\u2007\u2009\u202f";
const SHORT = { "\b": "\\b", "\t": "\\t", "\n": "\\n", "\f": "\\f", "\r": "\\r" };
const codeOf = (unit) => SHORT[unit] ?? `\\u${unit.charCodeAt(0).toString(16).padStart(4, "0")}`;

/** The text on one line, with control, direction and other unseen characters as JSON writes them. */
const printable = (text) => text.replace(/[\p{C}\p{Z}]/gu, (one) => (SPACES_OF_A_LINE.includes(one) ? one : one.split("").map(codeOf).join("")));
