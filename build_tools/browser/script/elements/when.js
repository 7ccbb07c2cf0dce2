/** A day and hour as people say it, in the time of this place. */
function whenWords(iso) {
  const when = new Date(iso);
  return Number.isNaN(when.getTime()) ? iso : when.toLocaleString(document.documentElement.lang, { month: "short", day: "numeric", hour: "numeric", minute: "2-digit" });
}
