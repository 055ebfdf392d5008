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

// The files of the version before stay until the next one comes: a window that reads a line goes on with that version, and
// may enter a room of it that it has not entered yet.
self.addEventListener("activate", (event) => {
  const older = (names) => names.filter((name) => name.startsWith("tautline-") && name !== CACHE).slice(0, -1);
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(older(names).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

const named = (url) => {
  const home = new URL(self.registration.scope);
  return url.origin === home.origin && url.pathname.startsWith(home.pathname) ? url.pathname.slice(home.pathname.length) : null;
};

self.addEventListener("fetch", (event) => {
  const name = event.request.method === "GET" ? named(new URL(event.request.url)) : null;
  if (name === null) return;
  const file = event.request.mode === "navigate" && (name === "" || name === "index.html") ? "index.html" : name;
  if (FILES.includes(file)) {
    event.respondWith(
      caches
        .open(CACHE)
        .then((cache) => cache.match(file))
        .then((kept) => kept ?? fetch(event.request)),
    );
  } else if (/-[0-9a-f]{16}\./.test(file)) {
    event.respondWith(caches.match(event.request).then((kept) => kept ?? fetch(event.request)));
  }
});
