// What answers a search, and in which order. An entry is [address, title, other names, weight, text],
// and one for an emergency has a sixth part: the phrases that somebody types then.

const PARTS = [12, 10, 1];
const BEGINNING = 0.7;
const EMERGENCIES = 3;

// Entries by their words, made once: for each word the entries that it stands in, each as its number times four and the
// part where it weighs most (title, other names, text). A phone walks no text when a key is pressed.
function makeReady(entries) {
  const places = new Map();
  entries.forEach((entry, number) => {
    [entry[1], entry[2], [entry[4]].concat(entry[5] || []).join(" ")].forEach((text, part) => {
      for (const word of wordsOf(text)) {
        const there = places.get(word);
        if (!there) places.set(word, [number * 4 + part]);
        else if (there[there.length - 1] >> 2 !== number) there.push(number * 4 + part);
      }
    });
  });
  const emergencies = entries.filter((entry) => entry[5]).map((entry) => ({
    entry,
    phrases: entry[5].map((phrase) => ` ${wordsOf(phrase).join(" ")} `),
  }));
  return { entries, places, words: [...places.keys()].sort(), emergencies };
}

/** What to do now: the entries whose emergency phrases stand in what was typed, those with the most words of them first. */
function urgent(words, emergencies) {
  const typed = ` ${words.join(" ")} `;
  const counted = emergencies.map(({ entry, phrases }) => ({
    entry,
    count: phrases.filter((phrase) => typed.includes(phrase)).join("").split(" ").filter(Boolean).length,
  }));
  return counted.filter((one) => one.count).sort((a, b) => b.count - a.count).slice(0, EMERGENCIES).map((one) => one.entry);
}

/** The words of the book that begin so, the word itself first; none where nothing does. */
function beginning(word, words) {
  let from = 0;
  for (let to = words.length; from < to;) {
    const middle = (from + to) >> 1;
    if (words[middle] < word) from = middle + 1;
    else to = middle;
  }
  let end = from;
  while (end < words.length && words[end].startsWith(word)) end += 1;
  return words.slice(from, end);
}

/** How much a word weighs in each entry: whole words more than beginnings. */
function weightsOf(choices, { entries, places, words }) {
  const weights = new Float64Array(entries.length);
  for (const word of choices) {
    for (const one of beginning(word, words)) {
      const share = one === word ? 1 : BEGINNING;
      for (const place of places.get(one)) {
        const weight = PARTS[place & 3] * share;
        if (weight > weights[place >> 2]) weights[place >> 2] = weight;
      }
    }
  }
  return weights;
}

/** The best of all, in their order, without putting all in order. */
function best(scored, most) {
  const isBefore = (a, b) => a.score > b.score || (a.score === b.score && a.entry[1] < b.entry[1]);
  const found = [];
  for (const one of scored) {
    if (found.length === most && !isBefore(one, found[most - 1])) continue;
    let at = found.length;
    while (at > 0 && isBefore(one, found[at - 1])) at -= 1;
    found.splice(at, 0, one);
    found.length = Math.min(found.length, most);
  }
  return found;
}

// The best entries for what was typed: each word must stand somewhere. A word that stands nowhere in the book gives way
// to those nearest to it; `meant` says which. An emergency is answered first, whatever else was typed with it.
function search(typed, ready, known, most = 30) {
  const meant = [];
  const given = wordsOf(typed);
  const words = given.map((word) => {
    if (beginning(word, ready.words).length) return [word];
    const near = nearest(word, known);
    if (near.length) meant.push(near[0]);
    return near.length ? near : [word];
  });
  if (!words.length) return { found: [], meant };
  const now = urgent(words.map((choices) => choices[0]), ready.emergencies);
  const phrase = given.join(" ");
  const weights = words.map((choices) => weightsOf(choices, ready));
  const scored = [];
  ready.entries.forEach((entry, number) => {
    let score = 0;
    for (const one of weights) {
      if (one[number] === 0) return;
      score += one[number];
    }
    // Where the whole phrase is a title or another name, each word of it weighs as much as a name does.
    if (score >= PARTS[1] * words.length) {
      const [title, names] = [entry[1], entry[2]].map((text) => wordsOf(text).join(" "));
      if (phrase === title || ` ${names} `.includes(` ${phrase} `)) score += PARTS[0];
    }
    scored.push({ entry, score: (score / words.length) * entry[3] });
  });
  const rest = best(scored, most).map((one) => one.entry).filter((entry) => !now.includes(entry));
  return { found: now.concat(rest).slice(0, most), meant };
}
