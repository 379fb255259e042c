// The list of parts and cards, and the page before a card is begun.

function drawList() {
  const s = standing();
  $("view").className = "at-list";
  fill($("top"),
    el("p", { class: "where" }, el("b", {}, DATA.plan.title), ` revision ${DATA.plan.revision}, scale ${DATA.plan.scale}, ${DATA.plan.shop}, plan ${DATA.plan.id}`));
  const next = RUNS.find((run) => !runDone(s, run));
  fill($("view"),
    keeps ? null : el("p", { class: "stop" }, "▲ STOP: this browser keeps nothing. Save the made file before you close the page."),
    DATA.plan.stops.length ? el("div", { class: "stop" }, el("p", {}, el("b", {}, "▲ STOP before starting:")), lines(DATA.plan.stops)) : null,
    next ? el("div", { class: "acts one" }, button(`Go on: ${spoken(next.part.name)}, card ${next.card.number}${pieceWords(next.part, next.piece)}`, () => resumeRun(next), "main", { id: "main" })) : el("p", { class: "said" }, "✓ Every card is done."),
    el("div", { class: "parts" }, DATA.parts.map((part) => partBlock(part, s))),
    lines(DATA.plan.cautions),
    tools());
}

function partBlock(part, s) {
  return el("section", { class: "part" },
    el("h2", {}, spoken(part.name), part.count > 1 ? ` (${part.count} off)` : "", el("span", { class: "soft" }, " " + part.material)),
    part.changed ? el("p", { class: "changed" }, el("b", {}, "Changed: "), part.changed) : null,
    s.where.get(part.name) ? el("p", {}, "left: " + s.where.get(part.name)) : null,
    RUNS.filter((run) => run.part === part).map((run) => cardButton(run, s)));
}

function cardButton(run, s) {
  const { part, card, piece } = run;
  const done = card.steps.filter((step) => settled(s, step.key, piece)).length;
  const all = runDone(s, run);
  const state = all ? "✓ done" : done ? `◐ ${done} of ${card.steps.length} steps` : "○ not begun";
  const time = minutesLeft();
  const fits = time !== null && !all && card.minutes ? (card.minutes <= time ? `, fits ${time} min` : `, too long for ${time} min`) : "";
  const signed = card.steps.some((step) => s.initials.has(step.key + "|" + piece)) ? ", signed" : "";
  return button([el("span", { class: "card-name" }, `card ${card.number} of ${card.of}${pieceWords(part, piece)}: ${card.title}`),
    el("span", { class: "card-state" }, `${state}, ${card.minutes ? card.minutes + " min " : ""}on the ${card.machine}${fits}${signed}${stateWords(card)}`)],
  () => resumeRun(run), "card-row" + (all ? " is-done" : ""), { "data-card": card.key + "|" + piece });
}

// What a served build has to say of a card: in its row of the list, and above its steps.
let stateWords = () => "";
let noticesOf = () => null;

function resumeRun(run) {
  const s = standing();
  const i = run.card.steps.findIndex((step) => !settled(s, step.key, run.piece));
  if (!s.begun.has(run.card.key + "|" + run.piece) && i <= 0) return go({ name: "setup", card: run.card.key, piece: run.piece });
  return go({ name: "step", card: run.card.key, piece: run.piece, i: Math.max(i, 0) });
}

function drawSetup() {
  const card = cardOf(view.card);
  const part = partOf(view.card);
  const piece = view.piece;
  topOfCard(part, card, piece, "before starting", card.steps.length ? "next: " + card.steps[0].do : "");
  $("view").className = "at-step";
  fill($("view"),
    noticesOf(card),
    el("div", { class: "two-sides" + (card.sketch ? "" : " no-sketch") },
      el("section", { class: "number" },
        el("h1", {}, card.out ? "Grip it" : card.hold || "Before starting"),
        card.out ? bigNumber(card.out, UNIT + " out of the jaws") : null,
        el("dl", {},
          row("held", card.hold ? el("p", {}, card.hold) : null), row("against", card.stop ? el("p", {}, card.stop) : null),
          row("look", card.before.map((line) => el("p", {}, line))),
          row("drawer", card.drawer.length ? el("p", {}, card.drawer.join(" · ")) : null),
          row("changed", part.changed ? el("p", {}, part.changed) : null),
          row("why", card.why ? el("p", { class: "soft" }, card.why) : null))),
      card.sketch ? el("section", { class: "picture" }, el("div", { svg: card.sketch }), card.gap ? el("p", { class: "soft" }, card.gap) : null) : null),
    el("div", { class: "acts" },
      button("Something is wrong", openWrong, "plain"),
      button(card.hold ? "Held and looked at" : "Looked at", begin, "main", { id: "main" }),
      button("Stop for today", openPause, "plain")));
}

function begin() {
  mark({ kind: "begin", key: view.card, piece: view.piece, done: true });
  go({ name: "step", card: view.card, piece: view.piece, i: 0 });
}

function tools() {
  const by = el("input", { id: "by", value: wishes.by, maxlength: "12", autocomplete: "off" });
  by.addEventListener("change", () => { wishes.by = by.value.trim(); writeStore(":wishes", wishes); });
  const left = minutesLeft();
  const time = el("input", { id: "minutes", value: left === null ? "" : left, inputmode: "numeric", maxlength: "3" });
  time.addEventListener("change", () => {
    wishes.until = Date.now() + Number(time.value) * 60000;
    wish("minutes", /^\d+$/.test(time.value) ? time.value : "");
  });
  const file = el("input", { type: "file", id: "import", accept: ".yaml,.yml,text/plain" });
  file.addEventListener("change", () => file.files.length && file.files[0].text().then(importMade));
  return el("section", { class: "tools" },
    el("label", {}, "initials ", by), el("label", {}, "minutes I have ", time),
    button("Save the made file", saveMade, "plain", { id: "save" }),
    el("label", { class: "as-button" }, "Read a made file", file),
    button("Marks, and take back", openMarks, "plain", { id: "marks" }),
    button(wishes.hand === "left" ? "Right hand" : "Left hand", () => wish("hand", wishes.hand === "left" ? "right" : "left"), "plain", { id: "hand" }),
    button(wishes.signed ? "Hold points without initials" : "Hold points need initials", () => wish("signed", wishes.signed ? "" : "yes"), "plain", { id: "signed" }),
    button("Day or night", () => wish("light", isDark() ? "day" : "night"), "plain", { id: "light" }),
    button("Print", () => window.print(), "plain"));
}

function wish(name, value) {
  wishes[name] = value;
  writeStore(":wishes", wishes);
  draw();
}

function isDark() {
  const light = wishes.light || (SERVED ? DATA.build.light : "");
  return light ? light === "night" : matchMedia("(prefers-color-scheme: dark)").matches;
}
