// The plan's screen. Everything said about the plan comes from the program; this
// only asks for it, and shows it.

import { forms } from "/plan/forms.js";

const of = (id) => document.getElementById(id);
const told = (words) => { of("told").textContent = of("told").title = words; };

// The shop file of a plan has this screen too, without sheets.
const ofShop = new URLSearchParams(location.search).get("file") === "shop";

async function ask(method, path, body, signal) {
  const answer = await fetch(path + (ofShop ? "?file=shop" : ""), { method, signal, headers: { "Content-Type": "application/json" }, body: body && JSON.stringify(body) });
  const said = await answer.json();
  if (!answer.ok) throw new Error(said.trouble);
  return said;
}

// A plain field, where the editor does not start.
function field(parent, text, changed) {
  const area = document.createElement("textarea");
  area.setAttribute("aria-label", "the plan's text");
  area.spellcheck = false;
  area.value = text;
  area.addEventListener("input", changed);
  parent.append(area);
  return {
    text: () => area.value,
    put(now) { area.value = now; changed(); }, // beyond what the browser can undo
    faults() {},
    go(number, from) {
      const before = area.value.split("\n").slice(0, number - 1).join("\n");
      const at = before.length + (number > 1 ? 1 : 0) + from;
      area.focus();
      area.setSelectionRange(at, at);
    },
    undo() { area.focus(); document.execCommand("undo"); },
    redo() { area.focus(); document.execCommand("redo"); },
    undoes: () => "typing",
    redoes: () => "typing",
    focus: () => area.focus(),
  };
}

let editor, base = "", looking, making, asking, unsaved;

// keeper keeps in the browser what is not saved yet, of one file, so that it is here
// again after the page was left. What cannot be kept there is asked for at leaving.
function keeper(file) {
  const text = "fencecard-unsaved:" + file, form = "fencecard-form:" + file;
  let kept = true;
  const put = (key, what) => {
    try {
      if (what) localStorage.setItem(key, JSON.stringify(what)); else localStorage.removeItem(key);
      return true;
    } catch {
      return !what;
    }
  };
  const get = (key) => { try { return JSON.parse(localStorage.getItem(key)); } catch { return null; } };
  return {
    kept: () => kept,
    text: () => get(text),
    keepText() { kept = put(text, editor.text() === base ? null : { base, text: editor.text() }); },
    form: () => get(form),
    keepForm(q) { put(form, q); },
  };
}

// later runs something when no key came for a while.
function later(wait, what) {
  let timer;
  return () => { clearTimeout(timer); timer = setTimeout(what, wait); };
}

// go goes to a line, and shows the text.
function go(line, from) {
  fold(false);
  editor.go(line, from);
}

// form opens the form of what stands there.
function form(at) {
  view(true);
  asking.go(at);
}

// fold folds the text away, or shows it; the browser keeps which, for this plan.
function fold(away) {
  document.querySelector("main").classList.toggle("folded", away);
  of("fold").setAttribute("aria-pressed", !away);
  try { localStorage.setItem("fencecard-text", away ? "folded" : "shown"); } catch { /* then it is not kept */ }
}

const folded = () => document.querySelector("main").classList.contains("folded");

// item is something said of the plan, with a button that opens its form and one that
// goes to its line.
function item(said) {
  const item = document.createElement("li");
  const place = (words, className, pressed) => {
    const button = document.createElement("button");
    button.type = "button";
    button.className = className;
    button.textContent = words;
    button.addEventListener("click", pressed);
    item.append(button);
  };
  const words = (words, className) => {
    const part = document.createElement("span");
    part.className = className;
    part.textContent = words;
    item.append(part);
  };
  for (const one of [said, ...said.also ?? []]) if (one.at) place(one.of, "of", () => form(one.at));
  if (said.line > 0) place("line " + said.line, "line", () => go(said.line, said.from));
  words(said.words, "words");
  words(said.plain, "plain");
  if (!said.plain) item.className = "again";
  return item;
}

function show(faults) {
  editor.faults(faults.filter((f) => f.line > 0));
  of("faults").replaceChildren(...faults.map(item));
  stand(faults.length > 0);
}

// begins shows what comes first where the plan has no piece yet.
function begins(now) {
  of("begins").hidden = !now;
  if (!now || !of("sheets").dataset.code) return;
  of("deck").replaceChildren();
  delete of("sheets").dataset.code;
  stand(false);
}

// stand tells whether the sheets are those of an earlier text.
function stand(old) {
  of("sheets").classList.toggle("old", old);
  of("before").hidden = !old || !of("sheets").dataset.code;
  of("none").hidden = !old || !!of("sheets").dataset.code;
  if (of("print")) of("print").disabled = !of("sheets").dataset.code;
}

