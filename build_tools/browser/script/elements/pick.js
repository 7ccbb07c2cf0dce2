
/** The ways as buttons, one of which is pressed; `chosen` is told which. */
function waysToPick(ways, name, label, chosen) {
  const radios = ways.map((way) => make("input", { type: "radio", name, value: way }));
  for (const radio of radios) radio.addEventListener("change", () => chosen(radio.value));
  const element = make("div", { class: "choose", role: "radiogroup", "aria-label": label }, ...radios.map((radio) => make("label", {}, radio, make("span", {}, radio.value))));
  return { element, show: (way) => radios.forEach((radio) => (radio.checked = radio.value === way)) };
}
