// Ticks on their way. A tick stays in the queue, and in this browser, until it is
// known to be stored. Every page that is opened counts its ticks for itself, so that
// two of one browser never give two ticks one number.
"use strict";

bench.kept = (function () {
  // A file may be allowed to keep nothing, and a browser may be full.
  let works = true;
  try {
    localStorage.setItem("fencecard-probe", "1");
    localStorage.removeItem("fencecard-probe");
  } catch (e) { works = false; }
  function tried(f) { try { return f(); } catch (e) { works = false; return null; } }
  return {
    works: function () { return works; },
    get: function (k) { return works ? tried(function () { return localStorage.getItem(k); }) : null; },
    set: function (k, v) { return works && tried(function () { localStorage.setItem(k, v); return true; }) === true; },
    drop: function (k) { if (works) { tried(function () { localStorage.removeItem(k); }); } },
    names: function (prefix) {
      return works ? tried(function () { return Object.keys(localStorage).filter(function (k) { return k.indexOf(prefix) === 0; }); }) || [] : [];
    },
  };
})();

bench.parse = function (text, otherwise) {
  try { return JSON.parse(text) || otherwise; } catch (e) { return otherwise; }
};

bench.queue = (function () {
  const prefix = "fencecard-queue-";
  const device = "page-" + letters(16);
  const own = prefix + device;
  let counter = 0;
  let mine = []; // ticked on this page
  let left = []; // left behind by pages that were closed: [name, text, ticks]

  function letters(n) {
    const bytes = new Uint8Array(n);
    crypto.getRandomValues(bytes);
    return Array.from(bytes, function (b) { return "abcdefghijklmnopqrstuvwxyz234567"[b % 32]; }).join("");
  }
  function all() { return left.reduce(function (sum, l) { return sum.concat(l[2]); }, []).concat(mine); }
  function keep() {
    if (mine.length) { bench.kept.set(own, JSON.stringify(mine)); } else { bench.kept.drop(own); }
    bench.boxes.wait(all());
  }

  return {
    length: function () { return all().length; },
    // Takes up what closed pages left.
    takeUp: function () {
      left = bench.kept.names(prefix).filter(function (n) { return n !== own; }).sort().map(function (n) {
        const text = bench.kept.get(n);
        return [n, text, bench.parse(text, []).filter(function (t) { return t && t.device && t.counter; })];
      });
      bench.boxes.wait(all());
    },
    add: function (box, on, plan) {
      counter++;
      mine.push({
        device: device, counter: counter, time: new Date().toISOString(), plan: plan, batch: bench.boxes.batch(),
        says: box.says, height: box.height, piece: box.piece, copy: box.copy, on: on,
      });
      keep();
    },
    // The first ticks of one device, as many as may be sent at once.
    first: function (most) {
      const list = all();
      const some = list.filter(function (t) { return t.device === list[0].device; }).slice(0, most);
      return some;
    },
    // These were stored, or are none.
    drop: function (some) {
      const gone = new Set(some.map(function (t) { return t.device + " " + t.counter; }));
      const stays = function (t) { return !gone.has(t.device + " " + t.counter); };
      mine = mine.filter(stays);
      for (const l of left) {
        l[2] = l[2].filter(stays);
        // A page that still writes here keeps what it has; what comes twice counts once.
        if (!l[2].length && bench.kept.get(l[0]) === l[1]) { bench.kept.drop(l[0]); }
      }
      left = left.filter(function (l) { return l[2].length; });
      keep();
    },
  };
})();
