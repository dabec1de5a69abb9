// Keeps the files of one build for use without a connection, and hands them out together or not at all.
// A newer build is fetched whole beside it and waits until the page says that its user agrees, or until
// the last page is closed. Everything that is not in THOLE_FILES goes to the network as if this worker
// were not there: version.json, embed.js, demo/, engine/. docs/offline.md tells how to switch it off.

const SCOPE = new URL("./", location.href);
const OURS = `thole ${SCOPE.pathname} `;  // as in one_build.js
const CACHE = OURS + THOLE_BUILD;
const PAGE = "./";
const FILES = new Map(THOLE_FILES);  // name -> digest, as the attribute `integrity` takes it
const OF_SOME_BUILD = /^[\w-]+\.[0-9a-f]{10}\.\w+$/;

async function fill() {
  const cache = await caches.open(CACHE);
  try {
    const page = await fetch(PAGE, { cache: "no-cache" });
    const text = await page.clone().text();
    if (!page.ok || page.redirected || !text.includes(THOLE_BUILD)) throw new Error("another build's page");
    await cache.addAll([...FILES].map(([name, integrity]) => new Request(name, { integrity })));
    await cache.put(PAGE, page);
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

const ours = async () => (await caches.keys()).filter((name) => name.startsWith(OURS));

async function page(event) {
  const found = await caches.match(PAGE, { cacheName: CACHE, ignoreVary: true });
  if (found) return found;
  event.waitUntil(fill().catch(() => {}));  // the browser has made room for itself
  return fetch(event.request);
}

async function part(event) {
  const found = await caches.match(event.request, { ignoreVary: true });
  if (found) return found;
  const response = await fetch(event.request);
  // A page that misses its own script is mixed up and stays dead: fetch it anew, once.
  if (response.status === 404 && event.request.destination === "script" && (await caches.delete(CACHE))) {
    const client = await clients.get(event.clientId);
    event.waitUntil(client?.navigate(client.url));
  }
  return response;
}

addEventListener("install", (event) => event.waitUntil(fill()));

addEventListener("activate", (event) => event.waitUntil((async () => {
  const old = (await ours()).filter((name) => name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
  await clients.claim();
})()));

addEventListener("message", (event) => {
  if (event.data === "SKIP_WAITING") skipWaiting();
  if (event.data === "BUILD") event.ports[0]?.postMessage(THOLE_BUILD);
});

addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  const ofOurs = url.origin === SCOPE.origin && url.pathname.startsWith(SCOPE.pathname);
  if (request.method !== "GET" || !ofOurs) return;
  const name = url.pathname.slice(SCOPE.pathname.length);
  if (request.destination === "document") {
    const isPage = (name === "" || name === "index.html") && !url.searchParams.has("embed");
    if (isPage) event.respondWith(page(event));
  } else if (FILES.has(name) || OF_SOME_BUILD.test(name)) {
    event.respondWith(part(event));
  }
});
