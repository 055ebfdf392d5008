// Keeps the app's files on this device, so that it opens without a network. What is written down is none of its business.
const CACHE = "tautline-{version}";
const FILES = [/* files */];

self.addEventListener("install", (event) => {
  const fresh = FILES.map((name) => new Request(name, { cache: "no-cache" }));
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(fresh)));
});

// Takes over from an older version only when a person asks for it; the files of that one go then.
self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
});

self.addEventListener("activate", (event) => {
  const older = (name) => name.startsWith("tautline-") && name !== CACHE;
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter(older).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  const home = new URL(self.registration.scope);
  if (event.request.method !== "GET" || url.origin !== home.origin || !url.pathname.startsWith(home.pathname)) return;
  const name = url.pathname.slice(home.pathname.length);
  const file = event.request.mode === "navigate" && (name === "" || name === "index.html") ? "index.html" : name;
  if (!FILES.includes(file)) return;
  event.respondWith(
    caches
      .open(CACHE)
      .then((cache) => cache.match(file))
      .then((kept) => kept ?? fetch(event.request)),
  );
});
