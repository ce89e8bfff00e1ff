// Keeps a second tap from sending a form twice while the first is on its way, and takes people to what a form still needs.
(() => {
  "use strict";
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (event.defaultPrevented || form.dataset.sent === "yes") {
      if (form.dataset.sent === "yes") event.preventDefault();
      return;
    }
    form.dataset.sent = "yes";
    setTimeout(() => delete form.dataset.sent, 4000);
  });
  // a page shown again from the browser's memory has sent nothing yet
  window.addEventListener("pageshow", () => {
    for (const form of document.querySelectorAll("form[data-sent]")) delete form.dataset.sent;
  });
  document.querySelector(".errors")?.focus();
})();
