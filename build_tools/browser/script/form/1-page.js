// What every piece of the forms uses: the words of the page, and loading what a form needs when it comes near.

const page = JSON.parse(document.getElementById("crew-page").textContent);
const say = page.words;

const coming = {};

/** Load scripts, each once, to run in their order. They are ordinary ones: a page opened from a file can load no others. */
function load(addresses) {
  return Promise.all(addresses.filter(Boolean).map((address) => coming[address] ??= new Promise((done, failed) => {
    const script = make("script", { src: page.top + address });
    script.async = false;
    script.onload = done;
    script.onerror = failed;
    document.head.append(script);
  })));
}

const scriptOf = (scripts, name) => scripts.find((one) => one.endsWith(`/${name}.js`));
