// At the machine, served: marks of the page become entries of the build's journal. They wait in this
// browser while the server is away and are sent in their order; what other devices sent comes in.

const BUILD = DATA.build;
const EVERY = 4000; // between two looks at the server [ms]
const MOST = 500; // entries in one message
const STIRS = ["size", "skip", "undo", "change"]; // entries that may make another plan
let position = readStore(":position", 0);
let token = BUILD.token;
let sending = false;
let away = "";
let stirred = true; // whether the plan may be another one than is shown: a page that was kept may be old
let looking = false;
let keptHere = ""; // whether this browser can load the page anew without the server: "", "yes" or "no"

function newId() {
  const b = crypto.getRandomValues(new Uint8Array(16));
  b[6] = (b[6] & 0x0f) | 0x40;
  b[8] = (b[8] & 0x3f) | 0x80;
  const hex = Array.from(b, (one) => one.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

let device = "";
try {
  device = localStorage.getItem("tommybar:device") || "";
  if (!device) localStorage.setItem("tommybar:device", (device = newId()));
} catch (fault) {
  device = newId(); // this browser keeps nothing; the page says so
}

const plainMark = mark;
mark = function (entry) {
  const of = entry.kind === "undo" ? { of_id: log[entry.of].id } : {};
  plainMark({ id: newId(), n: nextNumber(), when: new Date().toISOString(), ...of, ...entry });
  tellState();
  send();
};

// Entries of one device are put in order by their number, which stays when an entry is sent again.
function nextNumber() {
  return Math.max(log.length, ...log.map((one) => (one.n || 0) + 1));
}

// A mark as an entry of the journal, or nothing for marks that came from there.
function entryFor(one, place) {
  if (!one.id || one.sent || one.refused) return null;
  const piece = one.piece > 1 ? { copy: one.piece } : {};
  const base = { id: one.id, device, number: one.n === undefined ? place : one.n, at: one.when, by: one.by || "" };
  if (one.kind === "undo") {
    return one.of_id ? { ...base, kind: "undo", key: one.of_id, said: {} } : null;
  }
  if (one.kind === "size") return { ...base, kind: "size", key: one.key, said: { value: one.is, instrument: one.with || "", ...piece } };
  if (one.kind === "initials") return { ...base, kind: "initials", key: one.key, said: { role: one.role, who: one.who, ...piece } };
  if (one.kind === "hole") return { ...base, kind: "tick", key: `${one.key}/hole ${one.n}`, said: piece };
  if (one.kind === "begin") return { ...base, kind: "tick", key: `${one.key}/gripped`, said: piece };
  if (one.kind === "part") {
    const [where, faces, zeros, ...more] = String(one.where || "").split("; ");
    return { ...base, kind: "pause", key: one.key, said: { where, mark: faces || "", zeros: zeros || "", tool: more.join("; ") } };
  }
  if (one.kind === "resume") return { ...base, kind: "resume", key: lastPause(), said: { face_a: one.answers || "" } };
  if (one.skipped) return { ...base, kind: "skip", key: one.key, said: { reason: one.skipped, ...piece } };
  return { ...base, kind: "tick", key: one.key, said: piece };
}

function lastPause() {
  const found = log.filter((one) => one.kind === "part" && one.pause);
  return found.length ? found[found.length - 1].key : DATA.parts[0].name;
}

// An entry of another device as a mark of this page.
function markFor(one) {
  const tail = { id: one.id, at: one.at.replace("T", " ").slice(0, 19), by: one.by, piece: one.said.copy || 1, sent: true, ...(one.device === device ? {} : { device: one.device }) };
  const hole = /^(.*)\/hole (\d+)$/.exec(one.key);
  const begun = /^(.*)\/gripped$/.exec(one.key);
  if (one.kind === "size") return { kind: "size", key: one.key, is: one.said.value, with: one.said.instrument || "", ...tail };
  if (one.kind === "tick" && hole) return { kind: "hole", key: hole[1], n: Number(hole[2]), ...tail };
  if (one.kind === "tick" && begun) return { kind: "begin", key: begun[1], done: true, ...tail };
  const kind = one.key.split("/").length > 2 ? "step" : "card";
  if (one.kind === "tick") return { kind, key: one.key, done: true, ...tail };
  if (one.kind === "skip") return { kind, key: one.key, skipped: one.said.reason, ...tail };
  if (one.kind === "pause") return { kind: "part", key: one.key, pause: true, where: [one.said.where, one.said.mark, one.said.zeros, one.said.tool].filter(Boolean).join("; "), ...tail };
  if (one.kind === "resume") return { kind: "resume", answers: one.said.face_a || "", ...tail };
  if (one.kind === "initials") return { kind: "initials", key: one.key, role: one.said.role, who: one.said.who, ...tail };
  if (one.kind === "change") return { kind: "change", forget: one.said.forget || [], because: one.said.because, ...tail };
  if (one.kind === "undo") {
    const of = log.findIndex((other) => other.id === one.key);
    return of >= 0 ? { kind: "undo", of, of_id: one.key, ...tail } : null;
  }
  return null;
}

function takeIn(entries, at) {
  const known = new Map(log.map((one) => [one.id, one]));
  let fresh = 0;
  for (const one of entries) {
    const own = known.get(one.id);
    if (own && own.sent) continue;
    fresh += 1;
    if (STIRS.includes(one.kind)) stirred = true;
    if (own) {
      own.sent = true; // it is on the disk; only the answer was lost
      continue;
    }
    const found = markFor(one);
    if (!found) continue;
    log.push(found);
    known.set(one.id, found);
  }
  position = Math.max(position, at);
  writeStore(":position", position);
  if (fresh) writeStore("", log);
  return fresh;
}

async function ask(path, options) {
  const answer = await fetch(`/builds/${BUILD.id}/${path}`, { cache: "no-store", ...options });
  if (answer.redirected) throw new Error("pair again");
  return answer;
}

// Look for what is new, then send what waits; entries that are stored are never sent again.
async function send() {
  if (sending) return;
  sending = true;
  try {
    const news = await (await ask(`entries?after=${position}`)).json();
    token = news.token;
    if (takeIn(news.entries, news.position) && $("panel").hidden) draw();
    while (await sendSome());
    away = "";
  } catch (fault) {
    away = away || now().slice(11, 16);
  }
  sending = false;
  tellState();
  if (stirred && !away) lookAgain();
}

// Send the eldest of what waits; true when something was settled by it.
async function sendSome() {
  const waiting = log.map((one, i) => entryFor(one, i)).filter(Boolean).slice(0, MOST);
  if (!waiting.length) return false;
  const answer = await ask("entries", { method: "POST", headers: { "Content-Type": "application/json", "X-Token": token }, body: JSON.stringify({ entries: waiting }) });
  if (!answer.ok) throw new Error("not taken");
  const receipt = await answer.json();
  const safe = new Set(receipt.safe);
  for (const one of log) {
    if (safe.has(one.id)) one.sent = true;
    if (receipt.refused[one.id]) one.refused = receipt.refused[one.id];
  }
  writeStore("", log);
  if (waiting.some((one) => safe.has(one.id) && STIRS.includes(one.kind))) stirred = true;
  return waiting.some((one) => safe.has(one.id) || receipt.refused[one.id]);
}

// A size may have given mates other limits: the plan is asked for, and its cards are taken when it is another one.
async function lookAgain() {
  if (looking) return;
  looking = true;
  stirred = false;
  try {
    const answer = await ask("changes");
    const isPlanned = (answer.headers.get("content-type") || "").includes("json"); // else it is still being planned
    if (!isPlanned || ((await answer.json()).plan_id !== DATA.plan.id && !(await takeFresh()))) stirred = true;
  } catch (fault) {
    stirred = true;
  }
  looking = false;
  tellState();
}

function tellState() {
  const waits = log.filter((one) => one.id && !one.sent && !one.refused).length;
  const said = [];
  if (away) said.push(`◌ The server is away since ${away}. Go on: ${waits} ${waits === 1 ? "mark waits" : "marks wait"} here and ${waits === 1 ? "is" : "are"} sent later.`);
  else if (waits) said.push(`◐ ${waits} on the way`);
  else said.push("● All marks are kept on the PC.");
  for (const one of log.filter((each) => each.refused)) said.push(`■ Not taken: ${one.key}: ${one.refused}`);
  const differ = standing().differ.size;
  if (differ) said.push(`▲ ${differ === 1 ? "One size is" : differ + " sizes are"} told differently by two devices: settle it at The build.`);
  if (changedCards.size) said.push(`▲ ${changedCards.size === 1 ? "One card has" : changedCards.size + " cards have"} changed since you looked.`);
  if ((stirred || looking) && !away) said.push("◐ It is being planned again.");
  if (keptHere === "yes" && away) said.push("The page can be loaded anew all the same.");
  if (keptHere === "no") said.push("Leave this page open: here it cannot be loaded anew without the PC. The file to take along can.");
  document.querySelector("#sync p").textContent = said.join(" ");
}

// Browsers keep pages only of their own machine or over https; elsewhere the file to take along is what is left.
async function keepPage() {
  try {
    await navigator.serviceWorker.register("/static/machine-worker.js", { scope: location.pathname });
    await navigator.serviceWorker.ready;
    keptHere = "yes";
  } catch (fault) {
    keptHere = "no";
  }
  document.documentElement.dataset.kept = keptHere;
  tellState();
}

takeIn(BUILD.entries, BUILD.position);
noteChanges();
draw();
tellState();
keepPage();
send();
setInterval(send, EVERY);
window.addEventListener("online", send);
