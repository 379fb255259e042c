// One step: the number that rules, the dials, the sketch, the hold point, and three targets.

function here() {
  const card = cardOf(view.card);
  return { part: partOf(view.card), card, piece: view.piece, step: card.steps[view.i] };
}

const missing = (s, step, piece) => step.measure.filter((m) => !s.sizes.has(m.size + "|" + piece));
const pieceWords = (part, piece) => part.count > 1 ? `, piece ${piece} of ${part.count}` : "";

function nextWords(card, i) {
  const next = card.steps[i + 1];
  return next ? "next: " + next.do : "then: " + (card.after || "this card is finished");
}

function topOfCard(part, card, piece, where, next) {
  const left = card.steps.slice(view.i || 0).reduce((sum, step) => sum + step.minutes, 0);
  fill($("top"),
    button("All cards", () => go({ name: "list" }), "plain small", { id: "to-list" }),
    el("p", { class: "where" }, el("b", {}, spoken(part.name)), ` card ${card.number} of ${card.of}${pieceWords(part, piece)}: ${card.title} `, el("b", { class: "whole" }, where)),
    el("p", { class: "soft next" }, next + (left >= 1 ? ` · ${Math.round(left)} min left of this card` : "")),
    minutesLeft() === null ? null : el("p", { class: "next", id: "evening", "data-card-minutes": left }, eveningWords(left)));
}

function eveningWords(left) {
  const time = minutesLeft();
  if (time === null) return "";
  return `${time} min left this evening` + (left > time ? ": ▲ too short for this card" : "");
}

setInterval(() => { if ($("evening")) $("evening").textContent = eveningWords(Number($("evening").dataset.cardMinutes)); }, 20000);

function bigNumber(text, kind) {
  const size = text.length <= 5 ? "" : text.length <= 7 ? " long" : " longer";
  return el("p", { class: "big" + size }, el("span", { class: "digits" }, text), el("span", { class: "kind" + (kind.split(" ").length > 3 ? " wordy" : "") }, kind));
}

function passTable(step) {
  if (!step.passes.length) return [];
  const list = passList(step);
  if (step.passes.length <= 8) return row("cuts", list);
  const [first, last] = [step.passes[0], step.passes[step.passes.length - 1]];
  return row("cuts", el("details", {}, el("summary", {}, `${step.passes.length} cuts, first to ${first.to}, last to ${last.to}`), list));
}

function passList(step) {
  return el("ol", { class: "passes" }, step.passes.map((one) => el("li", { class: one.last ? "last" : "" }, el("b", {}, one.to), one.dial ? " " + one.dial : "", one.last ? " (last)" : "")));
}

function drawStep() {
  const { part, card, piece, step } = here();
  const s = standing();
  const id = step.key + "|" + piece;
  topOfCard(part, card, piece, `step ${view.i + 1} of ${card.steps.length}`, nextWords(card, view.i));
  const said = s.skipped.has(id) ? "skipped: " + s.skipped.get(id) : s.done.has(id) ? `✓ done ${s.done.get(id).at || ""} ${s.done.get(id).by || ""}` : "";
  $("view").className = "at-step";
  fill($("view"),
    noticesOf(card),
    el("div", { class: "two-sides" + (card.sketch ? "" : " no-sketch") },
      el("section", { class: "number" },
        el("h1", {}, step.do),
        said ? el("p", { class: "said" }, said) : null,
        step.big ? bigNumber(step.big, step.kind) : null,
        el("dl", {},
          row("dials", step.dial.map((line) => el("p", {}, line))),
          row("spindle", !step.tool && !step.speed ? null : el("p", {}, step.speed ? el("b", {}, step.speed) : "stopped, by hand", step.speed ? " rev/min" : "", step.cutting && step.speed ? ", " + step.cutting : "", step.feed && step.speed ? ", feed " + step.feed : "")),
          row("tool", step.tool ? el("p", {}, step.tool) : null),
          passTable(step),
          row("mind", step.cautions.map((line) => el("p", {}, line))),
          row("why", step.why ? el("p", { class: "soft" }, step.why) : null))),
      card.sketch ? el("section", { class: "picture" }, el("div", { svg: step.sketch || card.sketch }), card.gap ? el("p", { class: "soft" }, card.gap) : null) : null,
      step.measure.length ? holdBar(step, piece, s) : null),
    card.places.length ? holeList(card, piece, s) : null,
    el("div", { class: "acts" },
      button("Something is wrong", openWrong, "plain"),
      button(mainWords(s, step, piece), mainAct, "main", { id: "main" }),
      button("Stop for today", openPause, "plain")));
}

function mainWords(s, step, piece) {
  const open = missing(s, step, piece);
  if (open.length) return "Measure " + open[0].label;
  if (unsigned(s, step, piece)) return "Initials";
  if (openHoles(s)) return "Tick the holes";
  if (s.skipped.has(step.key + "|" + piece)) return "Done after all";
  return step.measure.length ? "Measured and done" : "Done, next";
}

