// Brings this moment into view on a strip that is wider than its frame; without it the strip is moved by hand.
(() => {
  "use strict";
  const toNow = () => {
    for (const frame of document.querySelectorAll(".strip > .frame:not([data-moved])")) {
      const line = frame.querySelector(".now");
      frame.dataset.moved = "yes";
      if (!line || frame.scrollWidth <= frame.clientWidth) continue;
      const at = (parseFloat(line.getAttribute("x1")) / 100) * frame.scrollWidth;
      frame.scrollLeft = at - frame.clientWidth / 4;
    }
  };
  toNow();
  document.addEventListener("htmx:afterSettle", toNow);
})();
