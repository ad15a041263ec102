// The little that only the browser can do: its storage, its language, its width.
globalThis.lapwise = {
  read(key) { try { return localStorage.getItem(key); } catch { return null; } },
  write(key, value) { try { localStorage.setItem(key, value); return true; } catch { return false; } },
  remove(key) { try { localStorage.removeItem(key); } catch { /* nothing was kept */ } },
  keys(prefix) { try { return Object.keys(localStorage).filter(k => k.startsWith(prefix)).join("\n"); } catch { return ""; } },
  language() { return navigator.language || "en-US"; },
  sayLanguage(language) { document.documentElement.lang = language; },
  isWide() { return matchMedia("(min-width: 64rem)").matches; },
  watch(watcher) {
    matchMedia("(min-width: 64rem)").addEventListener("change", () => watcher.invokeMethodAsync("OnWidthChanged"));
    addEventListener("online", () => watcher.invokeMethodAsync("OnBackOnline"));
  },
  focus(id) {
    const field = document.getElementById(id);
    if (field) { field.scrollIntoView({ block: "center" }); field.focus(); }
  },
};
