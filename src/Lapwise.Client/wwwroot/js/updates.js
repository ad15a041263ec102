// The page without reception, and a new version of it: fetched in the background, taken only when somebody says so.
(() => {
  let registration = null;
  let tell = () => { };

  const isReady = () => !!(registration?.waiting && navigator.serviceWorker.controller);

  lapwise.updates = {
    isReady,
    /** Tells the watcher whenever a new version lies ready. */
    watch(watcher) {
      tell = () => { if (isReady()) watcher.invokeMethodAsync("OnUpdateReady"); };
      tell();
    },
    /** Whether new versions come by themselves here; false: a reload brings them. */
    comeByThemselves: () => !!registration,
    look: () => { registration?.update().catch(() => { /* no reception: later */ }); },
    /** Changes over and loads this tab anew; other tabs go on as they are until they are loaded again. */
    take() {
      if (!isReady()) { location.reload(); return; }
      navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
      registration.waiting.postMessage("take over");
    },
  };

  if ("serviceWorker" in navigator) {
    // After the first screen, so that it does not wait for this.
    addEventListener("load", async () => {
      try {
        registration = await navigator.serviceWorker.register("service-worker.js", { updateViaCache: "none" });
        registration.addEventListener("updatefound", () => registration.installing?.addEventListener("statechange", () => setTimeout(() => tell(), 100)));
        tell();
      } catch { /* not over a secure address: the page works, but only with the server */ }
    });
    document.addEventListener("visibilitychange", () => { if (!document.hidden) lapwise.updates.look(); });
  }
})();
