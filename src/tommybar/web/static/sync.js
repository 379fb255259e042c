// At the machine, served: marks of the page become entries of the build's journal. They wait in this
// browser while the server is away and are sent in their order; what other devices sent comes in.

const BUILD = DATA.build;
const EVERY = 4000; // between two looks at the server [ms]
let position = readStore(":position", 0);
let token = BUILD.token;
let sending = false;
let away = false;
let planNow = DATA.plan.id;

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
  plainMark({ id: newId(), when: new Date().toISOString(), ...entry });
  send();
};

// A mark as an entry of the journal, or nothing for marks that came from there.
function entryFor(one, number) {
  if (!one.id || one.sent || one.refused) return null;
  const piece = one.piece > 1 ? { copy: one.piece } : {};
  const base = { id: one.id, device, number, at: one.when, by: one.by || "" };
  if (one.kind === "undo") {
    const of = log[one.of];
    return of && of.id ? { ...base, kind: "undo", key: of.id, said: {} } : null;
  }
  if (one.kind === "size") return { ...base, kind: "size", key: one.key, said: { value: one.is, instrument: one.with || "", ...piece } };
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
  const tail = { id: one.id, at: one.at.replace("T", " ").slice(0, 19), by: one.by, piece: one.said.copy || 1, sent: true };
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
  if (one.kind === "undo") {
    const of = log.findIndex((other) => other.id === one.key);
    return of >= 0 ? { kind: "undo", of, ...tail } : null;
  }
  return null;
}

function takeIn(entries, at) {
  const known = new Set(log.map((one) => one.id));
  let fresh = 0;
  for (const one of entries) {
    if (known.has(one.id)) continue;
    const found = markFor(one);
    if (!found) continue;
    log.push(found);
    known.add(one.id);
    fresh += 1;
  }
  position = at;
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
    const waiting = log.map((one, i) => entryFor(one, i)).filter(Boolean);
    if (waiting.length) {
      const answer = await ask("entries", { method: "POST", headers: { "Content-Type": "application/json", "X-Token": token }, body: JSON.stringify({ entries: waiting }) });
      if (!answer.ok) throw new Error("not taken");
      const receipt = await answer.json();
      const safe = new Set(receipt.safe);
      for (const one of log) {
        if (safe.has(one.id)) one.sent = true;
        if (receipt.refused[one.id]) one.refused = receipt.refused[one.id];
      }
      writeStore("", log);
      if (waiting.some((one) => safe.has(one.id) && one.kind === "size")) lookAgain();
    }
    away = false;
  } catch (fault) {
    away = true;
  }
  sending = false;
  tellState();
}

// A size may have given mates other limits: the plan is asked for, and the page says what changed.
async function lookAgain() {
  try {
    const now = await (await ask("changes")).json();
    if (now.plan_id !== planNow) {
      planNow = now.plan_id;
      tellState(now.words);
    }
  } catch (fault) {
    away = true;
  }
}

function tellState(words) {
  const bar = document.getElementById("sync");
  const waits = log.filter((one) => one.id && !one.sent && !one.refused).length;
  const refused = log.filter((one) => one.refused);
  const lines = [];
  if (away) lines.push(`◌ The server is away. Go on: ${waits} ${waits === 1 ? "mark waits" : "marks wait"} here and ${waits === 1 ? "is" : "are"} sent later.`);
  else if (waits) lines.push(`◐ ${waits} on the way`);
  else lines.push("● All marks are kept on the PC.");
  for (const one of refused) lines.push(`■ Not taken: ${one.key}: ${one.refused}`);
  if (words) bar.dataset.words = words;
  if (planNow !== DATA.plan.id) lines.push(`▲ The plan has changed. ${bar.dataset.words || ""}`);
  bar.querySelector("p").textContent = lines.join(" ");
  bar.querySelector("a").hidden = planNow === DATA.plan.id || away;
}

takeIn(BUILD.entries, BUILD.position);
draw();
tellState();
send();
setInterval(send, EVERY);
window.addEventListener("online", send);
