
/** Load a script, once for all that ask for it: its element knows whether it has come. One that did not come is asked for
    anew the next time. They are ordinary scripts, run in their order: a page opened from a file can load no others. */
function load(address) {
  const there = document.querySelector(`script[src="${address}"]`);
  if (there?.dataset.come) return Promise.resolve();
  const script = there ?? make("script", { src: address });
  script.async = false;
  if (!there) document.head.append(script);
  return new Promise((done, failed) => {
    script.addEventListener("load", () => done(script.dataset.come = "1"));
    script.addEventListener("error", () => {
      script.remove();
      failed(new Error(address));
    });
  });
}
