// Starts the app, and the worker that keeps its files. A new version waits until a person takes it.
import init from "./{app}";

await init({ module_or_path: new URL("./{wasm}", import.meta.url) });

const offer = (waiting) => dispatchEvent(new CustomEvent("tautline-newer", { detail: () => waiting.postMessage("take over") }));

if ("serviceWorker" in navigator) {
  const container = navigator.serviceWorker;
  const had = container.controller !== null;
  let again = false;
  container.addEventListener("controllerchange", () => {
    if (had && !again) {
      again = true;
      location.reload();
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
    await container.ready;
    document.documentElement.dataset.offline = "ready";
  } catch {
    document.documentElement.dataset.offline = "none";
  }
}
