// Words of a text, and how far a mistyped word is from a word of the book.

/** The words of a text: small letters and digits, marks taken off (é is e). */
function wordsOf(text) {
  return text.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toLowerCase().match(/[a-z0-9]+/g) || [];
}

/** How many slips a word of that length may have. Two slips in a shorter word make another word: bleeding, bedding. */
function slipsAllowed(length) {
  return length < 4 ? 0 : length < 10 ? 1 : 2;
}

/** Slips between two words: letters too many, too few, wrong or swapped. More than `most` comes back as most + 1. */
function slips(one, other, most) {
  if (Math.abs(one.length - other.length) > most) return most + 1;
  /** @type {number[] | null} */
  let before = null;
  let last = [...Array(other.length + 1).keys()];
  for (let i = 1; i <= one.length; i += 1) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= other.length; j += 1) {
      const same = one[i - 1] === other[j - 1];
      row[j] = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0 : 1));
      if (before && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]) row[j] = Math.min(row[j], before[j - 2] + 1);
      least = Math.min(least, row[j]);
    }
    if (least > most) return most + 1;
    [before, last] = [last, row];
  }
  return last[other.length];
}

/** Whether one wrong letter makes a short word another one (roof, room), where a swap is a slip of the fingers (tupe, tpue). */
function isOtherWord(one, other) {
  return one.length < 6 && one.length === other.length && [...one].sort().join() !== [...other].sort().join();
}

/** The words of the book nearest to a mistyped one; with no slip more than the nearest has. */
function nearest(word, known) {
  const most = slipsAllowed(word.length);
  let fewest = most + 1;
  let found = [];
  for (const other of known) {
    if (most === 0) break;
    // The first letter is hardly ever wrong; a swap may bring the second one to its place.
    if (other[0] !== word[0] && other[0] !== word[1]) continue;
    // Of a longer word the beginning may be meant; it counts as one slip more than the whole word would.
    const longer = other.length > word.length + most;
    const like = longer ? other.slice(0, word.length) : other;
    if (isOtherWord(word, like)) continue;
    const count = longer ? slips(word, like, most) + 1 : slips(word, like, Math.min(most, fewest));
    if (count < fewest) [fewest, found] = [count, []];
    if (count === fewest && count <= most) found.push(other);
  }
  return found.slice(0, 12);
}
