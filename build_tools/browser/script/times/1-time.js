// The times of entries, which say of two entries which one counts: only one that is in the calendar is a time.
// build_tools/records/model.py has the same rule.

const TIME = /^(?!0000)\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/;

/** A time in UTC to the millisecond, as toISOString writes it. */
function isTime(text) {
  if (typeof text !== "string" || !TIME.test(text)) return false;
  const time = new Date(text);
  return !Number.isNaN(time.getTime()) && time.toISOString() === text;
}
