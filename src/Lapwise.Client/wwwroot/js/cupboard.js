// Documents and photos on this device, in IndexedDB. A record is a list of texts, so that the page needs no second format.
(() => {
  const stores = ["jobs", "drafts", "products", "photos", "photosToSend"];
  let opening = null;
  let lost = () => { };

  function open() {
    opening ??= new Promise((resolve, reject) => {
      const asked = indexedDB.open("lapwise", 1);
      asked.onupgradeneeded = () => stores.forEach(s => asked.result.createObjectStore(s));
      asked.onerror = () => reject(asked.error);
      asked.onblocked = () => reject(new DOMException("blocked", "InvalidStateError"));
      asked.onsuccess = () => {
        const db = asked.result;
        // The browser cleared it under our feet: the next use makes it anew, and what is open is kept again.
        db.onclose = () => { opening = null; lost(); };
        db.onversionchange = () => { db.close(); opening = null; };
        resolve(db);
      };
    });
    opening.catch(() => { opening = null; });
    return opening;
  }

  async function use(store, mode, work, again = true) {
    const db = await open();
    try {
      return await new Promise((resolve, reject) => {
        const transaction = db.transaction(store, mode);
        const request = work(transaction.objectStore(store));
        transaction.oncomplete = () => resolve(request.result);
        transaction.onabort = transaction.onerror = () => reject(transaction.error ?? request.error);
        // Without waiting for the page to come back: it may be killed before it does.
        if (mode === "readwrite") transaction.commit();
      });
    } catch (e) {
      if (!again || e?.name !== "InvalidStateError") throw e;
      opening = null;
      return use(store, mode, work, false);
    }
  }

  const cause = e => e?.name === "QuotaExceededError" ? "full" : "refused";
  const quiet = (promise, instead) => promise.catch(() => instead);

  lapwise.cupboard = {
    /** "" when kept, else why not. */
    write: (store, key, ...texts) => use(store, "readwrite", s => s.put(texts, key)).then(() => "", cause),
    read: (store, key) => quiet(use(store, "readonly", s => s.get(key)), null),
    remove: (store, key) => quiet(use(store, "readwrite", s => s.delete(key)), null),
    /** Each record as its key and the first few of its texts. */
    async heads(store, most) {
      const db = await quiet(open(), null);
      if (!db) return [];
      const found = [];
      await quiet(new Promise((resolve, reject) => {
        const walk = db.transaction(store).objectStore(store).openCursor();
        walk.onerror = () => reject(walk.error);
        walk.onsuccess = () => {
          const at = walk.result;
          if (!at) return resolve();
          found.push([String(at.key), ...(Array.isArray(at.value) ? at.value.slice(0, most) : [])]);
          at.continue();
        };
      }), null);
      return found;
    },
    use,
    watchLoss(watcher) { lost = () => watcher.invokeMethodAsync("OnCupboardLost"); },
    /** Asks the browser not to clear this site when space is short. */
    persist: () => quiet(navigator.storage?.persist?.() ?? Promise.resolve(false), false),
  };
  quiet(open(), null);

  // Which tab this is. Its id outlives a reload; a doubled tab takes another, because the first still holds the lock.
  const holdForever = () => new Promise(() => { });
  async function holdTab(id) {
    if (!navigator.locks) return id;
    const held = await new Promise(told => navigator.locks.request("lapwise/tab/" + id, { ifAvailable: true }, lock => { told(!!lock); return lock ? holdForever() : undefined; }));
    return held ? id : null;
  }
  let tab = null;
  lapwise.tab = () => tab ??= (async () => {
    let known = null;
    try { known = sessionStorage.getItem("lapwise/tab"); } catch { /* none kept */ }
    // After a reload the lock of the old page may be let go a moment later.
    for (let tries = 0; known && tries < 5; tries++) {
      if (await holdTab(known)) return known;
      await new Promise(r => setTimeout(r, 40));
    }
    const own = crypto.randomUUID();
    await holdTab(own);
    try { sessionStorage.setItem("lapwise/tab", own); } catch { /* none kept */ }
    return own;
  })();
  lapwise.openTabs = async () => navigator.locks ? (await navigator.locks.query()).held.map(l => l.name).filter(n => n.startsWith("lapwise/tab/")).map(n => n.slice(12)) : [];

  /** Hands a file to the person. */
  lapwise.handOut = (name, text) => {
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], { type: "application/json" }));
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  };
})();
