// Which part of the page is shown. The address says it: its path where the page is
// served, what stands behind # in a file.
"use strict";

bench.parts = (function () {
  const served = bench.deck.served;
  const scrolled = new Map();
  const watchers = [];
  let here = null;
  let depth = 0; // how many parts of this page lie behind in the browser's history

  function idOf(place) {
    if (place.hash.length > 1) { return decodeURIComponent(place.hash.slice(1)); }
    const path = served ? place.pathname.split("/").filter(Boolean).join("-") : "";
    return path || "sheet";
  }
  function addressOf(id) {
    if (!served) { return "#" + id; }
    return id === "sheet" ? "/" : "/" + id.replace("-", "/");
  }
  function show(id, back) {
    const part = document.getElementById(id);
    const next = part && part.tagName === "SECTION" ? part : document.getElementById("sheet");
    if (here) {
      scrolled.set(here.id, scrollY);
      here.classList.remove("here");
    }
    here = next;
    here.classList.add("here");
    const head = here.querySelector("h1, h2");
    document.title = head.textContent + " – " + bench.deck.title + ", deck " + bench.deck.code;
    for (const w of watchers) { w(here); }
    bench.parts.fit();
    scrollTo(0, back ? scrolled.get(here.id) || 0 : 0);
    head.focus({ preventScroll: true });
  }

  return {
    here: function () { return here; },
    watch: function (w) { watchers.push(w); },
    go: function (id) {
      if (here && here.id === id) { return; }
      depth++;
      history.pushState({ depth: depth }, "", addressOf(id));
      show(id);
    },
    back: function (otherwise) {
      if (depth > 0) { history.back(); } else { bench.parts.go(otherwise); }
    },
    // Letters as large as they are meant to be, or as large as there is room for.
    fit: function () {
      for (const e of here.querySelectorAll(".big, .huge")) {
        e.style.fontSize = "";
        const room = e.parentElement.clientWidth;
        if (e.scrollWidth > room) {
          e.style.fontSize = Math.floor(parseFloat(getComputedStyle(e).fontSize) * room / e.scrollWidth * 10) / 10 + "px";
        }
      }
    },
    begin: function () {
      if (history.state && history.state.depth) { depth = history.state.depth; }
      if ("scrollRestoration" in history) { history.scrollRestoration = "manual"; }
      addEventListener("popstate", function (e) {
        depth = e.state && e.state.depth ? e.state.depth : 0;
        show(idOf(location), true);
      });
      addEventListener("resize", function () { bench.parts.fit(); });
      document.addEventListener("click", function (e) {
        const a = e.target.closest("a[href^='#']");
        if (!a || e.ctrlKey || e.metaKey || e.shiftKey) { return; }
        e.preventDefault();
        if (a.classList.contains("back")) { bench.parts.back(a.hash.slice(1)); } else { bench.parts.go(a.hash.slice(1)); }
      });
      show(idOf(location));
    },
  };
})();
