// The line that stays in sight: how things are, in words.
"use strict";

bench.told = (function () {
  const long = 4000; // ms that what was done just now stays
  let said = "";
  let timer = 0;

  function plural(n, thing) { return n + " " + thing + (n === 1 ? "" : "s"); }

  // Says what was done just now, in place of how things are.
  function say(text) {
    said = text;
    refresh();
    clearTimeout(timer);
    timer = setTimeout(function () { said = ""; refresh(); }, long);
  }

  // A deck that differs is taken between runs alone.
  function refresh() {
    const state = bench.desk.state();
    const waits = bench.queue.length();
    const here = bench.parts.here();
    const between = here && (here.id === "sheet" || here.id.indexOf("setup-") === 0);
    const differs = state && state.file_code && state.file_code !== bench.deck.code;
    document.querySelector("#take").hidden = !(differs && between && !bench.desk.gone());
    let text = "Ticks are stored at the desk.";
    if (!bench.deck.served) {
      text = bench.kept.works() ? "Ticks are kept in this browser." : "This browser keeps nothing: ticks are lost when the page is closed.";
    } else if (bench.desk.refused()) {
      text = bench.desk.refused();
    } else if (bench.desk.gone()) {
      text = "The program does not answer. Go on: ticks wait here for it.";
    } else if (differs) {
      text = "The plan was changed: " + (state.differs ? plural(state.differs, "run") + " differ" + (state.differs === 1 ? "s" : "") : "nothing of the runs") + " from this page." +
        (between ? "" : " Take them between runs.");
    } else if (state && state.fault) {
      text = "The plan has a fault now; this is its last good deck.";
    }
    if (waits) { text = plural(waits, "tick") + " not stored yet. " + text; }
    if (waits && bench.deck.served && !bench.kept.works()) { text += " This browser keeps nothing: leave the page open."; }
    text = said || text;
    const told = document.querySelector("#told");
    if (told.textContent !== text) {
      told.textContent = text;
      const line = told.parentElement;
      line.classList.remove("tight");
      line.classList.toggle("tight", line.scrollHeight > line.clientHeight);
    }
    document.body.classList.toggle("alone", bench.deck.served && (bench.desk.gone() || !!bench.desk.refused()));
  }

  return { say: say, refresh: refresh };
})();
