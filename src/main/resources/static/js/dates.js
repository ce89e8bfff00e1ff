// Lets a date be dragged as well as typed: a slider of days below it, with the keys that a slider has. The date stays the
// only thing that is sent; without this script it is typed.
(() => {
  "use strict";
  const day = 86400000;
  const before = 21;
  const after = 28;
  const plain = (at) => new Date(at).toISOString().slice(0, 10);
  const words = (iso) =>
    new Date(iso + "T00:00:00Z").toLocaleDateString("en-GB", {
      weekday: "long", day: "numeric", month: "long", timeZone: "UTC",
    });

  const give = (date) => {
    const start = Date.parse(date.value);
    if (Number.isNaN(start)) return;
    const slider = document.createElement("input");
    slider.type = "range";
    slider.min = String(-before);
    slider.max = String(after);
    slider.value = "0";
    slider.dataset.dates = "";
    slider.setAttribute("aria-label", "Drag the date: " + date.labels[0].textContent);
    slider.setAttribute("aria-valuetext", words(date.value));
    slider.addEventListener("input", (event) => {
      event.stopPropagation(); // the form hears of the date below, once
      date.value = plain(start + Number(slider.value) * day);
      slider.setAttribute("aria-valuetext", words(date.value));
      date.dispatchEvent(new Event("input", { bubbles: true }));
    });
    slider.addEventListener("change", (event) => event.stopPropagation());
    date.addEventListener("input", () => {
      const typed = Date.parse(date.value);
      if (Number.isNaN(typed)) return;
      slider.value = String(Math.round((typed - start) / day));
      slider.setAttribute("aria-valuetext", words(date.value));
    });
    date.after(slider);
  };

  for (const form of document.querySelectorAll("form[data-drag-dates]")) {
    form.querySelectorAll('input[type="date"]').forEach(give);
  }
})();
