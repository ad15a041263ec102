// The little that only the browser can do: its storage, its language, its time zone, its width.
let watched = new AbortController();
const turns = new MessageChannel();
// Browsers do not all hear touch-action inside a drawing: a finger that takes hold of a part must not scroll the page.
const holdStill = (drawing, parts) => drawing.addEventListener("touchstart", e => { if (e.target.closest?.(parts)) e.preventDefault(); }, { passive: false });
globalThis.lapwise = {
  read(key) { try { return localStorage.getItem(key); } catch { return null; } },
  write(key, value) { try { localStorage.setItem(key, value); return true; } catch { return false; } },
  remove(key) { try { localStorage.removeItem(key); } catch { /* nothing was kept */ } },
  keys(prefix) { try { return Object.keys(localStorage).filter(k => k.startsWith(prefix)).join("\n"); } catch { return ""; } },
  language() { return navigator.language || "en-US"; },
  zone() { try { return Intl.DateTimeFormat().resolvedOptions().timeZone ?? null; } catch { return null; } },
  sayLanguage(language) { document.documentElement.lang = language; },
  sayAddress(address) { history.replaceState(history.state, "", new URL(address, document.baseURI)); },
  isWide() { return matchMedia("(min-width: 64rem)").matches; },
  usesPad() { const chosen = lapwise.read("lapwise/pad"); return chosen === null ? matchMedia("(pointer: coarse)").matches : chosen === "yes"; },
  showsHelp() { return lapwise.read("lapwise/help") !== "no"; },
  showHelp(wanted) { lapwise.write("lapwise/help", wanted ? "yes" : "no"); document.documentElement.classList.toggle("no-help", !wanted); },
  prefersStill() { return matchMedia("(prefers-reduced-motion: reduce)").matches; },
  /** A message comes in a task of its own, and sooner than any timer. */
  onTurn(goOn) { turns.port1.onmessage = () => goOn(); },
  askForTurn() { turns.port2.postMessage(null); },
  /** One page at a time is told; the one before it is gone. */
  watch(watcher) {
    watched.abort();
    watched = new AbortController();
    const { signal } = watched;
    matchMedia("(min-width: 64rem)").addEventListener("change", () => watcher.invokeMethodAsync("OnWidthChanged"), { signal });
    addEventListener("online", () => watcher.invokeMethodAsync("OnBackOnline"), { signal });
    document.addEventListener("visibilitychange", () => { if (!document.hidden) watcher.invokeMethodAsync("OnLookedAt"); }, { signal });
    // The job's own undo in place of the field's: a browser's would not know what else the field changed.
    document.addEventListener("keydown", e => {
      const key = (e.ctrlKey || e.metaKey) && !e.altKey ? e.key.toLowerCase() : "";
      const asked = key === "z" ? (e.shiftKey ? "OnRedoAsked" : "OnUndoAsked") : key === "y" ? "OnRedoAsked" : null;
      if (asked) { e.preventDefault(); watcher.invokeMethodAsync(asked); }
    }, { signal });
    lapwise.cupboard.watchLoss(watcher);
  },
  // Lines that can be taken hold of: each goes only square to itself, and is told in metres when let go.
  drag(drawing, mover) {
    holdStill(drawing, "[data-grip]");
    drawing.addEventListener("pointerdown", down => {
      const index = down.target.dataset?.grip;
      if (index === undefined) return;
      down.preventDefault();
      const svg = down.target.ownerSVGElement;
      const parts = [...svg.querySelectorAll(`[data-grip="${index}"]`)];
      const [x, y] = down.target.dataset.metre.split(" ").map(Number);
      const place = e => new DOMPoint(e.clientX, e.clientY).matrixTransform(svg.getScreenCTM().inverse());
      const from = place(down);
      let metres = 0;
      const move = e => {
        const to = place(e);
        metres = ((to.x - from.x) * x + (to.y - from.y) * y) / (x * x + y * y);
        parts.forEach(p => p.setAttribute("transform", `translate(${metres * x} ${metres * y})`));
      };
      const end = e => {
        ["pointermove", "pointerup", "pointercancel"].forEach(kind => removeEventListener(kind, kind === "pointermove" ? move : end));
        parts.forEach(p => { p.removeAttribute("transform"); p.classList.remove("is-held"); });
        if (e.type === "pointerup" && metres !== 0) mover.invokeMethodAsync("OnDragged", Number(index), metres);
      };
      parts.forEach(p => p.classList.add("is-held"));
      addEventListener("pointermove", move);
      addEventListener("pointerup", end);
      addEventListener("pointercancel", end);
    });
  },
  // Corners that can be taken hold of, by hand or by arrow keys; told in the drawing's units while they go and when they are let go.
  corners(drawing, mover) {
    holdStill(drawing, "[data-corner]");
    drawing.addEventListener("pointerdown", down => {
      const corner = down.target.closest?.("[data-corner]");
      if (!corner || !down.isPrimary) return;
      down.preventDefault();
      corner.focus({ preventScroll: true });
      const letter = corner.dataset.corner, svg = corner.ownerSVGElement;
      const place = e => new DOMPoint(e.clientX, e.clientY).matrixTransform(svg.getScreenCTM().inverse());
      const from = place(down);
      let by = null, asked = false;
      const move = e => {
        const to = place(e);
        if (!by && Math.hypot(to.x - from.x, to.y - from.y) < 4) return;
        by = [to.x - from.x, to.y - from.y];
        if (asked) return;
        asked = true;
        requestAnimationFrame(() => { asked = false; if (by) mover.invokeMethodAsync("OnMoving", letter, ...by); });
      };
      const end = e => {
        leave.abort();
        const went = by;
        by = null;
        mover.invokeMethodAsync("OnLetGo", letter, ...(e.type === "pointerup" && went ? went : [0, 0]));
      };
      const leave = new AbortController(), { signal } = leave;
      addEventListener("pointermove", move, { signal });
      addEventListener("pointerup", end, { signal });
      addEventListener("pointercancel", end, { signal });
      addEventListener("keydown", e => { if (e.key === "Escape") end(e); }, { signal });
    });
    drawing.addEventListener("keydown", e => {
      const letter = e.target.closest?.("[data-corner]")?.dataset.corner;
      const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[e.key];
      if (!letter || !way || e.ctrlKey || e.metaKey || e.altKey) return;
      e.preventDefault();
      mover.invokeMethodAsync("OnStepped", letter, ...way, e.shiftKey);
    });
  },
  /** Fields are drawn a moment after the drawing: one that is not there yet is waited for, unless another is gone to. */
  async focus(id) {
    const before = document.activeElement;
    for (let waitedMs = 0; !document.getElementById(id) && waitedMs < 3000; waitedMs += 50) await new Promise(done => setTimeout(done, 50));
    const field = document.getElementById(id);
    if (field && document.activeElement === before) { field.scrollIntoView({ block: "center" }); field.focus(); }
  },
};

