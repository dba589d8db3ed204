// Where one begins without a plan: what was chosen, typed or dropped goes to the
// program, which says where it goes on.

const of = (id) => document.getElementById(id);
const told = (words) => { of("told").textContent = words; };

async function ask(path, body) {
  let answer;
  try {
    answer = await fetch(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });
  } catch {
    throw new Error("The program does not answer: start it again.");
  }
  const said = await answer.json();
  if (!answer.ok) throw new Error(said.trouble);
  return said;
}

let list = null; // the list that is asked about
let answers = {};

async function go(path, body) {
  told("");
  try {
    const said = await ask(path, body);
    if (said.address) { location.href = said.address; return; }
    show(said.html);
  } catch (e) {
    told(e.message);
    of("told").scrollIntoView({ block: "nearest" });
  }
}

function show(html) {
  of("open").innerHTML = html; // the program's own, every word of the list in it as text
  of("ways").hidden = true;
  of("leave").addEventListener("click", () => { of("open").replaceChildren(); of("ways").hidden = false; list = null; });
  of("answers").addEventListener("submit", (e) => {
    e.preventDefault();
    for (const [key, value] of new FormData(e.target)) answers[key] = value;
    go("/plan/list", { ...list, answers });
  });
  (of("answers").querySelector("input") || of("leave")).focus();
}

async function take(file) {
  if (!file) return;
  if (file.size > 4 << 20) { told("That file is too large for a plan or a list of pieces."); return; }
  const bytes = new Uint8Array(await file.arrayBuffer());
  let letters = "";
  for (const byte of bytes) letters += String.fromCharCode(byte);
  const brought = { name: file.name, data: btoa(letters) };
  if (/\.ya?ml$/i.test(file.name)) { go("/plan/bring", brought); return; }
  list = brought;
  answers = {};
  go("/plan/list", { ...list, answers });
}

of("begin").addEventListener("submit", (e) => {
  e.preventDefault();
  const form = new FormData(e.target);
  go("/plan/begin", { title: form.get("title"), unit: form.get("unit") });
});
document.addEventListener("click", (e) => {
  const plan = e.target.closest("button[data-plan]");
  if (plan) go("/plan/open", { name: plan.dataset.plan });
});
of("file").addEventListener("change", (e) => { take(e.target.files[0]); e.target.value = ""; });
addEventListener("dragover", (e) => { e.preventDefault(); of("drop").classList.add("over"); });
addEventListener("dragleave", (e) => { if (!e.relatedTarget) of("drop").classList.remove("over"); });
addEventListener("drop", (e) => { e.preventDefault(); of("drop").classList.remove("over"); take(e.dataTransfer.files[0]); });
