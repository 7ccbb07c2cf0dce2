// What answers a search, and in which order. An entry is [address, title, other names, weight, text].

const TITLE = 12, NAME = 10, TEXT = 1;

/** How well a word stands in a text: 1 as a whole word, 0.7 as its beginning, 0 not at all. Both in small letters. */
function stands(word, text) {
  let best = 0;
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + 1)) {
    if (at > 0 && /[a-z0-9]/.test(text[at - 1])) continue;
    const next = text[at + word.length];
    if (next === undefined || !/[a-z0-9]/.test(next)) return 1;
    best = 0.7;
  }
  return best;
}

/** The weight of one word in an entry that has been made ready. */
function weightOf(word, ready) {
  return Math.max(TITLE * stands(word, ready.title), NAME * stands(word, ready.names), TEXT * stands(word, ready.text));
}

/** Entries with their texts in small letters, made once. */
function makeReady(entries) {
  const low = (text) => wordsOf(text).join(" ");
  return entries.map((entry) => ({ entry, title: low(entry[1]), names: low(entry[2]), text: low(entry[4]), weight: entry[3] }));
}

/**
 * The best entries for what was typed: each word must stand somewhere. A word that stands nowhere in the book gives way
 * to those nearest to it; `meant` says which.
 */
function search(typed, ready, known, most = 30) {
  const meant = [];
  const words = wordsOf(typed).map((word) => {
    if (ready.some((one) => weightOf(word, one) > 0)) return [word];
    const near = nearest(word, known);
    if (near.length) meant.push(near[0]);
    return near.length ? near : [word];
  });
  if (!words.length) return { found: [], meant };
  const phrase = wordsOf(typed).join(" ");
  const scored = [];
  for (const one of ready) {
    let score = 0;
    for (const choices of words) {
      const weight = Math.max(...choices.map((word) => weightOf(word, one)));
      if (weight === 0) { score = 0; break; }
      score += weight;
    }
    if (score === 0) continue;
    if (phrase === one.title || ` ${one.names} `.includes(` ${phrase} `)) score += TITLE;
    scored.push({ entry: one.entry, score: (score / words.length) * one.weight });
  }
  scored.sort((a, b) => b.score - a.score || (a.entry[1] < b.entry[1] ? -1 : 1));
  return { found: scored.slice(0, most).map((one) => one.entry), meant };
}
