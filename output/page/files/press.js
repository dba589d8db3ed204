// How a finger presses: what is pressed acts when it is lifted, once.
"use strict";

bench.press = (function () {
  const hold = 700; // ms to hold what must be held until lifting acts
  const sure = 4000; // ms in which a key is pressed again to the same end
  const bounce = 600; // ms in which a finger that trembles presses once
  let pressedAt = 0; // when the last press began, by the clock of events
  let lifted = -bounce; // when one was acted on

  // A press acts when it is lifted where it began. One that must be held acts where it
  // was told that lifting would; a key, or a screen reader, presses twice for that.
  function on(button, short, held) {
    let began = false;
    let timer = 0;
    let asked = 0;
    function must() { return !!held && held.may(); }
    function end() { clearTimeout(timer); began = false; button.classList.remove("held", "holding"); }
    function over(e) {
      const b = button.getBoundingClientRect();
      return e.clientX >= b.left && e.clientX <= b.right && e.clientY >= b.top && e.clientY <= b.bottom;
    }
    button.addEventListener("pointerdown", function (e) {
      if (e.button) { return; }
      began = true;
      if (must()) {
        button.classList.add("holding");
        timer = setTimeout(function () { button.classList.add("held"); bench.told.say(held.lift); }, hold);
      }
    });
    button.addEventListener("pointercancel", end);
    button.addEventListener("pointerup", function (e) {
      const long = button.classList.contains("held");
      const mine = began && over(e);
      end();
      lifted = e.timeStamp;
      if (!mine) { return; }
      if (!must()) { short(); } else if (long) { held.act(); } else { bench.told.say(held.hint); }
    });
    button.addEventListener("contextmenu", function (e) { e.preventDefault(); });
    button.addEventListener("click", function () {
      if (!must()) { short(); return; }
      if (Date.now() - asked < sure) { asked = 0; held.act(); return; }
      asked = Date.now();
      bench.told.say(held.again);
    });
  }

  return {
    on: on,
    bounce: bounce,
    begin: function () {
      // A browser follows a touch with a click, on what then lies under the finger,
      // however late a slow one comes to it. A click of the next touch is its own.
      document.addEventListener("pointerdown", function (e) { pressedAt = e.timeStamp; }, true);
      document.addEventListener("click", function (e) {
        const next = pressedAt > lifted && e.timeStamp >= pressedAt;
        if (e.detail && !next && e.timeStamp - lifted < bounce) { e.stopPropagation(); e.preventDefault(); }
      }, true);
    },
  };
})();
