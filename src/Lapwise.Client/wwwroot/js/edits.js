// The steps one can take back, on this device: a record a step, so that a step costs only itself. Each tab has its own; what
// a closed tab left of a job goes to the next that opens it.
(() => {
  let opening = null;
  const asked = request => new Promise((done, failed) => { request.onsuccess = () => done(request.result); request.onerror = () => failed(request.error); });
  const done = change => new Promise((kept, failed) => { change.oncomplete = kept; change.onabort = change.onerror = () => failed(change.error); });

  function open() {
    opening ??= new Promise((found, failed) => {
      const request = indexedDB.open("lapwise-edits", 1);
      request.onupgradeneeded = () => request.result.createObjectStore("steps");
      request.onsuccess = () => { request.result.onclose = request.result.onversionchange = () => { request.result.close(); opening = null; }; found(request.result); };
      request.onerror = request.onblocked = () => failed(request.error);
    });
    opening.catch(() => { opening = null; });
    return opening;
  }

  // Place -1 holds how many of the steps are done; those beyond are undone.
  const range = (job, tab, from = -1) => IDBKeyRange.bound([job, tab, from], [job, tab, Infinity]);

  async function takeOver(job, own) {
    const db = await open();
    const tabs = [...new Set((await asked(db.transaction("steps").objectStore("steps").getAllKeys(IDBKeyRange.bound([job, ""], [job, "\uffff"])))).map(k => k[1]))];
    if (tabs.includes(own)) return;
    const opened = await lapwise.openTabs();
    const left = tabs.find(t => !opened.includes(t));
    if (left === undefined) return;
    const change = db.transaction("steps", "readwrite"), steps = change.objectStore("steps");
    const [keys, values] = [await asked(steps.getAllKeys(range(job, left))), await asked(steps.getAll(range(job, left)))];
    keys.forEach((key, i) => steps.put(values[i], [job, own, key[2]]));
    steps.delete(range(job, left));
    await done(change);
  }

  // One after the other: a later step is never overtaken.
  let last = Promise.resolve();
  const inTurn = work => last = last.then(work, work);

  lapwise.edits = {
    /** Every step as [field, before, after], and how many of them are done; before is "" where it is what the step before left. */
    read: job => inTurn(async () => {
      try {
        const tab = await lapwise.tab();
        await takeOver(job, tab);
        const steps = (await open()).transaction("steps").objectStore("steps");
        const [count, all] = [await asked(steps.get([job, tab, -1])), await asked(steps.getAll(range(job, tab, 0)))];
        return { count: Math.min(count ?? all.length, all.length), steps: all };
      } catch { return { count: 0, steps: [] }; }
    }),
    /** Steps at their places, with nothing after them, and how many of all are done. False where they cannot be kept. */
    put: (job, from, put, count) => inTurn(async () => {
      try {
        const tab = await lapwise.tab();
        const change = (await open()).transaction("steps", "readwrite"), steps = change.objectStore("steps");
        steps.delete(range(job, tab, from));
        put.forEach((step, i) => steps.put(step, [job, tab, from + i]));
        steps.put(count, [job, tab, -1]);
        await done(change);
        return true;
      } catch { return false; }
    }),
  };
})();
