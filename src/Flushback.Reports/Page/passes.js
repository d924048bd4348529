// Steps through the passes. Without it, and on paper, all of them stand one under another.
(function () {
  "use strict";
  var steps = Array.prototype.slice.call(document.querySelectorAll(".step"));
  var bar = document.getElementById("stepper");
  var told = document.getElementById("told");
  var back = document.getElementById("back");
  var on = document.getElementById("on");
  var shown = 0;

  function show(next) {
    shown = Math.min(Math.max(next, 0), steps.length - 1);
    steps.forEach(function (step, i) {
      step.classList.toggle("shown", i === shown);
    });
    Array.prototype.forEach.call(document.querySelectorAll("[data-step]"), function (row) {
      row.classList.toggle("current", Number(row.getAttribute("data-step")) === shown);
    });
    told.textContent = steps[shown].getAttribute("data-told");
    back.disabled = shown === 0;
    on.disabled = shown === steps.length - 1;
  }

  document.addEventListener("keydown", function (event) {
    if (event.altKey || event.ctrlKey || event.metaKey) {
      return;
    }
    var to = {
      ArrowLeft: shown - 1,
      ArrowRight: shown + 1,
      Home: 0,
      End: steps.length - 1
    }[event.key];
    if (to !== undefined) {
      event.preventDefault();
      show(to);
    }
  });
  back.addEventListener("click", function () { show(shown - 1); });
  on.addEventListener("click", function () { show(shown + 1); });
  document.body.classList.add("stepping");
  bar.hidden = false;
  show(0);
})();
