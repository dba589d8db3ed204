// To whom ticks are handed over: the program that serves the page, or, in a file by
// itself, this browser.
"use strict";

bench.desk = (function () {
  const served = bench.deck.served;
  const again = 3000; // ms until what failed is tried once more
  const most = 500; // ticks at once
  let state = null; // as the program said it last
  let gone = served; // until it answers
  let refused = ""; // why it takes no ticks
  let busy = false;
  let timer = 0;
  let chunk = most;
  let events = null;
  const watchers = [];

  function tell() { for (const w of watchers) { w(); } }
  function url(path) { return path + "?deck=" + encodeURIComponent(bench.deck.code); }
  function post(path, body) {
    return fetch(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });
  }
  function adopt(s) {
    if (!s || !Array.isArray(s.ticks)) { return; }
    state = s;
    bench.boxes.adopt(s);
    tell();
  }

  async function hand() {
    if (busy || !bench.queue.length()) { return; }
    busy = true;
    try {
      while (bench.queue.length()) {
        if (!(await handSome())) { break; }
      }
    } finally {
      busy = false;
      tell();
    }
    clearTimeout(timer);
    if (bench.queue.length()) { timer = setTimeout(hand, again); }
  }

  // True where more may be handed over at once.
  async function handSome() {
    const some = bench.queue.first(chunk);
    const ticks = some.map(function (t) { const copy = Object.assign({}, t); delete copy.device; return copy; });
    let answer;
    try {
      answer = await post(url("/ticks"), { device: some[0].device, sent: new Date().toISOString(), ticks: ticks });
    } catch (e) {
      gone = true;
      return false;
    }
    gone = false;
    const said = await answer.json().catch(function () { return {}; });
    if (answer.ok) {
      refused = "";
      const taken = some.filter(function (t) { return t.counter <= said.taken; });
      if (said.state) { state = said.state; bench.boxes.adopt(said.state); }
      bench.queue.drop(taken);
      chunk = most;
      return taken.length > 0;
    }
    if ((answer.status === 400 || answer.status === 413) && chunk > 1) {
      chunk = answer.status === 400 ? 1 : Math.max(1, Math.floor(chunk / 2));
      return true;
    }
    if (answer.status === 400) {
      bench.queue.drop(some); // no tick of this program's
      return true;
    }
    refused = answer.status === 403 ? "This device is not let in any more: scan the code at the desk." : said.wrong || "The program did not take them.";
    return false;
  }

  function listen() {
    if (events) { events.close(); }
    events = new EventSource(url("/events"));
    events.addEventListener("state", function (e) {
      gone = false;
      adopt(bench.parse(e.data, null));
      hand();
    });
    events.onerror = function () {
      gone = true;
      tell();
      if (events.readyState === EventSource.CLOSED) { setTimeout(ask, again); }
    };
  }
  // Asks whether the program is there again, or has shut this device out.
  async function ask() {
    try {
      const answer = await fetch(url("/state"));
      refused = answer.status === 403 ? "This device is not let in any more: scan the code at the desk." : "";
      if (answer.ok) { gone = false; adopt(await answer.json()); listen(); hand(); return; }
    } catch (e) { gone = true; }
    tell();
    setTimeout(ask, again);
  }

  // A tablet that slept may hold a connection that died meanwhile without a word.
  function wake() {
    if (events.readyState !== EventSource.CLOSED) { listen(); } // else ask is on its way
    hand();
  }

  // In a file by itself.
  const name = "fencecard-ticks-" + bench.deck.plan;
  let memory = {};
  function own() {
    const kept = bench.parse(bench.kept.get(name), null);
    return bench.kept.works() ? kept || {} : memory;
  }
  function adoptOwn() {
    const ticks = Object.keys(own()).map(function (k) {
      const b = bench.parse(k, []);
      return { says: b[0], height: b[1], piece: b[2], copy: b[3], on: true };
    });
    bench.boxes.adopt({ ticks: ticks, batch: "" });
    tell();
  }
  function keepOwn(all) {
    memory = all;
    bench.kept.set(name, JSON.stringify(all));
    adoptOwn();
  }

  return {
    watch: function (w) { watchers.push(w); },
    state: function () { return state; },
    gone: function () { return gone; },
    refused: function () { return refused; },
    begin: function () {
      if (!served) {
        addEventListener("storage", function (e) { if (e.key === name) { adoptOwn(); } });
        adoptOwn();
        return;
      }
      bench.queue.takeUp();
      listen();
      addEventListener("online", hand);
      document.addEventListener("visibilitychange", function () { if (!document.hidden) { wake(); } });
      document.addEventListener("resume", wake);
      addEventListener("pageshow", function (e) { if (e.persisted) { wake(); } });
      hand();
    },
    tick: function (box, on) {
      if (!served) {
        const all = Object.assign({}, own());
        if (on) { all[bench.boxes.key(box)] = 1; } else { delete all[bench.boxes.key(box)]; }
        keepOwn(all);
        return;
      }
      bench.queue.add(box, on, state ? state.plan : "");
      hand();
    },
    newBatch: async function () {
      if (!served) { keepOwn({}); return ""; }
      try {
        const answer = await post(url("/batch"), {});
        if (!answer.ok) { return "The program began no new batch."; }
        adopt(await answer.json());
        return "";
      } catch (e) { gone = true; tell(); return "The program is gone: no new batch was begun."; }
    },
    // Takes the plan as it is now: the page is loaded anew.
    take: async function () {
      try {
        const answer = await post(url("/take"), { file_code: state.file_code });
        if (answer.ok) { location.reload(); return ""; }
        adopt(await answer.json().catch(function () { return null; }));
        return answer.status === 409 ? "The plan changed once more: press again." : "It was not taken.";
      } catch (e) { gone = true; tell(); return ""; }
    },
  };
})();
