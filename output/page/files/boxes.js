// The boxes of this deck. Which are done was stored, by the program that serves the
// page or in this browser; what waits to be stored is kept apart, and shown apart.
"use strict";

const bench = { deck: JSON.parse(document.getElementById("deck").textContent) };

bench.boxes = (function () {
  const runs = bench.deck.runs;
  const stored = new Map(); // the key of a box -> done or not, as it was stored
  let waiting = []; // ticks that are not stored yet, in their order
  let wanted = new Map(); // the key of a box -> how it will stand once those are
  let batch = "";
  let changed = new Set(); // what runs say that were ticked when they said something else
  const watchers = [];

  function key(box) { return JSON.stringify([box.says, box.height, box.piece, box.copy]); }
  function box(run, height, copy) { return { says: run.says, height: height, piece: run.piece, copy: copy }; }

  // "open", "done", or, where that is not stored yet, "wait" for a tick and "back" for
  // the taking back of one.
  function state(b) {
    const k = key(b);
    const done = stored.get(k) === true;
    const will = wanted.has(k) ? wanted.get(k) : done;
    return will === done ? (done ? "done" : "open") : (will ? "wait" : "back");
  }
  // What waits for another batch ticks nothing of this one.
  function want() {
    wanted = new Map();
    for (const t of waiting) {
      if (!t.batch || t.batch === batch) { wanted.set(key(t), t.on); }
    }
  }
  // A box that waits to be done is not cut again; one whose tick is being taken back is.
  function ticked(b) { const s = state(b); return s === "done" || s === "wait"; }

  function count(list) {
    const sum = { all: 0, done: 0, wait: 0 };
    for (const run of list) {
      for (let h = 1; h <= run.rungs.length; h++) {
        for (let c = 1; c <= run.count; c++) {
          sum.all++;
          const s = state(box(run, h, c));
          if (s === "done") { sum.done++; } else if (s !== "open") { sum.wait++; }
        }
      }
    }
    return sum;
  }

  // The first copy that is not ticked at a height, 0 for none.
  function openCopy(run, height) {
    for (let c = 1; c <= run.count; c++) {
      if (!ticked(box(run, height, c))) { return c; }
    }
    return 0;
  }

  // The first box of a run that is not ticked, in climbing order.
  function openOf(run) {
    for (let h = 1; h <= run.rungs.length; h++) {
      const c = openCopy(run, h);
      if (c) { return { run: run, height: h, copy: c }; }
    }
    return null;
  }

  // The next box in the order of work behind a step, or before it where none is
  // left behind; of a setup alone where one is named.
  function next(after, setup) {
    const steps = bench.deck.steps;
    const from = after ? steps.findIndex(function (s) { return runs[s[0]] === after.run && s[1] === after.height; }) : 0;
    for (let i = 0; i < steps.length; i++) {
      const step = steps[(Math.max(from, 0) + i) % steps.length];
      const run = runs[step[0]];
      if (setup && run.setup !== setup) { continue; }
      const c = openCopy(run, step[1]);
      if (c) { return { run: run, height: step[1], copy: c }; }
    }
    return null;
  }

  function tell() { for (const w of watchers) { w(); } }

  return {
    box: box, key: key, state: state, ticked: ticked, count: count, openOf: openOf, next: next,
    find: function (number) { return runs.find(function (r) { return r.number === number; }); },
    ofSetup: function (setup) { return runs.filter(function (r) { return r.setup === setup; }); },
    changed: function (run) { return changed.has(run.says); },
    batch: function () { return batch; },
    watch: function (w) { watchers.push(w); },
    // What was stored takes the place of all that was known.
    adopt: function (state) {
      stored.clear();
      for (const t of state.ticks || []) { stored.set(key(t), t.on); }
      batch = state.batch || "";
      changed = new Set(state.changed || []);
      want();
      tell();
    },
    wait: function (list) { waiting = list; want(); tell(); },
  };
})();
