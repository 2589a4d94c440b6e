// Keeps the page where it was served from, so that it opens without a network.
const KEPT = "satline-{{.Version}}";
const FILES = ["./satline.html", "./satline.webmanifest", "./satline-icon.png"];
self.addEventListener("install", (e) => e.waitUntil(caches.open(KEPT).then((c) => c.addAll(FILES)).then(() => self.skipWaiting())));
self.addEventListener("activate", (e) => e.waitUntil(caches.keys().then((names) => Promise.all(names.filter((n) => n !== KEPT).map((n) => caches.delete(n)))).then(() => self.clients.claim())));
self.addEventListener("fetch", (e) => {
  if (e.request.method === "GET" && new URL(e.request.url).origin === location.origin) e.respondWith(caches.match(e.request, { ignoreSearch: true }).then((kept) => kept || fetch(e.request)));
});
