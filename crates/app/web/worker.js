// Keeps the app's files on this device, so that it opens without a network. What is written down is none of its business.
const CACHE = "tautline-{version}";
const FIRST = [/* first */];
const LATER = [/* later */];
const FILES = [...FIRST, ...LATER];

const fetchAll = async (names) => {
  const cache = await caches.open(CACHE);
  const kept = new Set((await cache.keys()).map((request) => new URL(request.url).pathname.split("/").pop()));
  await cache.addAll(names.filter((name) => !kept.has(name)).map((name) => new Request(name, { cache: "no-cache" })));
};

// The first version opens with what the first screen needs; a newer one is offered when all of it is here.
self.addEventListener("install", (event) => {
  event.waitUntil(fetchAll(self.registration.active ? FILES : FIRST));
});

// The rooms come once the app is open. The version takes over from an older one only when a person asks for it; the
// files of that one go then.
self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
  if (event.data === "bring the rest") {
    event.waitUntil(fetchAll(LATER).then(() => event.source.postMessage("all here")));
  }
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
