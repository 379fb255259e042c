// What stands one press away: trouble, stopping for today, coming back, the marks, the made file.

function openWrong() {
  const { card, piece, step } = view.name === "step" ? here() : { card: cardOf(view.card), piece: view.piece, step: null };
  const reason = el("input", { id: "reason", maxlength: "80", autocomplete: "off" });
  openPanel(
    el("h2", {}, "Something is wrong"),
    card.wrong.length ? el("div", {}, el("p", {}, el("b", {}, "What goes wrong at this card:")), lines(card.wrong)) : null,
    step ? el("div", { class: "because" },
      el("label", { for: "reason" }, "Skip this step, because "), reason,
      button("Skip it", () => {
        if (!reason.value.trim()) return tell("A skipped step needs its reason.");
        mark({ kind: "step", key: step.key, piece, skipped: reason.value.trim() });
        closePanel();
        return onwards(card, piece);
      }, "plain", { id: "skip" })) : null,
    el("div", { class: "acts wrap" },
      button("Look at the step before", () => { closePanel(); lookBack(); }, "plain", { id: "look-back" }),
      button("Take the last mark back", () => { takeBack(); closePanel(); draw(); }, "plain", { id: "undo" }),
      button("All marks", openMarks, "plain"),
      button("Back to work", closePanel, "main", { "data-first": true })));
}

// Who cut it and who looked at it: two people, at a hold point.
function openInitials(step, piece, done) {
  const had = standing().initials.get(step.key + "|" + piece) || {};
  const given = { learner: had.learner || wishes.by, checker: had.checker || "" };
  openPanel(
    el("h2", {}, "Initials for: " + step.do),
    ROLES.map((role) => el("p", { class: "because" }, el("label", { for: role }, role + " "), el("input", { id: role, value: given[role], maxlength: "12", autocomplete: "off" }))),
    el("p", { class: "soft" }, "The checker measures again and signs; nobody checks their own work."),
    el("div", { class: "acts two" },
      button("Not yet", closePanel, "plain"),
      button("Sign", () => {
        const who = Object.fromEntries(ROLES.map((role) => [role, $(role).value.trim()]));
        if (!who.learner) return tell("Not yet: the learner's initials are missing.");
        if (who.learner.toLowerCase() === who.checker.toLowerCase()) return tell("Not yet: the checker must be someone else than the learner.");
        ROLES.filter((role) => who[role] && who[role] !== had[role]).forEach((role) => mark({ kind: "initials", key: step.key, piece, role, who: who[role] }));
        closePanel();
        return done();
      }, "main", { id: "sign-it" })));
  $(given.learner ? "checker" : "learner").focus();
}

function lookBack() {
  if (view.name === "step" && view.i > 0) go({ ...view, i: view.i - 1 });
  else if (view.name === "step") go({ name: "setup", card: view.card, piece: view.piece });
  else go({ name: "list" });
}

function takeBack() {
  const at = lastMark();
  if (at < 0) return tell("There is nothing to take back.");
  mark({ kind: "undo", of: at });
  return tell("Taken back: " + markWords(log[at]) + ". The mark stays in the record.");
}

function markWords(one) {
  const piece = one.piece > 1 ? `, piece ${one.piece}` : "";
  if (one.kind === "size") return `${one.key} is ${inUnit(one.is)} ${UNIT}${one.with ? " with " + one.with : ""}${piece}`;
  if (one.kind === "part") return `${one.key} left: ${one.where}`;
  if (one.kind === "hole") return `${one.key} hole ${one.n} done${piece}`;
  if (one.kind === "begin") return `${one.key} held${piece}`;
  if (one.kind === "undo") return `taken back: ${markWords(log[one.of])}`;
  if (one.kind === "resume") return `resumed: ${one.answers}`;
  if (one.kind === "initials") return `${one.key} signed by ${one.role} ${one.who}${piece}`;
  if (one.kind === "change") return `changed: ${one.because}`;
  return one.skipped ? `${one.kind} ${one.key} skipped: ${one.skipped}${piece}` : `${one.kind} ${one.key} ${one.done === false ? "not done" : "done"}${piece}`;
}

function openMarks() {
  const gone = takenBack();
  openPanel(
    el("h2", {}, "Marks, the latest first"),
    el("ol", { class: "marks", reversed: true }, log.map((one, i) => el("li", { class: gone.has(i) ? "gone" : "" },
      el("span", { class: "soft" }, `${one.at || "from the plan"}${one.by ? " " + one.by : ""} `), (gone.has(i) ? "(taken back) " : "") + markWords(one))).reverse()),
    el("div", { class: "acts two" },
      button("Take the last mark back", () => { takeBack(); openMarks(); draw(); }, "plain", { id: "undo" }),
      button("Back to work", closePanel, "main", { "data-first": true })));
}

