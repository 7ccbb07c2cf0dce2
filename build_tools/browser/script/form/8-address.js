// What was put in stands in the address, behind the place on the page: `#choose-ring?rise=1/2+in`. A figure of another
// form of the page has that form's name before it: `&order.throat=16'`. The part behind `#` never leaves the phone.

const forms = [];

/** The place that the address names, and what was put in there. */
function addressRead() {
  const [place, rest = ""] = location.hash.slice(1).split(/\?(.*)/s);
  return { place: decoded(place), given: [...new URLSearchParams(rest)] };
}

/** A place as it is named; an address that somebody cut short is taken as it stands. */
function decoded(place) {
  try {
    return decodeURIComponent(place);
  } catch {
    return place;
  }
}

// A reading that a field starts from is kept with the readings: only a link for somebody else takes it along.
/** What was put into a form, as pairs; `prefix` names the form where it is not the place's own. */
const changes = (form, prefix, from = "start") => form.fields.filter((field) => field.text !== field[from]).map((field) => [prefix + field.input.name, field.text]);

function addressOf(place, given) {
  const plain = new URLSearchParams(given).toString().replace(/%2F/g, "/").replace(/%3B/g, ";").replace(/%2C/g, ",");
  const hash = place || given.length ? `#${place}${given.length ? `?${plain}` : ""}` : "";
  return location.href.split("#")[0] + hash;
}

/** Write the address: the place as it is, with all that was put in. */
function addressWrite(place = addressRead().place) {
  const own = forms.find((form) => form.key === place);
  const given = forms.flatMap((form) => changes(form, form === own ? "" : `${form.key}.`));
  try {
    history.replaceState(history.state, "", addressOf(place, given));
  } catch {
    // A browser may refuse it to a page opened from a file; then the address stays as it was.
  }
}

/** Put what the address holds into the forms; gives the form of the place where it has one. */
function addressTake() {
  const { place, given } = addressRead();
  for (const [key, text] of given) {
    const [name, key2] = key.split(".").reverse();
    const form = forms.find((one) => one.key === (key2 ?? place));
    const field = form?.fields.find((one) => one.input.name === name);
    if (!field) continue;
    put(field, text);
    if (field.isFolded) form.showRest();
    follow(form, field);
    work(form);
  }
  return given.length ? document.getElementById(place) : null;
}

/** Copy a link to this form with its figures; gives whether the browser let us. */
async function copyLink(form) {
  const link = addressOf(form.key, changes(form, "", "page"));
  try {
    await navigator.clipboard.writeText(link);
    return true;
  } catch {
    return copyOldWay(link);
  }
}

/** For pages that are not served safely, where the clipboard is out of reach. */
function copyOldWay(link) {
  const held = make("textarea", { class: "unseen", readonly: true });
  held.value = link;
  document.body.append(held);
  held.select();
  const done = document.execCommand("copy");
  held.remove();
  return done;
}
