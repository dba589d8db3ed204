// The keypad of TRY: it writes what is pressed into the field that is being filled,
// and computes nothing.
"use strict";

bench.keys = (function () {
  const inches = [["1", "2", "3", "4", "5", "6", "7", "8", "9", "and", "0", "←"], ["/2", "/4", "/8", "/16", "/32", "/64"]];
  const metric = [["1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "←"]];
  const names = { "←": "take the last one away", and: "and, before a fraction", ".": "point", "/2": "halves", "/4": "quarters", "/8": "eighths", "/16": "sixteenths", "/32": "thirty-seconds", "/64": "sixty-fourths" };
  let field = null;

  function press(key) {
    if (!field) { return; }
    const text = field.value;
    if (key === "←") {
      field.value = text.replace(/(\/(2|4|8|16|32|64)|.)$/, "");
    } else if (key !== "and") {
      field.value = text + key;
    } else if (text.trim() && !/ /.test(text)) {
      field.value = text + " ";
    }
    shown();
  }
  function shown() {
    const out = field && field.closest("section").querySelector(".keypad output");
    if (!out) { return; }
    out.querySelector("span").textContent = field.closest("label").textContent;
    out.querySelector("b").textContent = field.value || "–";
  }
  function build(unit) {
    const pad = document.createElement("div");
    pad.className = "keypad";
    pad.setAttribute("role", "group");
    pad.setAttribute("aria-label", "Keypad");
    const out = document.createElement("output");
    out.append(document.createElement("span"), document.createElement("b"));
    pad.append(out);
    for (const row of unit === "mm" ? metric : inches) {
      const line = document.createElement("div");
      // Three beside one another.
      for (const key of row) {
        const b = document.createElement("button");
        b.type = "button";
        b.textContent = key;
        b.dataset.key = key;
        if (names[key]) { b.setAttribute("aria-label", names[key]); }
        b.addEventListener("click", function () { press(key); });
        line.append(b);
      }
      pad.append(line);
    }
    if (unit !== "mm") {
      const how = document.createElement("p");
      how.textContent = "For 1 3/16 press 1, and, 3, /16.";
      pad.append(how);
    }
    // In place of the form's own button, which is far below where there are many lines.
    const ask = document.createElement("button");
    ask.className = "target ask";
    pad.append(ask);
    return pad;
  }
  function choose(input) {
    field = input;
    const form = input.closest("form");
    const section = input.closest("section");
    section.querySelectorAll("input.filling").forEach(function (i) { i.classList.remove("filling"); });
    input.classList.add("filling");
    let pad = section.querySelector(".keypad");
    if (!pad) { pad = build(input.dataset.unit); }
    section.querySelectorAll("form > button").forEach(function (own) {
      own.hidden = own.parentElement === form;
      if (own.hidden) { pad.querySelector(".ask").textContent = own.textContent; }
    });
    form.insertBefore(pad, input.closest("label").nextSibling);
    shown();
  }

  async function send(form) {
    const answer = form.querySelector(".answer");
    const body = new URLSearchParams(new FormData(form));
    try {
      const got = await fetch("/try", { method: "POST", headers: { Accept: "application/json" }, body: body });
      const said = await got.json();
      answer.dataset.fresh = "yes";
      if (said.html) { answer.innerHTML = said.html; } else { answer.textContent = said.wrong || "That was not answered."; } // made by the program from a template
      answer.classList.toggle("right", !!said.ok);
    } catch (e) {
      answer.textContent = "The program does not answer, and this page computes nothing by itself. What you typed stays.";
    }
    answer.scrollIntoView({ block: "nearest" });
  }

  return {
    begin: function () {
      document.querySelectorAll(".try form").forEach(function (form) {
        form.querySelectorAll("input[type=text]").forEach(function (input) {
          input.setAttribute("inputmode", "none");
          input.addEventListener("focus", function () { choose(input); });
          input.addEventListener("input", shown);
        });
        form.addEventListener("submit", function (e) { e.preventDefault(); send(form); });
      });
      bench.parts.watch(function (here) {
        const first = here.querySelector("form input[type=text]");
        if (first && !here.querySelector(".keypad")) { choose(first); }
      });
    },
  };
})();
