// Marks a step in every picture while its row or line is pointed at or focused, and plays a pass back. All that is shown
// was made by the server; here it is only put into its place at its time.
(() => {
  "use strict";
  const svgName = "http://www.w3.org/2000/svg";
  let marked = null;
  // where the player stands; what is pointed at goes before it
  let played = null;

  const mark = (step) => {
    if (step === marked) return;
    for (const one of document.querySelectorAll("[data-step][data-marked]")) delete one.dataset.marked;
    marked = step;
    if (step === null) return;
    for (const one of document.querySelectorAll(`[data-step="${CSS.escape(step)}"]`)) one.dataset.marked = "yes";
  };

  const stepOf = (event) => {
    const one = event.target instanceof Element ? event.target.closest("[data-step]") : null;
    return one ? one.dataset.step : null;
  };

  if (document.querySelector(".drawings")) {
    document.addEventListener("pointerover", (event) => mark(stepOf(event) ?? played));
    document.addEventListener("focusin", (event) => mark(stepOf(event) ?? played));
  }

  const player = (box) => {
    const plan = document.querySelector('svg[data-drawing="plan"]');
    const button = box.querySelector("[data-play]");
    const slider = box.querySelector("input");
    const says = box.querySelector("[data-says]");
    const axes = box.querySelector("[data-axes]");
    let moments = null;
    let names = [];
    let units = [];
    let begun = 0;
    let frame = 0;

    const add = (look) => {
      const path = document.createElementNS(svgName, "path");
      path.setAttribute("class", look);
      plan.append(path);
      return path;
    };
    const arm = add("arm-now");
    const tool = add("tool");

    const show = (index) => {
      const moment = moments[index];
      plan.dataset.playing = "yes";
      arm.setAttribute("d", moment.arm || "");
      tool.setAttribute("d", moment.tool || "");
      says.textContent = moment.says;
      slider.setAttribute("aria-valuetext", moment.says);
      axes.textContent = moment.axes ? names.map((name, i) => `${name} ${moment.axes[i]} ${units[i]}`).join(", ") : "axes not known";
      played = moment.step;
      mark(played);
    };

    const stop = () => {
      cancelAnimationFrame(frame);
      frame = 0;
      button.textContent = "Play";
    };

    const tick = (now) => {
      const seconds = (now - begun) / 1000;
      let index = Number(slider.value);
      while (index < moments.length - 1 && moments[index + 1].seconds <= seconds) index += 1;
      slider.value = String(index);
      show(index);
      if (index >= moments.length - 1) {
        stop();
      } else {
        frame = requestAnimationFrame(tick);
      }
    };

    const play = () => {
      if (Number(slider.value) >= moments.length - 1) slider.value = "0";
      begun = performance.now() - moments[Number(slider.value)].seconds * 1000;
      button.textContent = "Pause";
      frame = requestAnimationFrame(tick);
    };

    button.addEventListener("click", () => (frame ? stop() : play()));
    slider.addEventListener("input", () => {
      stop();
      show(Number(slider.value));
    });
    slider.addEventListener("keydown", (event) => {
      if (event.key !== " ") return;
      event.preventDefault();
      button.click();
    });

    fetch(box.dataset.moments, { headers: { Accept: "application/json" } })
      .then((answer) => (answer.ok ? answer.json() : Promise.reject(new Error(String(answer.status)))))
      .then((pass) => {
        if (!pass.moments.length) return;
        moments = pass.moments;
        names = pass.axes;
        units = pass.units;
        slider.max = String(moments.length - 1);
        box.hidden = false;
        says.textContent = moments[0].says;
        slider.setAttribute("aria-valuetext", moments[0].says);
      })
      .catch(() => {
        // without the moments there is the filmstrip
        box.hidden = true;
      });
  };

  // whoever wants no motion has the filmstrip
  if (!window.matchMedia("(prefers-reduced-motion: reduce)").matches) {
    for (const box of document.querySelectorAll("[data-player]")) player(box);
  }
})();
