
/** A time of the place, to the minute, as somebody says when he looked at a hold point; empty where that was taken back. */
const isLocalTime = (text) => text === "" || (typeof text === "string" && isTime(`${text}:00.000Z`));