document.documentElement.classList.toggle("no-help", !lapwise.showsHelp());

// The large keys for lengths: they write into the length field that was tapped last, which keeps its place and its caret.
{
  let field = null, going = 0;
  const isLength = e => e instanceof HTMLInputElement && e.dataset.length !== undefined;
  const show = shown => {
    clearTimeout(going);
    document.body.classList.toggle("has-pad", shown && document.querySelector(".pad") !== null);
  };
  addEventListener("focusin", e => {
    if (isLength(e.target)) {
      field = e.target;
      show(true);
      if (document.body.classList.contains("has-pad")) field.scrollIntoView({ block: "center" });
    } else if (!e.target.closest?.(".pad")) show(false);
  });
  // A tap beside puts them away, a finger that scrolls does not; Escape does, for who has keys of their own as well.
  const putAway = () => { field?.blur(); show(false); };
  // What counts is where it began, and the tap comes first: the page moves under it as they come and go.
  let tapped = null;
  addEventListener("pointerdown", e => { tapped = e.target; });
  addEventListener("pointercancel", () => { tapped = null; });
  addEventListener("pointerup", () => {
    if (tapped && !isLength(tapped) && !tapped.closest(".pad")) going = setTimeout(() => show(false), 300);
  });
  addEventListener("keydown", e => { if (e.key === "Escape") show(false); });
  addEventListener("mousedown", e => { if (e.target.closest?.(".pad")) e.preventDefault(); });
  addEventListener("click", e => {
    // A field that was never left takes them up again.
    if (isLength(e.target)) show(true);
    const key = e.target.closest?.(".pad [data-key]")?.dataset.key;
    if (key === undefined) return;
    if (key === "done" || !field?.isConnected) { putAway(); return; }
    if (key === "next") {
      const lengths = [...document.querySelectorAll("input[data-length]")].filter(f => f.offsetParent !== null);
      const next = lengths[lengths.indexOf(field) + 1];
      if (next) { next.focus(); next.select(); } else putAway();
      return;
    }
    let from = field.selectionStart;
    const to = field.selectionEnd, before = field.value.slice(0, from);
    let written = key === "back" ? "" : key;
    // A fraction stands apart from its whole number, a unit does not start a length.
    if (key.length > 1 && key.includes("/") && /\d$/.test(before)) written = " " + key;
    if (before === "" || before.endsWith(" ")) written = written.trimStart();
    if (key === "back" && from === to) from = Math.max(0, from - 1);
    field.setRangeText(written, from, to, "end");
    field.dispatchEvent(new Event("input", { bubbles: true }));
  });
}
