/** The same call again within the time replaces the one before. */
function later(time, does) {
  let waiting;
  return () => {
    clearTimeout(waiting);
    waiting = setTimeout(does, time);
  };
}
