// The record of the making: a list of marks that only grows. What the page
// shows is worked out from it; taking a mark back adds another mark.

const DATA = JSON.parse(document.getElementById("contents").textContent);
const STORE = "tommybar:" + (DATA.plan.store || DATA.plan.id); // a served build keeps one record through all its plans
let keeps = true; // whether this browser keeps anything

function readStore(name, otherwise) {
  try {
    const text = localStorage.getItem(STORE + name);
    return text === null ? otherwise : JSON.parse(text);
  } catch (fault) {
    keeps = false;
    return otherwise;
  }
}

function writeStore(name, value) {
  try {
    localStorage.setItem(STORE + name, JSON.stringify(value));
  } catch (fault) {
    keeps = false;
  }
}

let log = readStore("", null);
if (!Array.isArray(log)) {
  log = DATA.made.map((one) => ({ at: one.on || "", file: true, ...one }));
  writeStore("", log);
}
let view = readStore(":view", { name: "list" });
const wishes = readStore(":wishes", { hand: "right", light: "", by: "", minutes: "" });

function now() {
  const two = (n) => String(n).padStart(2, "0");
  const t = new Date();
  return `${t.getFullYear()}-${two(t.getMonth() + 1)}-${two(t.getDate())} ` +
    `${two(t.getHours())}:${two(t.getMinutes())}:${two(t.getSeconds())}`;
}

// Add a mark. Another window of the same plan may have added some: they are read first.
function mark(entry) {
  const kept = readStore("", log);
  if (keeps && Array.isArray(kept) && kept.length > log.length) log = kept;
  log.push({ at: now(), by: wishes.by, ...entry });
  writeStore("", log);
  if (!keeps) document.body.classList.add("keeps-nothing");
}

function takenBack() {
  return new Set(log.filter((one) => one.kind === "undo").map((one) => one.of));
}

// The last mark that can be taken back, or -1.
function lastMark() {
  const gone = takenBack();
  for (let i = log.length - 1; i >= 0; i -= 1) {
    if (log[i].kind !== "undo" && log[i].kind !== "resume" && !log[i].file && !gone.has(i)) return i;
  }
  return -1;
}

// What the record says now: done, skipped, sizes, holes, begun, whereabouts.
function standing() {
  const gone = takenBack();
  const s = { done: new Map(), skipped: new Map(), sizes: new Map(), holes: new Set(), begun: new Set(), where: new Map(), pause: null };
  log.forEach((one, i) => {
    if (gone.has(i)) return;
    const id = one.key + "|" + (one.piece || 1);
    if (one.kind === "step" || one.kind === "card") {
      s.done.delete(id);
      s.skipped.delete(id);
      if (one.skipped) s.skipped.set(id, one.skipped);
      else if (one.done) s.done.set(id, one);
    } else if (one.kind === "size") s.sizes.set(id, one);
    else if (one.kind === "hole") s.holes.add(one.key + "/" + one.n + "|" + (one.piece || 1));
    else if (one.kind === "begin") s.begun.add(id);
    else if (one.kind === "part") {
      s.where.set(one.key, one.where);
      if (one.pause) s.pause = one;
    } else if (one.kind === "resume") s.pause = null;
  });
  return s;
}

const settled = (s, key, piece) => s.done.has(key + "|" + piece) || s.skipped.has(key + "|" + piece);
const partOf = (key) => DATA.parts.find((one) => one.cards.some((card) => card.key === key));
const cardOf = (key) => partOf(key).cards.find((card) => card.key === key);

// Every run of a card, piece after piece, in the order of work.
const RUNS = DATA.parts.flatMap((part) =>
  Array.from({ length: part.count }, (_, n) => part.cards.map((card) => ({ part, card, piece: n + 1 }))).flat());

function runDone(s, run) {
  return run.card.steps.every((step) => settled(s, step.key, run.piece)) || s.done.has(run.card.key + "|" + run.piece);
}
