
/** A time as the box for it takes it: in the time of this place. */
function localTime(date) {
  return new Date(date.getTime() - date.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
}
