// A part that refreshes itself leaves people alone while they are in it: no refresh while it holds the focus or an open
// table.
document.addEventListener("htmx:beforeRequest", (event) => {
  const part = event.target;
  if (part instanceof Element && part.hasAttribute("data-live")
      && (part.contains(document.activeElement) || part.querySelector("details[open]"))) {
    event.preventDefault();
  }
});

// What changed at a cell is told by the server at once; a part that shows the cell (data-live-cell, "*" for every cell)
// then fetches itself anew. While no word comes through, the same parts look every four seconds.
(() => {
  "use strict";
  const parts = () => Array.from(document.querySelectorAll("[data-live-cell]"));
  if (parts().length === 0) return;
  let stream = null;
  let connected = false;
  let due = new Set();
  let timer = 0;

  const look = () => {
    timer = 0;
    const cells = due;
    due = new Set();
    for (const part of parts()) {
      const cell = part.dataset.liveCell;
      if (cells.has("all") || cell === "*" || cells.has(cell)) {
        part.dispatchEvent(new CustomEvent("look", { bubbles: false }));
      }
    }
  };
  const changed = (cell) => {
    due.add(cell);
    if (timer === 0) timer = setTimeout(look, 100);
  };
  const listen = () => {
    if (stream !== null || document.hidden || !("EventSource" in window)) return;
    stream = new EventSource("/live");
    stream.addEventListener("open", () => {
      connected = true;
      document.documentElement.dataset.live = "on";
      changed("all");
    });
    stream.addEventListener("cell", (event) => changed(event.data));
    stream.addEventListener("error", () => {
      connected = false;
      document.documentElement.dataset.live = "off";
      // refused for good, as when too many are open: try again later
      if (stream !== null && stream.readyState === EventSource.CLOSED) {
        leave();
        setTimeout(listen, 30000);
      }
    });
  };
  const leave = () => {
    if (stream !== null) stream.close();
    stream = null;
    connected = false;
  };
  // a page that nobody sees keeps no connection
  document.addEventListener("visibilitychange", () => (document.hidden ? leave() : listen()));
  window.addEventListener("pagehide", leave);
  window.addEventListener("pageshow", listen);
  // a time that has run out on the screen has run out on the server too
  document.addEventListener("standclear:over", () => changed("all"));
  setInterval(() => {
    if (!connected && !document.hidden) changed("all");
  }, 4000);
  listen();
})();