async function look() {
  looking?.abort();
  const mine = looking = new AbortController();
  try {
    const seen = await ask("POST", "/plan/look", { text: editor.text() }, mine.signal);
    if (mine.signal.aborted) return;
    show(seen.faults);
    begins(seen.begins);
    if (seen.faults.length === 0 && !seen.begins && !ofShop) make();
  } catch (e) {
    if (!mine.signal.aborted) told(unreachable(e));
  }
}

const make = later(200, async () => {
  making?.abort();
  const mine = making = new AbortController();
  try {
    const deck = await ask("POST", "/plan/sheets", { text: editor.text() }, mine.signal);
    if (mine.signal.aborted) return;
    if (deck.faults.length > 0) { show(deck.faults); return; }
    const opened = [...document.querySelectorAll("#deck details[open]")].map((d) => `#deck details.${d.className}[data-setup="${d.dataset.setup}"]`);
    of("deck").innerHTML = deck.html; // the program's own, every name in it as text
    for (const one of opened) document.querySelector(one)?.setAttribute("open", "");
    of("sheets").dataset.code = deck.code;
    stand(false);
  } catch (e) {
    if (!mine.signal.aborted) told(unreachable(e));
  }
});

// Why the setups are there is asked when one wants to know it of the first.
async function why(opened) {
  if (opened.dataset.asked) return;
  const all = document.querySelectorAll("#deck details.why");
  for (const one of all) one.dataset.asked = "yes";
  try {
    const said = await ask("POST", "/plan/why", { text: editor.text() });
    for (const one of all) {
      const html = said.html[one.dataset.setup];
      if (html && said.code === of("sheets").dataset.code) one.insertAdjacentHTML("beforeend", html);
    }
  } catch (e) {
    for (const one of all) delete one.dataset.asked;
    told(unreachable(e));
  }
}

// learning opens what can be kept of a setup.
function learning(opened) {
  if (opened.dataset.asked) return;
  opened.dataset.asked = "yes";
  opened.append(of("learning").content.cloneNode(true));
}

async function learn(form, what) {
  const kept = form.closest("details"), said = kept.querySelector(".learnt");
  const given = Object.fromEntries(new FormData(form));
  said.textContent = "";
  try {
    const text = editor.text();
    const answer = await ask("POST", "/plan/learn", { ...given, instead: given.instead === "on", setup: Number(kept.dataset.setup), do: what, text });
    said.textContent = answer.says.join(" ");
    if (what !== "bit") return;
    if (answer.text !== text && editor.text() === text) editor.put(answer.text, "keeping a bit's diameter"); else look();
    told(answer.says.join(" "));
  } catch (e) {
    said.textContent = unreachable(e);
  }
}

const unreachable = (e) => e instanceof TypeError ? "The program does not answer. Nothing here is lost: start it again and save." : e.message;

const soon = later(60, look);

function changed() {
  making?.abort();
  standing(false);
  told("not saved");
  unsaved.keepText();
  steps();
  soon();
  asking?.follow();
}

// standing tells whether the file holds what is here.
function standing(all) {
  of("save").disabled = all;
  if (of("table")) of("table").textContent = all ? "To the table" : "Save and go to the table";
}

// steps says on their buttons what would be undone, and done again.
function steps() {
  for (const [id, word, what] of [["undo", "Undo", editor.undoes()], ["redo", "Redo", editor.redoes()]]) {
    of(id).disabled = what === "";
    of(id).textContent = (word + " " + what).trim();
    of(id).title = of(id).textContent;
  }
}

// step undoes a change, of the text or of a form, or does it again; forms follow the
// text.
function step(back) {
  asking.leave();
  if (back) editor.undo(); else editor.redo();
  if (of("forms").hidden && !folded()) editor.focus();
}

// view puts the forms or the sheets beside the text.
function view(formed) {
  of("forms").hidden = !formed;
  of("sheets").hidden = formed;
  of("show-forms").setAttribute("aria-pressed", formed);
  of("show-sheets").setAttribute("aria-pressed", !formed);
  document.querySelector("main").classList.toggle("forming", formed);
  if (formed) asking.show();
}

// print asks what to print of the sheets that are shown, and on which paper.
function print() {
  of("printing").querySelector("[name=deck]").value = of("sheets").dataset.code;
  of("unsaved").hidden = of("save").disabled;
  of("printing").showModal();
}

