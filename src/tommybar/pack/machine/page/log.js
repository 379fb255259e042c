// The record of the making: a list of marks that only grows. What the page
// shows is worked out from it; taking a mark back adds another mark.

let DATA = JSON.parse(document.getElementById("contents").textContent);
const SERVED = Boolean(DATA.build); // fed by the page of the house, whose journal takes the marks
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

// Another window wrote into the record.
function takeKept() {
  log = readStore("", log);
}

function takenBack() {
  return new Set(log.filter((one) => one.kind === "undo").map((one) => one.of));
}

// The last mark of this device that can be taken back, or -1.
function lastMark() {
  const gone = takenBack();
  for (let i = log.length - 1; i >= 0; i -= 1) {
    if (!["undo", "resume", "change"].includes(log[i].kind) && !log[i].file && !log[i].device && !gone.has(i)) return i;
  }
  return -1;
}

// Whether a mark is about one of the parts or sizes that are to be made again.
const isOf = (one, gone) => gone.has(one.key) || gone.has(String(one.key || "").split(/[/.]/)[0]);

// The last word of each device on a size, when they differ: shown until a person settles it.
function differing(words) {
  const last = [...new Map(words.map((one) => [one.device || "", one])).values()];
  const read = last.map((one) => one.is);
  return last.length > 1 && Math.max(...read) - Math.min(...read) > 1e-6 ? last : null;
}

// Records of earlier days name a step by its place on its card; here it is called by what it does.
function keyNow(key) {
  const placed = /^(.+\/\d+)\/(\d+)$/.exec(key || "");
  const card = placed && DATA.parts.flatMap((part) => part.cards).find((one) => one.key === placed[1]);
  const step = card && card.steps[Number(placed[2]) - 1];
  return step ? step.key : key;
}

// What the record says now: done, skipped, sizes, holes, begun, initials, whereabouts.
function standing() {
  const gone = takenBack();
  const s = { done: new Map(), skipped: new Map(), sizes: new Map(), differ: new Map(), holes: new Set(), begun: new Set(), initials: new Map(), where: new Map(), pause: null };
  const told = new Map();
  const again = new Map(); // from which mark on a part that is made again counts
  log.forEach((one, i) => one.kind === "change" && !gone.has(i) && one.forget.forEach((name) => again.set(name, i)));
  const isForgotten = (one, i) => again.size && isOf(one, new Set([...again].filter(([, from]) => i < from).map(([name]) => name)));
  log.forEach((one, i) => {
    if (gone.has(i) || one.kind === "change" || isForgotten(one, i)) return;
    const key = keyNow(one.key);
    const id = key + "|" + (one.piece || 1);
    if (one.kind === "step" || one.kind === "card") {
      s.done.delete(id);
      s.skipped.delete(id);
      if (one.skipped) s.skipped.set(id, one.skipped);
      else if (one.done) s.done.set(id, one);
    } else if (one.kind === "size") {
      s.sizes.set(id, one);
      told.set(id, [...(told.get(id) || []), one]);
    }
    else if (one.kind === "hole") s.holes.add(key + "/" + one.n + "|" + (one.piece || 1));
    else if (one.kind === "begin") s.begun.add(id);
    else if (one.kind === "initials") s.initials.set(id, { ...s.initials.get(id), [one.role]: one.who });
    else if (one.kind === "part") {
      s.where.set(one.key, one.where);
      if (one.pause) s.pause = one;
    } else if (one.kind === "resume") s.pause = null;
  });
  for (const [id, words] of told) if (differing(words)) s.differ.set(id, differing(words));
  return s;
}

const settled = (s, key, piece) => s.done.has(key + "|" + piece) || s.skipped.has(key + "|" + piece);
const partOf = (key) => DATA.parts.find((one) => one.cards.some((card) => card.key === key));
const cardOf = (key) => partOf(key).cards.find((card) => card.key === key);

// Every run of a card, piece after piece, in the order of work.
const runsOf = (data) => data.parts.flatMap((part) =>
  Array.from({ length: part.count }, (_, n) => part.cards.map((card) => ({ part, card, piece: n + 1 }))).flat());
let RUNS = runsOf(DATA);

// The same making planned again: its cards take the place of those that are shown, and the person stays at
// the step where they are. Gives words when that step is no longer there.
function takeContents(fresh) {
  const was = view.name === "list" ? null : RUNS.find((run) => run.card.key === view.card);
  const step = was && view.name === "step" ? was.card.steps[view.i] : null;
  DATA = fresh;
  RUNS = runsOf(DATA);
  if (!was) return "";
  const card = (RUNS.find((run) => run.card.key === view.card && run.piece === view.piece) || { card: null }).card;
  const i = card && step ? card.steps.findIndex((one) => one.key === step.key) : 0;
  if (!card) view = { name: "list" };
  else if (i < 0) view = { ...view, name: "setup" };
  else if (step) view = { ...view, i };
  writeStore(":view", view);
  if (!card) return `Card ${was.card.number} of ${was.part.name.replace(/_/g, " ")} is no longer in the plan.`;
  return i < 0 ? "The step you were at is no longer in the plan; this is its card from the start." : "";
}

// What is left of the minutes the person has this evening, or null when none were named or that evening is over.
function minutesLeft() {
  if (!wishes.minutes || !wishes.until || Date.now() > wishes.until + 6 * 3600e3) return null;
  return Math.max(0, Math.ceil((wishes.until - Date.now()) / 60000));
}

function runDone(s, run) {
  return run.card.steps.every((step) => settled(s, step.key, run.piece)) || s.done.has(run.card.key + "|" + run.piece);
}
