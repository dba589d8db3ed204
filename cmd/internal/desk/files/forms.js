// The forms of the plan. What they ask, what they write into the text and what they
// draw comes from the program; this shows it, and sends what is filled in.

// forms begins them. ask asks the program, editor is the text's, told says
// something, wrong says of an error what it means, go goes to a line of the text,
// follow does where the text is shown, and unsaved keeps what is in no text yet.
export function forms({ ask, editor, unsaved, told, wrong, go, follow }) {
  const side = document.getElementById("form-side"), drawing = document.getElementById("drawing");
  let now = {}; // what is shown: nothing for the list
  let number = 0;
  let own = null; // the text that a form wrote last
  let pressed = 0; // how many of what a maker pressed is not here yet

  const form = () => document.getElementById("form");
  // called is what a change by a form is called.
  const called = (q) => {
    const what = side.querySelector("h2")?.textContent ?? "";
    if (q.do === "remove") return "taking out " + what;
    if (q.do === "shop") return "putting in a shop";
    return (q.at ? "changing " : "adding ") + what.toLowerCase().replace(/^a new /, "a ");
  };
  const filled = () => form() ? [...new FormData(form())] : [];

  let writing = Promise.resolve(); // until what a form writes is in the text

  // send asks of the text as it is once what was filled in before stands in it; null
  // where something else was asked meanwhile, or nothing was answered.
  async function send(q) {
    const mine = ++number;
    const before = writing;
    let written = () => {};
    if (q.do === "put" || q.do === "remove" || q.do === "shop") writing = new Promise((done) => { written = done; });
    await before;
    try {
      for (;;) {
        const text = editor().text();
        const answer = await ask("POST", "/plan/form", { text, ...q });
        if (editor().text() !== text) continue; // typed meanwhile
        if (answer.text && answer.text !== text) { own = answer.text; editor().put(answer.text, called(q)); }
        return mine === number ? answer : null;
      }
    } catch (e) {
      if (mine === number) told(wrong(e));
      return null;
    } finally {
      written();
    }
  }

  // mark says beside each box what is wrong with it now; beside the one that is typed in
  // nothing new, since it is not finished.
  function mark(html) {
    const fresh = document.createElement("template");
    fresh.innerHTML = html;
    for (const field of side.querySelectorAll("#form [data-key]")) {
      const now = fresh.content.querySelector(`[data-key="${CSS.escape(field.dataset.key)}"] > strong`);
      const said = field.querySelector(":scope > strong");
      if (now && field.contains(document.activeElement) && !said) continue;
      said?.remove();
      if (now) field.append(now);
      for (const box of field.querySelectorAll("input, select")) {
        if (now) box.setAttribute("aria-invalid", "true"); else box.removeAttribute("aria-invalid");
      }
    }
  }

  function draw(answer) { drawing.innerHTML = answer.drawing; } // the program's own

  // open goes to a form, or to the list; false where something else was asked meanwhile.
  async function open(q, quiet) {
    if (!quiet) pressed++;
    const answer = await send(q);
    if (!quiet) pressed--;
    if (!answer) return false;
    if (!quiet) unsaved.keepForm(null);
    now = q.do ? { at: answer.at } : { at: q.at, kind: q.kind, under: q.under, word: q.word };
    side.innerHTML = answer.html; // the program's own, every name in it as text
    draw(answer);
    if (quiet) return true;
    if (answer.line && q.at) follow(answer.line);
    const first = form() && !form().dataset.at ? form().querySelector("input:not([type=hidden]), select") : side.querySelector("h2");
    if (first) { if (first.tagName === "H2") first.tabIndex = -1; first.focus(); }
    side.parentElement.scrollTop = 0;
    return true;
  }

  // keep puts a form anew and leaves the hand where it is.
  function keep(html) {
    const at = document.activeElement;
    const all = at?.name && form()?.contains(at) ? [...form().elements].filter((e) => e.name === at.name) : [];
    const which = all.indexOf(at);
    const opened = side.querySelector("details.more")?.open;
    const scrolled = side.parentElement.scrollTop;
    side.innerHTML = html;
    if (opened && side.querySelector("details.more")) side.querySelector("details.more").open = true;
    side.parentElement.scrollTop = scrolled;
    if (which < 0) return;
    const again = [...form().elements].filter((e) => e.name === at.name)[which];
    again?.focus();
    if (again?.type === "text" && at.selectionStart !== null) again.setSelectionRange(at.selectionStart, at.selectionEnd);
  }

  async function fill(what) {
    const { at, kind, under, word } = form().dataset;
    const field = filled();
    const answer = await send({ at, kind, under, word, field, do: what });
    if (!answer || !form()) return;
    if (what === "put" && answer.at) unsaved.keepForm(null);
    draw(answer);
    const same = JSON.stringify(filled()) === JSON.stringify(field);
    if (what === "" || !same) { mark(answer.html); return; }
    keep(answer.html);
    if (answer.at) now = { at: answer.at };
    if (what !== "put" || at || !answer.at) return;
    follow(answer.line);
    const slip = side.querySelector("#form strong"), head = side.querySelector("h2");
    head.tabIndex = -1;
    ((slip?.parentElement.querySelector("input:not([type=hidden]), select")) || head).focus();
    told(slip ? "not right yet: " + slip.textContent : "it is in the plan now; save it when you like");
  }

  let soon;
  side.addEventListener("input", (e) => {
    if (!form()?.contains(e.target)) return;
    clearTimeout(soon);
    const { at, kind, under, word } = form().dataset;
    unsaved.keepForm({ of: editor().text(), at, kind, under, word, field: filled() });
    soon = setTimeout(() => form() && fill(""), 250);
  });
  side.addEventListener("change", (e) => {
    if (!form()?.contains(e.target)) return;
    clearTimeout(soon);
    fill(form().dataset.at ? "put" : "show");
  });
  side.addEventListener("submit", (e) => { e.preventDefault(); clearTimeout(soon); fill("put"); });
  side.addEventListener("click", (e) => {
    const button = e.target.closest("button[type=button]");
    if (!button) return;
    const { at, line, from, under, word } = button.dataset;
    if (line) go(Number(line), Number(from));
    else if (button.dataset.do) open({ at, do: button.dataset.do });
    else if (button.dataset.new) open({ kind: button.dataset.new, under, word });
    else open({ at });
  });

  let follows;
  return {
    // follow shows what the text says, when it was changed by others than a form.
    follow() {
      if (editor().text() === own) return;
      own = null;
      clearTimeout(follows);
      follows = setTimeout(() => {
        if (pressed) return; // what comes is of the text as it is
        if (side.closest("[hidden]") || form()?.contains(document.activeElement) || form() && !form().dataset.at) return;
        open(now, true);
      }, 300);
    },
    // leave ends what is typed in a form, so that the form follows the text again.
    leave() { if (form()?.contains(document.activeElement)) document.activeElement.blur(); },
    go(at) { open({ at }); },
    add(kind) { open({ kind }); },
    // again shows a form as it was left; one of another text, whose places may be others,
    // only where it is new.
    async again({ of, ...q }) {
      if (q.at && of !== editor().text()) { unsaved.keepForm(null); open({}); return; }
      // The page asks for itself while it begins: what came back is asked for until it is here.
      let here = false;
      for (let n = 0; n < 10 && !here; n++) here = await open(q.at ? { ...q, do: "put" } : q, true);
      unsaved.keepForm(here && q.at ? null : { of, ...q });
      if (!here) return;
      now = q.at ? { at: q.at } : { kind: q.kind, under: q.under, word: q.word };
    },
    show() { if (!form()) open(now); },
    written: () => writing,
  };
}
