// The little that only the browser can do: its storage, its language, its width.
let watched = new AbortController();
globalThis.lapwise = {
  read(key) { try { return localStorage.getItem(key); } catch { return null; } },
  write(key, value) { try { localStorage.setItem(key, value); return true; } catch { return false; } },
  remove(key) { try { localStorage.removeItem(key); } catch { /* nothing was kept */ } },
  keys(prefix) { try { return Object.keys(localStorage).filter(k => k.startsWith(prefix)).join("\n"); } catch { return ""; } },
  language() { return navigator.language || "en-US"; },
  sayLanguage(language) { document.documentElement.lang = language; },
  isWide() { return matchMedia("(min-width: 64rem)").matches; },
  prefersStill() { return matchMedia("(prefers-reduced-motion: reduce)").matches; },
  /** One page at a time is told; the one before it is gone. */
  watch(watcher) {
    watched.abort();
    watched = new AbortController();
    const { signal } = watched;
    matchMedia("(min-width: 64rem)").addEventListener("change", () => watcher.invokeMethodAsync("OnWidthChanged"), { signal });
    addEventListener("online", () => watcher.invokeMethodAsync("OnBackOnline"), { signal });
    document.addEventListener("visibilitychange", () => { if (!document.hidden) watcher.invokeMethodAsync("OnLookedAt"); }, { signal });
    lapwise.cupboard.watchLoss(watcher);
  },
  // Lines that can be taken hold of: each goes only square to itself, and is told in metres when let go.
  drag(drawing, mover) {
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
  focus(id) {
    const field = document.getElementById(id);
    if (field) { field.scrollIntoView({ block: "center" }); field.focus(); }
  },
};
