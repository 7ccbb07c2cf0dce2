// What every piece of the forms uses: the words of the page, and the scripts that a form needs when it comes near.

const page = JSON.parse(document.querySelector("#crew-page").textContent);
const say = page.words;

/** Load what a form needs of the site's scripts. */
const loadAll = (addresses) => Promise.all(addresses.filter(Boolean).map((address) => load(page.top + address)));

const scriptOf = (scripts, name) => scripts.find((one) => one.endsWith(`/${name}.js`));
