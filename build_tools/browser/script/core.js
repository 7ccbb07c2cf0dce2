// The interface of the compiled calculators: a page's scripts use nothing else of them. Made by compile.py.
// compile.py puts the library and the functions before this, all of it in one scope, and writes the names in it short.
var given = {GIVEN}, planOf = null;
// The functions that stop or catch, in place of calculators/declaration.py, scanning.py and attempts.py.
var host = {
  refuse: function (input, message) {
    throw { stop: true, input: input, message: message };
  },
  unreadable: function (text, why) {
    throw { stop: true, input: "", message: "'" + text + "' " + why };
  },
  read_or_why: function (text, quantity, unit) {
    try {
      return [quantity === "plan" ? planOf(text) : modules.reading.read(text, quantity, unit), ""];
    } catch (stopped) {
      if (!stopped.stop) throw stopped;
      return [null, stopped.message];
    }
  }
};
var calculators = {};

function whole(declared, items) {
  declared.forEach(function (one) {
    Object.keys(items).forEach(function (name) {
      if (one[name] === undefined) one[name] = items[name];
    });
    whole(one.columns, items);
  });
}

function inputOf(name, inputName) {
  return calculators[name].declaration.inputs.filter(function (one) { return one.name === inputName; })[0];
}

// What a person typed never throws: a refusal becomes {input, message}, and so does a fault of ours.
function tried(work, input) {
  try {
    return work();
  } catch (stopped) {
    if (stopped && stopped.stop) return { input: stopped.input || input || "", message: stopped.message };
    return { input: input || "", message: "This cannot be worked out here: " + stopped };
  }
}

function complete(name, values) {
  var given = {};
  calculators[name].declaration.inputs.forEach(function (item) {
    if (values[item.name] !== undefined && values[item.name] !== null) given[item.name] = values[item.name];
    else if (item.standard) given[item.name] = item.standard.value;
  });
  return modules.answering.filled(calculators[name].declaration.inputs, given);
}

return {
  given: given,
  host: host,
  calculators: calculators,

  // Called by a calculator's own script. What a declaration leaves out is put in here.
  add: function (declaration, call, readPlan) {
    if (readPlan) planOf = readPlan;
    whole(declaration.inputs, {
      unit: "", default: null, least: null, most: null, usual: null, rule: null, choices: [], columns: [], help: "", ways: [],
      standard: null
    });
    whole(declaration.outputs, { unit: "", step: 0, rounds: "nearest", columns: [], help: "", ways: [] });
    calculators[declaration.name] = { declaration: declaration, call: call };
  },

  // A written figure in the unit of the inside; null for what cannot be read.
  read: function (text, quantity, unit) {
    return host.read_or_why(String(text), quantity, unit)[0];
  },

  // Why a written figure cannot be read; nothing where it can.
  why: function (text, quantity, unit) {
    return host.read_or_why(String(text), quantity, unit)[1];
  },

  write: function (value, quantity, unit, step, rounds) {
    return modules.writing.write(value, quantity, unit, step || 0, rounds || "nearest");
  },

  // As a person gave it: with as many places as it takes.
  exactly: function (value, quantity, unit) {
    return modules.writing.exactly(value, quantity, unit);
  },

  // A value of an input as a person gave it.
  asGiven: function (item, value) {
    return modules.limits.as_given(item, value, false);
  },

  // The unit that a bare number means.
  unit: function (quantity, unit, metric) {
    return modules.metric.unit_in(quantity, unit, metric === true);
  },

  // A typed input, text or a list of rows of texts: {value} or {input, message}.
  readInput: function (name, inputName, given, metric) {
    return tried(function () {
      var item = inputOf(name, inputName), rows = given;
      if (item.quantity !== "rows") {
        return { value: modules.answering.read_one(item, String(given), inputName, item.label, metric === true) };
      }
      if (!Array.isArray(given)) rows = modules.answering.split_rows(item, String(given), inputName, item.label);
      return { value: modules.answering.read_rows(item, rows, inputName, item.label, metric === true) };
    }, inputName);
  },

  // Values of the inside for all inputs: those given, and the crew's standards and the defaults for the others.
  complete: complete,

  // {answer} or {input, message}.
  run: function (name, values, metric) {
    return tried(function () {
      var inputs = calculators[name].declaration.inputs, all = complete(name, values);
      modules.answering.keep_limits(inputs, all, metric === true);
      var answer = calculators[name].call(all);
      return { answer: modules.answering.with_cautions(inputs, all, answer, metric === true) };
    });
  },

  // The outputs as text: a list of {name, label, text}; an output of rows has rows too, each its texts by column.
  shown: function (name, answer, metric) {
    return modules.answering.shown_lines(calculators[name].declaration.outputs, answer, metric === true);
  }
};
