// The interface of the compiled calculators: a page's scripts use nothing else of them. The bundle puts python.js and the
// functions of the shared modules before it, in one scope: `answering$read_one` is read_one of calculators/answering.py.
/** @type {Crew["calculators"]} */
const calculators = {};
/** @type {Record<string, any>} */
const readers = {};

// The functions that stop or catch, in place of calculators/declaration.py, scanning.py and attempts.py.
function declaration$refuse(input, message) {
  throw { stop: true, input, message };
}

function scanning$unreadable(text, why) {
  declaration$refuse("", `'${text}' ${why}`);
}

function attempts$read_or_why(text, quantity, unit) {
  try {
    return [quantity === "plan" ? readers.plan(text) : reading$read(text, quantity, unit), ""];
  } catch (/** @type {any} */ stopped) {
    if (!stopped.stop) throw stopped;
    return [null, stopped.message];
  }
}

// Inputs and outputs from the rows that build_tools/browser/declarations.py writes, with what these leave out. Labels and
// choices stand on the page: a form puts them in.
const inputOf = (
  [name, quantity, unit = "", other = null, least = null, most = null, usual = null, ways = [], columns = [], rule = null]
) => ({
  name, label: "", quantity, unit, least, most, usual, default: other, ways, rule, choices: [], columns: columns.map(inputOf)
});
const outputOf = ([name, quantity, unit = "", step = 0, rounds = "nearest", ways = [], columns = [], label = ""]) => ({
  name, label, quantity, unit, step, rounds, ways, columns: columns.map(outputOf)
});

// What a person typed never throws: a refusal becomes {input, message}, and so does a fault of ours.
function tried(work, name = "") {
  try {
    return work();
  } catch (/** @type {any} */ stopped) {
    const { input, message } = stopped.stop ? stopped : { message: `This cannot be worked out here: ${stopped}` };
    return { input: input || name, message };
  }
}

function complete(name, values) {
  const given = {}, { inputs } = calculators[name].declaration;
  for (const { name: one } of inputs) if ((values[one] ?? null) !== null) given[one] = values[one];
  return answering$filled(inputs, given);
}

/** @type {Crew} */
const crew = {
  calculators,

  // Called by a calculator's own script; `more` reads what few calculators take: plans, rows.
  add({ name, inputs, outputs }, answers, more, draws) {
    Object.assign(readers, more);
    const declaration = { name, inputs: inputs.map(inputOf), outputs: outputs.map(outputOf) };
    // A calculator's function takes its inputs in the order of their declaration.
    calculators[name] = { declaration, draws, call: (values) => answers(...declaration.inputs.map((one) => values[one.name])) };
  },

  // A written figure in the unit of the inside; null for what cannot be read.
  read: (text, quantity, unit) => attempts$read_or_why(String(text), quantity, unit)[0],

  // Why a written figure cannot be read; nothing where it can.
  why: (text, quantity, unit) => attempts$read_or_why(String(text), quantity, unit)[1],

  write: (value, quantity, unit, step = 0, rounds = "nearest") =>
    writing_units$write(value, quantity, unit, step, rounds),

  // As a person gave it: with as many places as it takes.
  exactly: writing_units$exactly,

  // A value of an input as a person gave it.
  asGiven: (item, value) => limits$as_given(item, value, false),

  // The unit that a bare number means.
  unit: (quantity, unit, metric) => metric$unit_in(quantity, unit, metric === true),

  // A typed input, text or a list of rows of texts: {value} or {input, message}.
  readInput: (name, inputName, given, metric) => tried(() => {
    const item = /** @type {Input} */ (calculators[name].declaration.inputs.find((one) => one.name === inputName)), { label } = item;
    if (item.quantity !== "rows") {
      return { value: answering$read_one(item, String(given), inputName, label, metric === true) };
    }
    const rows = Array.isArray(given) ? given : readers.split(item, String(given), inputName, label);
    return { value: readers.rows(item, rows, inputName, label, metric === true) };
  }, inputName),

  // Values of the inside for all inputs: those given, and the defaults for the others.
  complete,

  // {answer} or {input, message}.
  run: (name, values, metric) => tried(() => {
    const { declaration, call } = calculators[name], all = complete(name, values);
    answering$keep_limits(declaration.inputs, all, metric === true);
    return { answer: answering$with_cautions(declaration.inputs, all, call(all), metric === true) };
  }),

  // The outputs as text: a list of {name, label, text}; an output of rows has rows too, each its texts by column.
  shown: (name, answer, metric) => answering$shown_lines(calculators[name].declaration.outputs, answer, metric === true)
};
