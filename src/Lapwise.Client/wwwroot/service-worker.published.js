// Keeps the whole page on the device. The list of its files is made at publish; a new list is a new version, which is put
// beside the old one and takes over only when the page says so.
self.importScripts("./service-worker-assets.js");

const prefix = "lapwise-page-";
const cacheName = prefix + self.assetsManifest.version;
const leftOut = [/^service-worker/, /\.(br|gz|map)$/];
const kept = self.assetsManifest.assets.filter(a => !leftOut.some(p => p.test(a.url)));
const own = new Set(kept.map(a => new URL(a.url, self.location).pathname));
const start = new URL("index.html", self.location).pathname;

self.addEventListener("install", event => event.waitUntil((async () => {
  const cache = await caches.open(cacheName);
  // With its hash, so that files of two versions are never mixed.
  await cache.addAll(kept.map(a => new Request(a.url, { integrity: a.hash, cache: "no-cache" })));
})()));

self.addEventListener("activate", event => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name.startsWith(prefix) && name !== cacheName) await caches.delete(name);
})()));

self.addEventListener("message", event => { if (event.data === "take over") self.skipWaiting(); });

self.addEventListener("fetch", event => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== "GET" || origin !== self.location.origin) return;
  const fromServer = pathname.startsWith("/api/") || pathname === "/pair";
  if (request.mode === "navigate") event.respondWith(fromServer ? fetch(request).catch(notNow) : fromCache(start, request));
  else if (own.has(pathname)) event.respondWith(fromCache(pathname, request));
});

async function fromCache(path, request) {
  const cache = await caches.open(cacheName);
  return (await cache.match(path, { ignoreSearch: true, ignoreVary: true })) ?? fetch(request);
}

/** Sheets are made by the shop's computer. */
function notNow() {
  return new Response(`<!doctype html><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Lapwise</title>
<body><h1>Not without the shop's computer</h1><p>Sheets to print are made by it, and it does not answer now.</p>
<div lang="es"><h1>No sin el computador del taller</h1><p>Las hojas para imprimir las hace él, y ahora no responde.</p></div>
<p><a href="/">Lapwise</a></p></body>`, { status: 503, headers: { "Content-Type": "text/html; charset=utf-8" } });
}
