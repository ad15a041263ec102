// What a run needs of the browser: a log that is on the disk before the screen changes, two clocks, a screen that stays
// awake, a sound and a buzz. Each may be refused; what is refused is answered, never thrown.
let shelf = null;
let sound = null;
let lock = null;
let wantsLock = false;
let lost = () => { };

const asked = (request) => new Promise((done, failed) => { request.onsuccess = () => done(request.result); request.onerror = () => failed(request.error); });

function open() {
  shelf ??= new Promise((done, failed) => {
    const request = indexedDB.open("lapwise-marks", 1);
    request.onupgradeneeded = () => request.result.createObjectStore("marks", { keyPath: ["run", "id"] }).createIndex("job", "job");
    request.onsuccess = () => {
      request.result.onversionchange = () => { request.result.close(); shelf = null; };
      // The browser cleared it under our feet: the next use makes it anew, and the open run is put there again.
      request.result.onclose = () => { shelf = null; lost(); };
      done(request.result);
    };
    request.onerror = () => failed(request.error);
    request.onblocked = () => failed(new Error("blocked"));
  });
  return shelf.catch((slip) => { shelf = null; throw slip; });
}

export async function all(job) {
  try {
    const marks = await asked((await open()).transaction("marks").objectStore("marks").index("job").getAll(job));
    return JSON.stringify(marks.map(({ run, sent, text }) => ({ run, sent, text })));
  } catch { return ""; }
}

// "" once every mark is on the disk, all or none of them; else why not.
export async function put(job, run, marks) {
  try {
    const change = (await open()).transaction("marks", "readwrite", { durability: "strict" });
    const store = change.objectStore("marks");
    // A mark that is already there is never changed, but that it has been sent.
    for (const { id, sent, text } of marks) {
      const there = await asked(store.get([run, id]));
      if (!there) store.put({ job, run, id, sent, text });
      else if (sent && !there.sent) store.put({ ...there, sent });
    }
    await new Promise((done, failed) => { change.oncomplete = done; change.onabort = () => failed(change.error); });
    return "";
  } catch (slip) { return slip?.name === "QuotaExceededError" ? "full" : "refused"; }
}

// Who works by keys stands where the last tap was; where that button is gone, at the next one and not at the page's beginning.
export function stand() {
  if (document.activeElement && document.activeElement !== document.body) return;
  const next = document.querySelector(".run-main .run-tap, .run-main .run-point") ?? document.querySelector(".run-head h1");
  next?.focus({ preventScroll: true });
  if (next?.matches(":focus-visible")) next.scrollIntoView({ block: "nearest" });
}

export const isCramped = () => [...document.querySelectorAll(".run-piece > path:first-of-type")].map((p) => p.getBoundingClientRect()).some((b) => Math.min(b.width, b.height) < 64);

export const clocks = () => [Date.now(), Math.round(performance.now())];

async function lockScreen() {
  if (!wantsLock || document.visibilityState !== "visible" || (lock && !lock.released)) return true;
  try { lock = await navigator.wakeLock.request("screen"); return true; } catch { return false; }
}

export async function stayAwake(wanted) {
  wantsLock = wanted;
  if (wanted) return "wakeLock" in navigator && await lockScreen();
  try { await lock?.release(); } catch { /* it was given back already */ }
  return true;
}

// After a tap only: browsers let nothing sound before one.
export async function allowSound() {
  try {
    sound ??= new AudioContext();
    if (sound.state !== "running") await Promise.race([sound.resume(), new Promise((_, failed) => setTimeout(failed, 1000))]);
    return sound.state === "running";
  } catch { return false; }
}

export function alarm(high) {
  try {
    for (let i = 0; i < (high ? 3 : 1) && sound?.state === "running"; i++) {
      const [tone, loud, at] = [sound.createOscillator(), sound.createGain(), sound.currentTime + i * 0.28];
      tone.frequency.value = high ? 880 : 520;
      loud.gain.setValueAtTime(0.0001, at);
      loud.gain.exponentialRampToValueAtTime(0.5, at + 0.02);
      loud.gain.exponentialRampToValueAtTime(0.0001, at + 0.22);
      tone.connect(loud).connect(sound.destination);
      tone.start(at);
      tone.stop(at + 0.25);
    }
  } catch { /* the picture says it too */ }
  try { return navigator.vibrate?.(high ? [200, 100, 200, 100, 200] : [200]) ?? false; } catch { return false; }
}

// What a tap does moves what lies there: the second tap of a double tap falls on something nobody has read, and is none. Keys have no place.
function oneTap() {
  let last = null;
  const tapped = (click) => {
    if (click.detail === 0 || !click.target.closest?.(".run button, .run-piece, .run-aside, .run-reach")) return;
    const isSecond = last && click.timeStamp - last.timeStamp < 500 && Math.hypot(click.pageX - last.pageX, click.pageY - last.pageY) < 40;
    last = click;
    if (isSecond) click.stopPropagation();
  };
  addEventListener("click", tapped, true);
  return () => removeEventListener("click", tapped, true);
}

export function watch(page) {
  const tapsAsBefore = oneTap();
  const seen = async () => { if (document.visibilityState === "visible") { await lockScreen(); page.invokeMethodAsync("OnSeenAgain"); } };
  document.addEventListener("visibilitychange", seen);
  addEventListener("online", seen);
  lost = () => page.invokeMethodAsync("OnLost");
  return { stop() { tapsAsBefore(); lost = () => { }; document.removeEventListener("visibilitychange", seen); removeEventListener("online", seen); } };
}

export function save(name, text) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type: name.endsWith(".svg") ? "image/svg+xml" : "application/json" }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

export const likesDark = () => matchMedia("(prefers-color-scheme: dark)").matches;
