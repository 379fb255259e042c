// The made file: YAML written from the record, and read back into it.

const PLAIN = /^[A-Za-z]([A-Za-z0-9 ./_-]*[A-Za-z0-9])?$/;

function scalar(value) {
  if (typeof value === "boolean") return String(value);
  if (typeof value === "number") return String(Math.round(value * 1e6) / 1e6);
  if (PLAIN.test(value) && !["true", "false", "null"].includes(value)) return value;
  return JSON.stringify(value).replace(/[\u007f-\uffff]/g, (c) => "\\u" + c.charCodeAt(0).toString(16).padStart(4, "0"));
}

// Who made a mark; a step that was signed at its hold point names both people.
function byWords(one) {
  const signs = one.kind === "step" && one.done && standing().initials.get(keyNow(one.key) + "|" + (one.piece || 1));
  if (!signs) return one.by || "";
  return signs.checker ? `${signs.learner}, checked by ${signs.checker}` : signs.learner;
}

// One mark as a line of the made file, or nothing for marks that only concern the page.
function entryOf(one) {
  const tail = { on: one.at || one.on || "", by: byWords(one), note: one.piece > 1 ? "piece " + one.piece : "" };
  if (one.kind === "size") return { size: one.key, is: one.is, with: one.with || "", ...tail };
  if (one.kind === "part") return { part: one.key, where: one.where, ...tail };
  if (one.kind === "hole") return { step: one.key + "/hole " + one.n, done: true, ...tail };
  if (one.kind === "begin") return { step: one.key + "/gripped", done: true, ...tail };
  if (one.kind === "step" || one.kind === "card") {
    return one.skipped ? { [one.kind]: one.key, skipped: one.skipped, ...tail } : { [one.kind]: one.key, done: one.done !== false, ...tail };
  }
  return null;
}

function lineOf(entry) {
  return "{" + Object.entries(entry).filter(([, v]) => v !== "").map(([k, v]) => `${k}: ${scalar(v)}`).join(", ") + "}";
}

// What an entry says, without when, by whom and with what.
const saysOf = (one) => lineOf({ ...entryOf(one), on: "", by: "", with: "" });

function madeFile() {
  const gone = takenBack();
  const lines = ["tommybar: 1", "of: " + scalar(DATA.plan.of), "units: mm", "made:"];
  let count = 0;
  log.forEach((one, i) => {
    const entry = entryOf(one);
    if (!entry) return;
    const back = log.find((other) => other.kind === "undo" && other.of === i);
    if (gone.has(i)) lines.push(`  # taken back ${back.at}${back.by ? " by " + back.by.replace(/[\r\n]/g, " ") : ""}: ${lineOf(entry)}`);
    else {
      lines.push("  - " + lineOf(entry));
      count += 1;
    }
  });
  if (!count) lines[3] = "made: []";
  return lines.join("\n") + "\n";
}

// The fields of one line "{key: value, ...}"; throws with words when it cannot be read.
function fieldsOf(text) {
  const found = {};
  const form = /\s*([a-z_]+)\s*:\s*("(?:[^"\\]|\\.)*"|[^,}"]*)\s*(,|$)/y;
  const inside = text.trim().slice(1, -1);
  let at = 0;
  while (at < inside.length) {
    form.lastIndex = at;
    const hit = form.exec(inside);
    if (!hit) throw new Error("cannot be read from \"" + inside.slice(at, at + 20) + "\" on");
    const raw = hit[2].trim();
    if (raw.startsWith("\"")) found[hit[1]] = JSON.parse(raw);
    else if (raw === "true" || raw === "false") found[hit[1]] = raw === "true";
    else found[hit[1]] = raw;
    at = form.lastIndex;
  }
  return found;
}

function lengthOf(text, unit) {
  const hit = /^([0-9.]+)\s*(mm|in)?$/.exec(String(text));
  if (!hit || !Number.isFinite(Number(hit[1]))) throw new Error(`"${text}" is no size`);
  return Number(hit[1]) * ((hit[2] || unit) === "in" ? 25.4 : 1);
}

function markOf(f, unit) {
  const piece = /^piece (\d+)$/.exec(f.note || "");
  const tail = { at: f.on || "", by: f.by || "", piece: piece ? Number(piece[1]) : 1 };
  if (f.size) return { kind: "size", key: f.size, is: lengthOf(f.is, unit), with: f.with || "", ...tail };
  if (f.part) return { kind: "part", key: f.part, where: f.where || "", ...tail };
  const kind = f.card ? "card" : f.step ? "step" : "";
  if (!kind) throw new Error("is about nothing that is known here");
  const hole = /^(.*)\/hole (\d+)$/.exec(f[kind]);
  if (hole) return { kind: "hole", key: hole[1], n: Number(hole[2]), ...tail };
  const begun = /^(.*)\/gripped$/.exec(f[kind]);
  if (begun) return { kind: "begin", key: begun[1], ...tail };
  if (f.skipped) return { kind, key: f[kind], skipped: f.skipped, ...tail };
  return { kind, key: f[kind], done: f.done !== false, ...tail };
}

// Read a made file; gives how many entries it has and which are new. Throws with words on the first fault.
function readMade(text) {
  const gone = takenBack();
  const known = new Set(log.map((one) => entryOf(one)).filter(Boolean).map(lineOf));
  const said = new Map(); // how often the same was said here already, whenever and by whom
  for (const line of log.filter((one, i) => !gone.has(i) && entryOf(one)).map(saysOf)) said.set(line, (said.get(line) || 0) + 1);
  const fresh = [];
  let count = 0;
  let unit = "mm";
  text.split(/\r?\n/).forEach((line, i) => {
    const bare = line.replace(/\s+#.*$/, "").trim();
    if (!bare || bare.startsWith("#") || /^(tommybar: 1|made:(\s*\[\])?)$/.test(bare)) return;
    const units = /^units: (mm|in)$/.exec(bare);
    const of = /^of: (.*)$/.exec(bare);
    try {
      if (units) unit = units[1];
      else if (of) {
        const name = of[1].startsWith("\"") ? JSON.parse(of[1]) : of[1];
        if (name !== DATA.plan.of) throw new Error(`records a making of "${name}", not of "${DATA.plan.of}"`);
      } else {
        const hit = /^- (\{.*\})$/.exec(line.trim()) || /^- (\{.*\})$/.exec(bare);
        if (!hit) throw new Error("is not one entry in { }");
        const entry = markOf(fieldsOf(hit[1]), unit);
        count += 1;
        const same = lineOf(entryOf(entry));
        const left = said.get(saysOf(entry)) || 0;
        if (!known.has(same) && !left) fresh.push(entry);
        if (left) said.set(saysOf(entry), left - 1);
        known.add(same);
      }
    } catch (fault) {
      throw new Error(`Line ${i + 1} ${fault.message}.`);
    }
  });
  return { count, fresh };
}