// save writes the file; then follows when it holds all that is here, also where one is
// asked first.
async function save(then = () => {}) {
  await asking.written();
  const text = editor.text();
  try {
    const s = await ask("PUT", "/plan/text", { base, text });
    if (s.asks) { choose(s, then); return; }
    base = plain(s.text);
    // What was typed while it was written stays.
    if (s.merged && editor.text() === text) editor.put(base, "what another editor wrote");
    const all = editor.text() === base;
    standing(all);
    unsaved.keepText();
    told(s.merged ? "saved, with what another editor wrote meanwhile" : all ? "saved" : "not saved");
    if (all) then();
  } catch (e) {
    told(unreachable(e));
  }
}

// toTheTable goes to the table, where the file is what counts.
async function toTheTable(address) {
  asking.leave();
  await asking.written();
  const go = () => { location.href = address; };
  if (of("save").disabled) go(); else save(go);
}

function choose(s, then) {
  of("how").textContent = s.gone ? "It is no longer there." : "Here and there the same lines were changed, so the two do not go together by themselves. Nothing was written.";
  of("theirs").textContent = s.theirs;
  of("mine").onclick = () => { of("asks").close(); base = plain(s.theirs); save(then); };
  of("take").onclick = () => { of("asks").close(); base = plain(s.theirs); editor.put(base, "taking the file"); save(then); };
  of("later").onclick = () => { of("asks").close(); told("not saved: the file was changed elsewhere"); };
  of("asks").showModal();
}

// A browser's editor knows one end of a line; the program gives the file its own.
const plain = (text) => text.replace(/\r\n?/g, "\n");

async function begin() {
  let file;
  try {
    file = await ask("GET", "/plan/text");
  } catch (e) {
    told(unreachable(e));
    return;
  }
  base = plain(file.text);
  unsaved = keeper(file.key);
  of("name").textContent = file.name;
  document.title = file.name + " - fencecard";
  try {
    editor = (await import("/plan/editor.js")).open(of("text"), base, changed);
  } catch {
    of("text").replaceChildren();
    editor = field(of("text"), base, changed);
  }
  asking = forms({ ask, editor: () => editor, unsaved, told, wrong: unreachable, go, follow: (line) => { if (!folded()) editor.go(line, 0); } });
  of("fold").addEventListener("click", () => fold(!folded()));
  of("show-forms").addEventListener("click", () => view(true));
  of("first").addEventListener("click", () => { view(true); asking.add("piece"); });
  of("show-sheets").addEventListener("click", () => view(false));
  standing(file.here);
  of("save").addEventListener("click", () => save());
  of("table")?.addEventListener("click", (e) => { e.preventDefault(); toTheTable(e.target.href); });
  of("deck").addEventListener("click", (e) => {
    const place = e.target.closest(".said button");
    if (place?.dataset.at) form(place.dataset.at);
    else if (place) go(Number(place.dataset.line), Number(place.dataset.from));
  });
  of("deck").addEventListener("toggle", (e) => { if (e.target.open) (e.target.classList.contains("learn") ? learning : why)(e.target); }, true);
  of("deck").addEventListener("submit", (e) => { e.preventDefault(); learn(e.target, e.submitter?.value ?? ""); });
  of("print")?.addEventListener("click", print);
  of("printed")?.addEventListener("click", () => of("printing").close());
  of("undo").addEventListener("click", () => step(true));
  of("redo").addEventListener("click", () => step(false));
  steps();
  addEventListener("keydown", (e) => {
    if ((e.ctrlKey || e.metaKey) && e.key === "s") { e.preventDefault(); asking.leave(); save(); }
    const typing = e.target.closest("input, textarea") || e.target.id === "text"; // which undo by themselves
    if ((e.ctrlKey || e.metaKey) && !typing && /^[zy]$/i.test(e.key)) { e.preventDefault(); step(e.key.toLowerCase() === "z" && !e.shiftKey); }
  });
  addEventListener("beforeunload", (e) => { if (editor.text() !== base && !unsaved.kept()) e.preventDefault(); });
  told(file.here ? "" : "a new plan: it becomes a file when it is saved");
  const left = unsaved.text(), typed = unsaved.form();
  if (left && left.text !== base) {
    editor.put(left.text, "what came back");
    base = left.base; // so that what the file holds meanwhile is put together with it, or asked about
    unsaved.keepText();
    told("what was not saved is here again");
  }
  look();
  const begun = /^ *-? *\{? *piece:/m.test(editor.text());
  let kept = null;
  try { kept = localStorage.getItem("fencecard-text"); } catch { /* as for a new one */ }
  if (kept ? kept === "folded" : !begun) fold(true); // who begins by forms need not see the text
  if (typed) { view(true); asking.again(typed); told("what was not saved is here again"); }
  else if (!begun) view(true); // there is nothing to print yet
}

begin();
