// Counts down beside a time that is already written out: <time class="countdown" datetime="..." data-countdown>.
(() => {
  "use strict";
  const words = (ms) => {
    const left = Math.max(0, Math.ceil(ms / 1000));
    const minutes = Math.floor(left / 60);
    return minutes >= 60
      ? `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")} min left`
      : `${minutes}:${String(left % 60).padStart(2, "0")} left`;
  };
  // the server's clock counts, not this machine's
  const server = Date.parse(document.documentElement.dataset.now || "");
  const offset = Number.isNaN(server) ? 0 : server - Date.now();
  let onPaper = false;
  const tick = () => {
    if (onPaper) return;
    for (const time of document.querySelectorAll("time[data-countdown]")) {
      time.dataset.said ??= time.textContent;
      const until = Date.parse(time.dateTime);
      if (Number.isNaN(until)) continue;
      const left = until - Date.now() - offset;
      time.textContent = left > 0 ? words(left) : time.dataset.countdown || "over";
      const state = left > 0 ? "counting" : "over";
      if (state === "over" && time.dataset.state === "counting") {
        document.dispatchEvent(new CustomEvent("standclear:over"));
      }
      time.dataset.state = state;
    }
  };
  // paper does not count: it says until when
  addEventListener("beforeprint", () => {
    onPaper = true;
    for (const time of document.querySelectorAll("time[data-said]")) time.textContent = time.dataset.said;
  });
  addEventListener("afterprint", () => {
    onPaper = false;
    tick();
  });
  tick();
  setInterval(tick, 1000);
})();
