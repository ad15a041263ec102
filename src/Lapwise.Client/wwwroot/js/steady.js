// The field one types in stays where it is: what appears or goes above it, as what is wrong with an entry, scrolls the page by as
// much. Browsers do so themselves in part: not at the page's beginning, and not all of them.
(() => {
  let field = null;
  let top = 0;

  const note = () => {
    field = document.activeElement?.matches("input, textarea, select") ? document.activeElement : null;
    top = field?.getBoundingClientRect().top ?? 0;
  };
  const hold = () => {
    const isSeen = top >= 0 && top < innerHeight;
    if (isSeen && field?.isConnected && field === document.activeElement) scrollBy({ top: field.getBoundingClientRect().top - top, behavior: "instant" });
    note();
  };

  for (const moment of ["focusin", "focusout"]) document.addEventListener(moment, note);
  for (const moment of ["scroll", "resize"]) addEventListener(moment, note, { passive: true });
  new ResizeObserver(hold).observe(document.body);
})();
