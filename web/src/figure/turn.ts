// The one motion of the figure: the piece turns over like a page.

const HALF = 190; // ms

// still tells whether the reader asked for less motion, or the browser has none.
function still(el: HTMLElement): boolean {
  return typeof el.animate !== "function" || window.matchMedia("(prefers-reduced-motion: reduce)").matches;
}

// turnOver turns el edge-on, calls swap, and turns it on to the other side. The
// returned function calls it off; swap is then called at once, if it was not yet.
export function turnOver(el: HTMLElement, swap: () => void): () => void {
  if (still(el)) {
    swap();
    return () => undefined;
  }
  let swapped = false;
  const once = () => {
    if (!swapped) swap();
    swapped = true;
  };
  const away = el.animate([{ transform: "none" }, { transform: "rotateY(-90deg)" }], { duration: HALF, easing: "ease-in" });
  away.addEventListener("finish", () => {
    once();
    el.animate([{ transform: "rotateY(90deg)" }, { transform: "none" }], { duration: HALF, easing: "ease-out" });
  });
  return () => {
    away.cancel();
    once();
  };
}
