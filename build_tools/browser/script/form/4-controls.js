// The control of a field, by its quantity: a line to type on, buttons to choose from, lines of text, or rows.

/** A line to type on, with its unit and, for a figure, a button to each side. */
function line(field) {
  const { input, id } = field;
  const type = { id, type: "text", inputmode: keys(input), autocomplete: "off", autocapitalize: "off", spellcheck: "false" };
  const typing = make("input", { ...type, enterkeyhint: "done", "aria-describedby": field.describes });
  const unit = make("span", { class: "unit" });
  const steps = isFigure(input) && input.unit !== "1:n";
  const control = make("div", { class: "puts-in" });
  if (steps) control.append(stepButton(field, -1));
  control.append(typing, unit);
  if (steps) control.append(stepButton(field, 1));
  const taken = (way) => {
    field.text = whole(withUnit(input, typing.value), way);
    showAround(field);
    field.form.changed(field);
  };
  let way = "";
  const ways = input.ways.length ? waysToPick(input.ways, `${id}-way`, input.label, (picked) => {
    way = picked;
    field.chose = true;
    taken(way);
  }) : null;
  typing.addEventListener("input", () => {
    field.typed = typing.value;
    if (!field.chose) way = "";
    ways?.show(way);
    taken(way);
  });
  typing.addEventListener("change", () => field.form.settled(field));
  typing.addEventListener("keydown", (event) => {
    const by = { ArrowUp: 1, ArrowDown: -1 }[event.key];
    if (!by || !steps) return;
    event.preventDefault();
    step(field, by);
  });
  field.show = () => {
    field.typed = null;
    const parts = parted(input.ways, field.text);
    way = parts.way;
    ways?.show(way);
    typing.value = inBox(input, parts.size);
    tell(unit, unitWords(unitOf(input)));
    unit.hidden = unit.textContent === "";
  };
  const label = make("label", { class: "asks", for: id }, input.label);
  return { label, control: ways ? make("div", { class: "two-ways" }, ways.element, control) : control };
}

/** The keys that a phone shows. The pad for decimals has no minus and no fraction bar. */
function keys(input) {
  if (input.quantity === "count") return "numeric";
  const plainFigure = ["percent", "number", "mass", "time", "temperature", "angle"].includes(input.quantity);
  return plainFigure && !(input.least < 0) ? "decimal" : "text";
}

function stepButton(field, ways) {
  const words = fill(ways < 0 ? say.less : say.more, { what: field.input.label });
  return button(ways < 0 ? "−" : "+", () => step(field, ways), { class: "step-by", "aria-label": words });
}

/** To the next mark up or down; from a figure that cannot be read, from where the field started. */
function step(field, ways) {
  const { input } = field;
  const valueOf = (text) => crew.read(parted(input.ways, text).size, input.quantity, input.unit);
  const value = valueOf(field.text) ?? valueOf(field.start);
  if (value === null) return;
  const way = field.chose ? parted(input.ways, field.text).way : "";
  const limits = input.ways.length ? { ...input, least: 0, most: way === input.ways[1] ? -input.least : input.most } : input;
  put(field, whole(stepped(limits, value, ways), way));
  field.form.changed(field);
}

/** Big buttons, one of which is pressed. */
function choices(field) {
  const { input, id } = field;
  const control = field.parts.querySelector(".choose");
  const radios = [...control.querySelectorAll("input")];
  for (const radio of radios) {
    radio.name = id;
    radio.addEventListener("change", () => {
      field.text = radio.value;
      showAround(field);
      field.form.changed(field);
    });
  }
  field.show = () => {
    const { value } = readField(field);
    const name = value === true ? "yes" : value === false ? "no" : value;
    for (const radio of radios) radio.checked = radio.value === name;
  };
  return { label: make("p", { class: "asks", id: `${id}-asks` }, input.label), control };
}

/** Lines of text: a plan, one shape a line. */
function area(field) {
  const { input, id } = field;
  const typing = make("textarea", { id, rows: "3", autocomplete: "off", autocapitalize: "off", spellcheck: "false", "aria-describedby": `${field.describes} ${id}-like` });
  typing.addEventListener("input", () => {
    field.text = typing.value.replace(/\s*\n\s*/g, "; ");
    showAround(field);
    field.form.changed(field);
  });
  typing.addEventListener("change", () => field.form.settled(field));
  field.show = () => {
    typing.value = field.text.replace(/;\s*/g, "\n");
  };
  const like = make("p", { class: "help", id: `${id}-like` }, say.plan_like);
  return { label: make("label", { class: "asks", for: id }, input.label), control: make("div", {}, like, typing) };
}
