// What Python does and script does not, one operation in each part. A page has those that its functions use.
// The minifier would write some functions of Math as operators that give another figure; by this name it does not.
const $math = Math;

const $blank = /[\t-\r\x1c- \x85\xa0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000]/;

const $halves = /[\ud800-\udfff]/;

// A text as its signs, where script would count halves of them.
function $signs(x) {
  return typeof x === "string" && $halves.test(x) ? [...x] : x;
}

function $each(x) {
  return typeof x === "string" ? [...x] : Array.isArray(x) ? x : Object.keys(x);
}

function $len(x) {
  return typeof x === "string" ? $signs(x).length : $each(x).length;
}

function $at(x, place) {
  x = $signs(x);
  return x[place < 0 ? place + x.length : place];
}

// Of the keys of an object, script puts figures first, and takes `__proto__` for something else.
function $put(value, x, place) {
  const isList = Array.isArray(x);
  if (!isList && (typeof place !== "string" || /^\d+$/.test(place) || place === "__proto__")) throw Error("key " + place);
  x[isList && place < 0 ? place + x.length : place] = value;
}

function $slice(x, start, end) {
  const part = $signs(x).slice(start, end);
  return typeof x === "string" && typeof part !== "string" ? part.join("") : part;
}

function $own(x, key) {
  return Object.prototype.hasOwnProperty.call(x, key);
}

function $get(x, key, other = null) {
  return $own(x, key) ? x[key] : other;
}

function $dict(pairs) {
  const made = {};
  for (const [key, value] of pairs) $put(value, made, key);
  return made;
}

function $pop(x, place = -1) {
  return x.splice(place, 1)[0];
}

function $truth(x) {
  return x !== null && typeof x === "object" ? $len(x) > 0 : x === x ? !!x : true;
}

function $eq(a, b) {
  if (typeof a === "boolean") a = +a;
  if (typeof b === "boolean") b = +b;
  if (a === b || a === null || b === null || typeof a !== "object" || typeof b !== "object") return a === b;
  const keys = Object.keys(a);
  return Array.isArray(a) === Array.isArray(b) && keys.length === Object.keys(b).length &&
    keys.every((key) => $own(b, key) && $eq(a[key], b[key]));
}

function $has(x, item) {
  if (typeof x === "string") return x.includes(item);
  return Array.isArray(x) ? x.some((one) => $eq(one, item)) : $own(x, item);
}

// Less than 0, 0 or more than 0, as a stands before b, beside it or behind it.
function $cmp(a, b) {
  if (typeof a === "string" && $halves.test(a + b)) {
    a = [...a].map((sign) => sign.codePointAt(0));
    b = [...b].map((sign) => sign.codePointAt(0));
  }
  if (!Array.isArray(a)) return a < b ? -1 : +(a > b);
  const at = a.findIndex((one, place) => place >= b.length || !$eq(one, b[place]));
  return at < 0 ? a.length - b.length : at < b.length ? $cmp(a[at], b[at]) : 1;
}

function $add(a, b) {
  return Array.isArray(a) ? a.concat(b) : a + b;
}

function $times(a, b) {
  if (typeof a === "string" || Array.isArray(a)) [a, b] = [b, a];
  if (typeof b === "string") return b.repeat($math.max(0, a));
  if (!Array.isArray(b)) return a * b;
  return $range(a).flatMap(() => b);
}

function $mod(a, b) {
  const rest = a % b;
  return rest !== 0 && rest < 0 !== b < 0 ? rest + b : rest;
}

function $floordiv(a, b) {
  const rest = a % b, parts = (a - rest) / b - (rest !== 0 && rest < 0 !== b < 0 ? 1 : 0), low = $math.floor(parts);
  return parts - low > 0.5 ? low + 1 : low;
}

// A half goes to the even one of its neighbours.
function $round(x) {
  const low = $math.floor(x), part = x - low;
  return part < 0.5 || (part === 0.5 && low % 2 === 0) ? low : low + 1;
}

function $str(x) {
  return x === true ? "True" : x === false ? "False" : x === null ? "None" : String(x);
}

function $find(x, part) {
  const at = x.indexOf(part);
  return at < 0 ? at : $len(x.slice(0, at));
}

function $replace(x, old, by) {
  return old === "" ? ["", ...x].map((sign) => sign + by).join("") : x.split(old).join(by);
}

function $split(x, by) {
  return by === undefined ? x.split($blank).filter((word) => word !== "") : x.split(by);
}

function $lstrip(x, signs) {
  const all = [...x], at = all.findIndex((sign) => (signs === undefined ? !$blank.test(sign) : !signs.includes(sign)));
  return at < 0 ? "" : all.slice(at).join("");
}

function $rstrip(x, signs) {
  return [...$lstrip([...x].reverse().join(""), signs)].reverse().join("");
}

function $strip(x, signs) {
  return $rstrip($lstrip(x, signs), signs);
}

function $removeprefix(x, part) {
  return x.startsWith(part) ? x.slice(part.length) : x;
}

function $removesuffix(x, part) {
  return part !== "" && x.endsWith(part) ? x.slice(0, -part.length) : x;
}

function $range(start, end, step = 1) {
  const found = [];
  if (end === undefined) [start, end] = [0, start];
  for (let at = start; step > 0 ? at < end : at > end; at += step) found.push(at);
  return found;
}

function* $enumerate(x, number = 0) {
  for (const one of x) yield [number++, one];
}

function* $zip(...all) {
  const turns = all.map((x) => x[Symbol.iterator]());
  for (;;) {
    const next = turns.map((turn) => turn.next());
    if (next.some((one) => one.done)) return;
    yield next.map((one) => one.value);
  }
}

function $sum(x, start = 0) {
  return x.reduce((total, one) => total + one, start);
}

function $sorted(x, key = (one) => one, isReverse = false) {
  const keyed = [...x].map((one) => [key(one), one]);
  return keyed.sort((a, b) => (isReverse ? $cmp(b[0], a[0]) : $cmp(a[0], b[0]))).map((pair) => pair[1]);
}

function $min(x, key, other) {
  const all = $sorted(x, key);
  return all.length > 0 ? all[0] : other;
}

function $max(x, key, other) {
  const all = $sorted(x, key, true);
  return all.length > 0 ? all[0] : other;
}
