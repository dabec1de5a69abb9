// The way out: served in place of sw.js it removes the worker and all that it kept, from every browser
// that comes by. Pages that were served from what was kept are fetched anew, once.

const OURS = `thole ${new URL("./", location.href).pathname} `;

addEventListener("install", () => skipWaiting());

addEventListener("activate", (event) => event.waitUntil((async () => {
  const names = (await caches.keys()).filter((name) => name.startsWith(OURS));
  await Promise.all(names.map((name) => caches.delete(name)));
  await registration.unregister();
  if (names.length === 0) return;
  for (const client of await clients.matchAll({ type: "window" })) client.navigate(client.url);
})()));
