// A preview keeps nothing. A browser that has kept a published book from this same address puts it away, and shows the
// preview in its place.
addEventListener("install", () => skipWaiting());
addEventListener("activate", (event) => event.waitUntil(leave()));

async function leave() {
  const path = new URL(registration.scope).pathname;
  const names = (await caches.keys()).filter((name) => name.startsWith(`crew-book ${path} `) || name === `crew-state ${path}`);
  await Promise.all(names.map((name) => caches.delete(name)));
  await registration.unregister();
  for (const page of await clients.matchAll({ type: "window" })) page.navigate(page.url);
}
