// Starts the app, and the worker that keeps its files. A new version waits until a person takes it.
import init from "./{app}";

globalThis.tautlineWords = {/* words */};
await init({ module_or_path: new URL("./{wasm}", import.meta.url) });

// The app may not have opened yet, or may be there long since: it looks for the one and listens for the other.
const offer = (waiting) => {
  globalThis.tautlineNewer = () => waiting.postMessage("take over");
  dispatchEvent(new Event("tautline-newer"));
};

if ("serviceWorker" in navigator) {
  const container = navigator.serviceWorker;
  const had = container.controller !== null;
  let again = false;
  // Another window may have taken it: whoever reads a line here reads it to its end first.
  const load = () => {
    if (location.hash.startsWith("#/read/")) addEventListener("hashchange", load, { once: true });
    else location.reload();
  };
  container.addEventListener("controllerchange", () => {
    if (had && !again) {
      again = true;
      load();
    }
  });
  try {
    const own = await container.register("worker.js", { updateViaCache: "none" });
    if (own.waiting) offer(own.waiting);
    own.addEventListener("updatefound", () => {
      const coming = own.installing;
      coming.addEventListener("statechange", () => {
        if (coming.state === "installed" && container.controller) offer(coming);
      });
    });
    // the rooms come once the app is open; until then only what is open works without a network
    document.documentElement.dataset.offline = "first";
    container.addEventListener("message", (event) => {
      if (event.data === "all here") document.documentElement.dataset.offline = "ready";
    });
    (await container.ready).active.postMessage("bring the rest");
  } catch {
    document.documentElement.dataset.offline = "none";
  }
}
