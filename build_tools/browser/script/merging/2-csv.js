// The lines of records as CSV (RFC 4180).

const COLUMNS = ["job", "space", "procedure", "revision", "step", "title", "kind", "what", "limits", "entry", "state", "by", "at"];

// What a spreadsheet would run, behind nothing that it sees: build_tools/book/spreadsheet.py says why.
const FORMULA = /(^|[;\t\r\n])([\0- "\x7f-\xa0\xad\u061c\u1680\u180e\u2000-\u200f\u2028-\u202f\u205f-\u206f\u3000\ufeff]*)(?=[=+@＝＋－＠﹦﹢﹣﹫-])(?![+-] *\d[\d .,/⁄½¼¾⅛⅜⅝⅞]*[\w"'°′″% ]*(?:$|[;\t\r\n]))/g;

/** A cell; what a spreadsheet would take for a formula is marked as text, but for figures. */
function cell(text) {
  const marked = text.replace(FORMULA, "$1'$2");
  const safe = /^[\t\r\n]/.test(marked) ? `'${marked}` : marked;
  return /[",;\t\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

const csvOf = (lines) => [COLUMNS, ...lines.map((line) => COLUMNS.map((name) => line[name]))].map((cells) => `${cells.map(cell).join(",")}\r\n`).join("");
