// A look at a hold point: who looked and when. Of somebody whose look it is not, that is said, and written down with the
// name if it is recorded anyway.

/** A first and a last name, in letters. */
const isName = (text) => /^\p{L}[\p{L}\p{M}.'’-]*( [\p{L}\p{M}.'’-]+)* \p{L}[\p{L}\p{M}'’-]+$/u.test(text);

/** The box that is still to be filled in, and why. */
function missing({ picked, name, when }, who) {
  if (!picked.value) return [picked, say.say_who];
  if (picked.value === "other" && !isName(who)) return [name, say.say_name];
  if (!when.value || !isLocalTime(when.value)) return [when, say.say_when];
  return when.value > localTime(new Date(Date.now() + 60_000)) ? [when, say.not_yet] : [];
}

/** What the entry says; nothing while something is missing or somebody is asked whether he is sure. */
function lookOf(hold, isSure) {
  const { picked, name, when, wrong, who: look, the, people } = hold;
  const who = picked.value === "other" ? name.value.trim().replace(/\s+/g, " ") : people[picked.value]?.[0];
  const [box, why = ""] = missing(hold, who);
  wrong.textContent = why;
  if (box) return box.focus();
  const known = people.find(([one]) => one.toLowerCase() === who.toLowerCase());
  const role = known ? known[1] : say.no_role;
  if (role && !isSure) {
    return wrong.append(make("span", {}, fill(say.not_theirs, { look, who, role })), make("button", { class: "anyway" }, say.anyway));
  }
  return { passed: true, looked: who, role: role && fill(known ? say.not_the : say.not_known, { the }), when: when.value };
}

window.crewEnter = { readText, outsideWords, taken, lookOf };
