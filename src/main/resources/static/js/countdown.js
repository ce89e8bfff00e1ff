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
  const tick = () => {
    for (const time of document.querySelectorAll("time[data-countdown]")) {
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
  tick();
  setInterval(tick, 1000);
})();
