// What stands at the table: boxes, DONE, UNDO and what comes next. Nothing that was
// there moves when this changes.
"use strict";

bench.table = (function () {
  const undoFor = 10000; // ms
  const mostBoxes = 240; // of a run with more, those of one height are shown
  const boxes = bench.boxes;
  const pressed = bench.press.on;
  const say = bench.told.say;
  let undo = null; // {boxes, on, from}: what the last press did
  let undoEnds = 0;
  let ticked = 0; // when DONE was

  function one(selector, from) { return (from || document).querySelector(selector); }
  function each(selector, from, f) { (from || document).querySelectorAll(selector).forEach(f); }
  function piece(run, copy) { return run.count > 1 ? ", piece " + copy + " of " + run.count : ""; }
  function height(run, h) { return "height " + run.rungs[h - 1]; }

  // How far runs are done, in words.
  function far(list) {
    const c = boxes.count(list);
    let text = c.done === c.all ? "all done" : c.done + " of " + c.all + " done";
    if (c.wait) { text += ", " + c.wait + " not stored yet"; }
    if (c.done + c.wait === 0) { text = "not begun: " + c.all + " to do"; }
    if (list.some(boxes.changed)) { text = "changed, not done; " + text; }
    return text;
  }
  function mark(e, list) {
    const c = boxes.count(list);
    e.textContent = far(list);
    e.classList.toggle("all", c.done === c.all);
    e.classList.toggle("waits", c.wait > 0);
  }

  function set(box, on, from) {
    undo = { box: box, on: on, from: from };
    undoEnds = Date.now() + undoFor;
    bench.desk.tick(box, on);
    showUndo();
    clearTimeout(set.timer);
    set.timer = setTimeout(function () { undo = null; showUndo(); }, undoFor);
  }
  function showUndo() { each(".undo", null, function (b) { b.classList.toggle("off", !undo); b.disabled = !undo; }); }
  function takeBack() {
    if (!undo) { return; }
    if (Date.now() > undoEnds) { say("That was too long ago: hold its box."); return; } // the tablet slept
    const u = undo;
    undo = null;
    clearTimeout(set.timer);
    showUndo();
    bench.desk.tick(u.box, !u.on);
    bench.parts.go(u.from);
    say(u.on ? "Not done, after all." : "Done, after all.");
  }

  // DONE ticks the first open box of the run and shows what comes next.
  function done(run) {
    if (Date.now() - ticked < bench.press.bounce) { return; }
    ticked = Date.now();
    const open = boxes.openOf(run);
    const now = open || { run: run, height: run.rungs.length, copy: run.count };
    if (open) { set(boxes.box(run, open.height, open.copy), true, "run-" + run.number); }
    const next = boxes.next(now, run.setup);
    if (!next) { bench.parts.go(afterSetup(run.setup)); return; }
    bench.parts.go("run-" + next.run.number);
    const raised = next.run.rungs[next.height - 1] !== run.rungs[now.height - 1];
    each(".stays", bench.parts.here(), function (h) { h.classList.toggle("raise", raised); });
    if (raised) { say("Now " + height(next.run, next.height) + ": unplug, set the bit, then run " + next.run.number + "."); }
  }
  function afterSetup(setup) {
    const next = boxes.next(null);
    say("Setup " + setup + " is ticked through.");
    return next ? "setup-" + next.run.setup : "sheet";
  }

  function ladder(section, rung) {
    each(".ladder li", section, function (li) { li.classList.toggle("now", Number(li.dataset.rung) === rung); });
    each(".heights", section, function (e) {
      if (e.dataset.says === undefined) { e.dataset.says = e.textContent.replace("HEIGHTS", ""); }
      e.textContent = (rung ? "HEIGHT NOW" : "ALL HEIGHTS DONE") + e.dataset.says;
    });
  }

  function boxButton(run, h, c) {
    const b = document.createElement("button");
    b.type = "button";
    b.className = "box";
    b.dataset.height = h;
    b.dataset.copy = c;
    const at = boxes.box(run, h, c);
    pressed(b, function () { set(at, true, "run-" + run.number); }, {
      may: function () { return boxes.ticked(at); },
      act: function () { set(at, false, "run-" + run.number); },
      hint: "It is ticked. Hold it to untick it.",
      lift: "Lift to untick.",
      again: "It is ticked. Press again to untick it.",
    });
    return b;
  }
  // The boxes of a run, under each height that it takes.
  function drawBoxes(section, run) {
    const into = one(".boxes", section);
    const open = boxes.openOf(run);
    const many = run.count * run.rungs.length > mostBoxes;
    const only = many ? (open ? open.height : run.rungs.length) : 0;
    if (into.dataset.only === String(only)) { return; }
    into.dataset.only = only;
    into.textContent = "";
    for (let h = 1; h <= run.rungs.length; h++) {
      if (only && h !== only) { continue; }
      const group = document.createElement("div");
      group.setAttribute("role", "group");
      const name = document.createElement("p");
      name.id = "boxes-" + run.number + "-" + h;
      name.append(height(run, h) + ": ");
      const n = one(".ladder li[data-rung='" + run.rungs[h - 1] + "'] .n", section);
      if (n) { name.append(n.cloneNode(true)); }
      group.setAttribute("aria-labelledby", name.id);
      group.append(name);
      for (let c = 1; c <= run.count; c++) { group.append(boxButton(run, h, c)); }
      into.append(group);
    }
  }
  const faces = { open: "", wait: "…", back: "…", done: "✓" };
  const words = { open: "not done", wait: "not stored yet", back: "being unticked", done: "done" };
  function showBoxes(section, run) {
    drawBoxes(section, run);
    each(".box", section, function (b) {
      const h = Number(b.dataset.height);
      const c = Number(b.dataset.copy);
      const s = boxes.state(boxes.box(run, h, c));
      b.className = b.className.replace(/ ?\bis-\w+/, "") + " is-" + s;
      b.textContent = c + " " + faces[s];
      b.setAttribute("aria-pressed", s === "done" ? "true" : s === "open" ? "false" : "mixed");
      b.setAttribute("aria-label", height(run, h) + ", piece " + c + ": " + words[s]);
    });
  }

  function showRun(section) {
    const run = boxes.find(section.dataset.run);
    const open = boxes.openOf(run);
    ladder(section, open ? run.rungs[open.height - 1] : 0);
    showBoxes(section, run);
    const b = one(".done", section);
    one("b", b).textContent = open ? "DONE" : "NEXT";
    one("span", b).textContent = open ? height(run, open.height) + piece(run, open.copy) : far([run]);
    const tried = (bench.desk.state() && bench.desk.state().tries || []).some(function (t) { return t.says === run.says; });
    one(".tried", section).textContent = (boxes.changed(run) ? "Changed, not done: it was ticked when it said something else. " : "") +
      (tried ? "What was measured here is kept under TRY." : "");
  }
  function showSetup(section) {
    const setup = Number(section.id.replace("setup-", ""));
    const open = boxes.next(null, setup);
    ladder(section, open ? open.run.rungs[open.height - 1] : 0);
    each(".row", section, function (a) {
      const next = open && open.run.number === a.dataset.run;
      a.classList.toggle("next", !!next);
      mark(one(".state", a), [boxes.find(a.dataset.run)]);
      if (next) { one(".state", a).prepend("NEXT: " + height(open.run, open.height) + piece(open.run, open.copy) + "; "); }
    });
  }
  function showSheet(section) {
    one("#batch").textContent = boxes.batch() || "on this device";
    one("#sums").textContent = far(bench.deck.runs);
    const state = bench.desk.state();
    one("#fault").textContent = state && state.fault ? "The plan has a fault now: " + state.fault : "";
    each("[data-setup]", section, function (a) { mark(one(".state", a), boxes.ofSetup(Number(a.dataset.setup))); });
    each(".piece", section, function (p) {
      const runs = bench.deck.runs.filter(function (r) { return r.piece === p.dataset.piece; });
      if (runs.length) { mark(one("summary .state", p), runs); } else { one("summary .state", p).textContent = "no cuts"; }
    });
    const next = boxes.next(null);
    const a = one("#next");
    a.setAttribute("href", next ? "#run-" + next.run.number : "#print");
    one("span", a).textContent = next
      ? "run " + next.run.number + ", " + next.run.piece + ", " + height(next.run, next.height) + piece(next.run, next.copy)
      : bench.deck.runs.length ? "all is ticked" : "nothing to cut";
  }
  function showTries(section) {
    const state = bench.desk.state();
    for (const t of state && state.tries || []) {
      if (t.says !== section.dataset.says) { continue; }
      const answer = one("form[data-what='" + t.what + "'] .answer", section);
      if (answer && !answer.dataset.fresh && answer.dataset.html !== t.html) {
        answer.dataset.html = t.html;
        answer.innerHTML = t.html; // made by the program from a template
      }
    }
  }

  function show() {
    const section = bench.parts.here();
    if (!section) { return; }
    const kind = section.id.split("-")[0];
    if (kind === "run") { showRun(section); }
    if (kind === "setup") { showSetup(section); }
    if (kind === "sheet") { showSheet(section); }
    if (kind === "try") { showTries(section); }
    showUp(kind, section);
    bench.told.refresh();
  }
  // What lies above: the setup of a run, the run of a try.
  function showUp(kind, section) {
    const up = one("#up");
    up.hidden = kind !== "run" && kind !== "try";
    if (up.hidden) { return; }
    const run = boxes.find(section.dataset.run);
    const above = kind === "run" ? "setup " + run.setup : "run " + run.number;
    up.textContent = above.toUpperCase();
    up.setAttribute("href", "#" + above.replace(" ", "-"));
    up.classList.toggle("back", kind === "try");
  }

  // The runs at which something was measured in this batch, and how many besides say
  // something else by now, since the plan changed.
  function measured() {
    const state = bench.desk.state();
    const said = new Set((state && state.tries || []).map(function (t) { return t.says; }));
    const runs = bench.deck.runs.filter(function (r) { return said.has(r.says); });
    return { runs: runs, gone: said.size - new Set(runs.map(function (r) { return r.says; })).size };
  }
  // A new batch shows nothing of what was measured in the last: where anything was, it is
  // asked whether that is to be kept first.
  function askBatch(batch, asks) {
    if (!batch) { return; }
    async function begins() {
      if (asks) { asks.hidden = true; }
      say((await bench.desk.newBatch()) || "A new batch: nothing is ticked.");
    }
    function ask() {
      const was = measured();
      const all = was.runs.length + was.gone;
      if (!asks || !all) { begins(); return; }
      one("#batch-measured").textContent = "In this batch something was measured at " + (all === 1 ? "one run:" : all + " runs:");
      const list = one("ul", asks);
      list.textContent = "";
      for (const run of was.runs) {
        const item = document.createElement("li");
        const a = document.createElement("a");
        a.className = "target wide";
        a.href = "#try-" + run.number;
        a.textContent = "setup " + run.setup + ", run " + run.number + ", " + run.piece;
        item.append(a);
        list.append(item);
      }
      if (was.gone) {
        const item = document.createElement("li");
        item.textContent = (was.gone === 1 ? "one run" : was.gone + " runs") + " as the plan had " + (was.gone === 1 ? "it" : "them") + " before it changed";
        list.append(item);
      }
      asks.hidden = false;
      asks.focus();
      asks.scrollIntoView();
      say("No new batch yet: what was measured is asked about first.");
    }
    pressed(batch, function () {}, {
      may: function () { return true; },
      act: ask,
      hint: "Hold it to begin a new batch.",
      lift: "Lift to begin a new batch.",
      again: "Press again to begin a new batch, with nothing ticked.",
    });
    if (!asks) { return; }
    pressed(one("#batch-begins"), begins);
    pressed(one("#batch-stays"), function () { asks.hidden = true; batch.focus(); });
  }

  return {
    begin: function () {
      each(".done", null, function (b) {
        const run = boxes.find(b.closest("section").dataset.run);
        pressed(b, function () { done(run); });
      });
      each(".undo", null, function (b) { pressed(b, takeBack); });
      showUndo();
      askBatch(one("#new-batch"), one("#batch-asks"));
      pressed(one("#take"), async function () {
        if (bench.queue.length() && !bench.kept.works()) { say("Not before all ticks are stored."); return; }
        const wrong = await bench.desk.take();
        if (wrong) { say(wrong); }
      });
      boxes.watch(show);
      bench.desk.watch(show);
      bench.parts.watch(function () {
        each(".raise", null, function (e) { e.classList.remove("raise"); });
        show();
      });
    },
  };
})();
