// A line of a day: its box, its tick, and whether the amount changed since.

const say = {WORDS};

/** A line as it stands on the page; `changed` is told after each tap. A tick for another amount counts as none. */
function lineOf(item, day, changed) {
  const box = item.querySelector("input");
  const now = item.querySelector(".amount")?.textContent ?? "";
  const was = make("span", { class: "was" });
  const key = keyOf(day, item.dataset.line);
  /** @type {{ key: string, comes: boolean, tick: { at: string, amount: string } | null, isOn: boolean, show: () => void }} */
  const line = { key, comes: Boolean(item.closest(".delivered")), tick: null, isOn: false, show };
  item.querySelector("label > span").append(was);
  box.addEventListener("change", () => changed(keep([key], box.checked ? { at: new Date().toISOString(), amount: now } : null)));
  function show() {
    line.tick = kept(key);
    line.isOn = line.tick?.amount === now;
    box.checked = line.isOn;
    tell(was, line.tick && !line.isOn ? ` ${fill(say.load_was, { was: line.tick.amount, now })}` : "");
  }
  return line;
}