// Nothing is chosen beforehand unless ``first`` says so: an answer nobody gave is no answer.
function choice(name, words, options, first) {
  return el("fieldset", {}, el("legend", {}, words), options.map((one, i) => el("label", { class: "choice" },
    el("input", { type: "radio", name, value: one, ...(first && i === 0 ? { checked: true } : {}) }), one)));
}

const chosen = (name) => (document.querySelector(`input[name="${name}"]:checked`) || { value: "" }).value;
const line = (id, words) => el("p", { class: "field" }, el("label", { for: id }, words + " "), el("input", { id, maxlength: "60", autocomplete: "off" }));

function openPause() {
  const part = partOf(view.card);
  openPanel(
    el("h2", {}, "Stop for today"),
    choice("where", `The ${spoken(part.name)} is left`, ["in the chuck", "out of the chuck"], true),
    choice("jaw", "The mark on the part faces", ["no mark made", "jaw 1", "jaw 2", "jaw 3", "jaw 4"], true),
    choice("zeros", "Dial zeros", ["to be touched again", "left as they are"], true),
    line("tool-left", "tool left mounted"), line("curing", "hot, glued or curing"),
    el("div", { class: "acts two" },
      button("Not yet", closePanel, "plain"),
      button("Write it and stop", () => {
        const more = [["tool", $("tool-left").value.trim()], ["waiting", $("curing").value.trim()]].filter(([, v]) => v).map(([k, v]) => `; ${k}: ${v}`);
        const faces = chosen("jaw") === "no mark made" ? "no mark made" : chosen("jaw") + " faces the mark";
        mark({ kind: "part", key: part.name, pause: true, where: `${chosen("where")}; ${faces}; zeros ${chosen("zeros")}${more.join("")}` });
        closePanel();
        openResume();
      }, "main", { id: "pause", "data-first": true })));
}

function openResume() {
  const pause = standing().pause;
  if (!pause) return;
  const part = DATA.parts.find((one) => one.name === pause.key);
  openPanel(
    el("h2", {}, "Stopped. When you come back:"),
    el("p", {}, el("b", {}, spoken(pause.key)), ` left ${pause.at}: ${pause.where}`),
    choice("as-left", `Is the ${part ? spoken(part.name) : "part"} still as it was left?`, ["yes", "no, it moved or came out"]),
    choice("zeros-good", "Are the zeros still good (power off, dial moved)?", ["no, touch again", "yes"]),
    choice("which-a", "Which face is A?", ["the one with the dot, and it is there", "not sure"]),
    el("div", { class: "acts two" },
      button("Save the made file", saveMade, "plain"),
      button("Go on", resumeWork, "main", { id: "resume", "data-first": true })));
}

function resumeWork() {
  if (["as-left", "zeros-good", "which-a"].some((name) => !chosen(name))) {
    tell("Not yet: answer the three questions first.");
    return;
  }
  const moved = chosen("as-left") !== "yes";
  const zeros = chosen("zeros-good") !== "yes";
  const unsure = chosen("which-a") === "not sure";
  mark({ kind: "resume", answers: `${moved ? "moved" : "as left"}, zeros ${zeros ? "to touch" : "good"}, face A ${unsure ? "not sure" : "known"}` });
  closePanel();
  const moves = [];
  if (moved) moves.push("Grip it again by the sketch and see that it runs true before anything is cut.");
  if (unsure) moves.push("Find face A: measure the length that this card has left, and mark A with a dot.");
  if (zeros || moved) moves.push("Touch the tool on the diameter and on the face, set both dials to what they measure; come up from one side.");
  if (moves.length) openPanel(el("h2", {}, "First"), lines(moves), el("div", { class: "acts one" }, button("That is done", closePanel, "main", { id: "moves-done", "data-first": true })));
  draw();
}

function saveMade() {
  const name = DATA.plan.of.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "") || "making";
  const url = URL.createObjectURL(new Blob([madeFile()], { type: "text/yaml" }));
  const link = el("a", { href: url, download: name + "-made.yaml" });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 10000);
  tell("The made file is saved. Give it to: tommybar plan ... --made " + name + "-made.yaml");
}

function importMade(text) {
  try {
    const { count, fresh } = readMade(text);
    fresh.forEach((one) => mark(one));
    draw();
    tell(`${count} entries read, ${fresh.length} of them new.`);
  } catch (fault) {
    tell("Nothing was taken over. " + fault.message);
  }
}
