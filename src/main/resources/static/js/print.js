// A button that prints the page; hidden until this file runs, because it does nothing without it.
(() => {
  "use strict";
  for (const button of document.querySelectorAll("[data-print]")) {
    button.hidden = false;
    button.addEventListener("click", () => window.print());
  }
})();