function holdBar(step, piece, s) {
  return el("section", { class: "hold", id: "hold" },
    el("p", {}, el("b", {}, "STOP. Do not let go of the part until measured:")),
    el("div", { class: "hold-sizes" }, step.measure.map((m) => {
      const got = s.sizes.get(m.size + "|" + piece);
      const differ = s.differ.get(m.size + "|" + piece);
      const told = differ ? { state: "outside" } : got ? judge(m, got.is) : null;
      const words = differ ? `▲ ${m.label} is told differently: ${differ.map(toldBy).join("; ")}` : got ? `${m.label} ${inUnit(got.is)} ${told.state === "outside" ? "▲ " : "✓ "}${told.echo}` : `${m.label} ______ ${limitsWords(m)}`;
      return button(words, () => openEntry(m, piece, draw), "write " + (told ? told.state : "open"), { "data-size": m.size });
    })),
    step.measure.some((m) => m.gives.length) ? el("p", {}, step.measure.filter((m) => m.gives.length).map((m) => `Give ${m.label} to: ${m.gives.join(", ")}. `)) : null,
    el("div", { class: "signed" + (wishes.signed || s.initials.has(step.key + "|" + piece) ? "" : " unasked") }, el("span", { id: "signed-by" }, signedWords(s, step, piece)), button("Initials", () => openInitials(step, piece, draw), "plain", { id: "sign" })));
}

const toldBy = (one) => `${inUnit(one.is)} ${UNIT} by ${one.by || "no one named"}, ${one.device ? "device " + one.device.slice(0, 4) : "this device"}`;

const ROLES = ["learner", "checker"];
const signedWords = (s, step, piece) => ROLES.map((role) => `${role} ${(s.initials.get(step.key + "|" + piece) || {})[role] || "____"}`).join(" · ");
const unsigned = (s, step, piece) => Boolean(wishes.signed && step.measure.length && ROLES.some((role) => !(s.initials.get(step.key + "|" + piece) || {})[role]));

const HOLE_WORDS = ["hole", "X " + UNIT, "Y " + UNIT, "dial X", "dial Y", "come from", "what"];

function holeList(card, piece, s) {
  return el("section", { class: "holes" }, el("table", {},
    el("thead", {}, el("tr", {}, ["", ...HOLE_WORDS].map((w) => el("th", {}, w)))),
    el("tbody", {}, card.places.map((p) => {
      const step = card.steps[view.i];
      const done = s.holes.has(step.key + "/" + p.n + "|" + piece);
      return el("tr", { class: done ? "is-done" : "" },
        el("td", {}, button(done ? "✓" : " ", () => { if (!done) { mark({ kind: "hole", key: step.key, piece, n: p.n, done: true }); draw(); } }, "tick", { "aria-label": `hole ${p.n}${done ? ", done" : ""}`, "data-hole": p.n })),
        [p.n, p.x, p.y, p.dial_x, p.dial_y, p.from, p.what].map((w, i) => el("td", { "data-name": HOLE_WORDS[i] }, String(w))));
    }))), lines(card.chords));
}

// Holes that no step has ticked yet when the card's last step is to be done.
function openHoles(s) {
  const { card, piece } = here();
  return view.i === card.steps.length - 1 && card.places.some((p) => !card.steps.some((step) => s.holes.has(step.key + "/" + p.n + "|" + piece)));
}

function mainAct() {
  const { card, piece, step } = here();
  const s = standing();
  const open = missing(s, step, piece);
  if (open.length) return openEntry(open[0], piece, draw);
  if (unsigned(s, step, piece)) return openInitials(step, piece, draw);
  if (openHoles(s)) return tell("Not yet: tick each hole when it is done.");
  if (!s.done.has(step.key + "|" + piece)) mark({ kind: "step", key: step.key, piece, done: true });
  return onwards(card, piece);
}

function onwards(card, piece) {
  const s = standing();
  const from = view.i + 1;
  if (from < card.steps.length) return go({ name: "step", card: card.key, piece, i: from });
  const behind = card.steps.findIndex((step) => !settled(s, step.key, piece));
  if (behind >= 0) {
    tell("A step before this one is still open.");
    return go({ name: "step", card: card.key, piece, i: behind });
  }
  if (!s.done.has(card.key + "|" + piece)) mark({ kind: "card", key: card.key, piece, done: true });
  const at = RUNS.findIndex((run) => run.card === card && run.piece === piece);
  const next = RUNS.slice(at + 1).find((run) => !runDone(standing(), run));
  tell(`Card ${card.number} of ${spoken(partOf(card.key).name)} is done${card.after ? `: ${card.after}` : ""}.`);
  return next ? go({ name: "setup", card: next.card.key, piece: next.piece }) : go({ name: "list" });
}
