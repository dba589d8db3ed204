// The editor of the plan's text. It stands in a shadow root: there its styles are
// sheets made by script, so that the page's content security policy needs no
// exception for them.
import { Annotation, EditorState, Transaction } from "@codemirror/state";
import { EditorView, keymap, lineNumbers, highlightActiveLine, highlightActiveLineGutter, drawSelection } from "@codemirror/view";
import { defaultKeymap, history, historyKeymap, undo, undoDepth, redo, redoDepth } from "@codemirror/commands";
import { indentUnit, syntaxHighlighting, HighlightStyle } from "@codemirror/language";
import { yaml } from "@codemirror/lang-yaml";
import { lintGutter, setDiagnostics } from "@codemirror/lint";
import { search, searchKeymap } from "@codemirror/search";
import { tags } from "@lezer/highlight";

// Black on white, as on paper: weight tells the plan's words, slant the comments.
const ink = HighlightStyle.define([
  { tag: tags.definition(tags.propertyName), fontWeight: "bold" },
  { tag: tags.comment, fontStyle: "italic", color: "#555" },
]);

const look = EditorView.theme({
  "&": { height: "100%", fontSize: "16px", backgroundColor: "#fff", color: "#000" },
  ".cm-scroller": { fontFamily: "ui-monospace, monospace", lineHeight: "1.5" },
  ".cm-gutters": { backgroundColor: "#fff", color: "#555", borderRight: "1px solid #999" },
  ".cm-activeLine, .cm-activeLineGutter": { backgroundColor: "#f2f2f2" },
  // The component draws these as pictures in data: addresses, which the page's
  // policy refuses; lines and letters need none.
  ".cm-lintRange-error": { backgroundImage: "none", textDecoration: "underline wavy 2px" },
  ".cm-lint-marker-error": { content: "normal", width: "auto", height: "auto" },
  ".cm-lint-marker-error::before": { content: '"!"', display: "inline-block", width: "1.1em", textAlign: "center", fontWeight: "bold", backgroundColor: "#000", color: "#fff" },
  ".cm-diagnostic": { fontFamily: "system-ui, sans-serif", fontSize: "16px" },
});

// What a change is called that is undone.
const called = Annotation.define();

// open puts an editor into an element and returns its handle. Tab leaves it, as it
// leaves every other field, so that nobody is caught in it without a mouse.
export function open(parent, text, changed) {
  const steps = []; // what each step of the history is called, those undone behind the others
  function follow(update) {
    for (const t of update.transactions) {
      if (!t.docChanged || t.isUserEvent("undo") || t.isUserEvent("redo")) continue;
      steps.length = Math.min(steps.length, undoDepth(t.startState));
      const depth = undoDepth(t.state), name = t.annotation(called) ?? "typing";
      if (depth > undoDepth(t.startState)) steps.push(name); else steps[steps.length - 1] = name;
      while (steps.length > depth) steps.shift(); // the history forgets its oldest
    }
  }
  const root = parent.attachShadow({ mode: "open" });
  const view = new EditorView({
    root,
    parent: root,
    state: EditorState.create({
      doc: text,
      extensions: [
        lineNumbers(), highlightActiveLine(), highlightActiveLineGutter(), drawSelection(),
        history(), yaml(), indentUnit.of("  "), syntaxHighlighting(ink), lintGutter(), search({ top: true }), look,
        EditorView.lineWrapping,
        EditorView.contentAttributes.of({ "aria-label": "the plan's text", spellcheck: "false", autocapitalize: "off" }),
        keymap.of([...defaultKeymap, ...historyKeymap, ...searchKeymap]),
        EditorView.updateListener.of((update) => { if (update.docChanged) { follow(update); changed(); } }),
      ],
    }),
  });
  return {
    text: () => view.state.doc.toString(),
    // put replaces what differs, as one step of undo, which has a name.
    put(now, name) {
      const was = view.state.doc.toString();
      if (now === was) return;
      let from = 0;
      while (from < was.length && from < now.length && was[from] === now[from]) from++;
      let tail = 0;
      while (tail < was.length - from && tail < now.length - from && was[was.length - 1 - tail] === now[now.length - 1 - tail]) tail++;
      view.dispatch({
        changes: { from, to: was.length - tail, insert: now.slice(from, now.length - tail) },
        annotations: [Transaction.userEvent.of("input.form"), called.of(name)],
        scrollIntoView: true,
      });
    },
    // faults marks faults: {line, from, words}, from counted in the line as this
    // language counts letters.
    faults(all) {
      const doc = view.state.doc;
      view.dispatch(setDiagnostics(view.state, all.map((f) => {
        const line = doc.line(Math.min(Math.max(f.line, 1), doc.lines));
        const from = Math.min(line.from + f.from, line.to);
        return { from, to: Math.max(line.to, from), severity: "error", message: f.words };
      })));
    },
    go(number, from) {
      const line = view.state.doc.line(Math.min(Math.max(number, 1), view.state.doc.lines));
      view.dispatch({ selection: { anchor: Math.min(line.from + from, line.to) }, effects: EditorView.scrollIntoView(line.from, { y: "center" }) });
      view.focus();
    },
    undo: () => undo(view),
    redo: () => redo(view),
    // What would be undone or done again; "" for nothing.
    undoes: () => undoDepth(view.state) > 0 ? steps[undoDepth(view.state) - 1] ?? "a change" : "",
    redoes: () => redoDepth(view.state) > 0 ? steps[undoDepth(view.state)] ?? "a change" : "",
    focus: () => view.focus(),
  };
}
