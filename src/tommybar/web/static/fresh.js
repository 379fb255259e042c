// A served build planned again: its new cards take the place of those that are shown, and each card that says
// something else than when it was last looked at says so until the person has seen it.

const SHOWN = ":shown " + UNIT; // what each card said when it was last brought in, by its key
const changedCards = new Map(readStore(":changed " + UNIT, [])); // what cards said before that nobody has looked at since

// What a card says, line by line: what is not in here changes no cut.
function cardSays(card) {
  const steps = card.steps.flatMap((step) => [
    `${step.n}. ${step.do}${step.big ? `: ${step.big} ${step.kind}` : ""}`,
    `${step.n}. ${[step.tool, step.speed ? step.speed + " rev/min" : "by hand", step.feed].filter(Boolean).join(", ")}`,
    ...(step.passes.length ? [`${step.n}. cuts to ${step.passes.map((one) => one.to).join(", ")}`] : []),
    ...step.dial.map((line) => `${step.n}. ${line}`),
    ...step.measure.map((m) => `${step.n}. measure ${m.label}: ${limitsWords(m)}`)]);
  const holes = card.places.map((p) => `hole ${p.n}: X ${p.x}, Y ${p.y}, ${p.dial_x}, ${p.dial_y}, ${p.what}`);
  return [card.title, [card.hold, card.stop].filter(Boolean).join(", "), card.out ? `out of the jaws ${card.out} ${UNIT}` : "", ...steps, ...holes].filter(Boolean);
}

// Compare what is shown now with what was shown before, on this device and across reloads.
function noteChanges() {
  const before = readStore(SHOWN, {});
  const after = {};
  const s = standing();
  for (const card of DATA.parts.flatMap((part) => part.cards)) {
    const says = (after[card.key] = cardSays(card));
    const had = changedCards.get(card.key) || before[card.key];
    const over = RUNS.filter((run) => run.card === card).every((run) => runDone(s, run));
    if (had && !over && had.join("\n") !== says.join("\n")) changedCards.set(card.key, had);
    else changedCards.delete(card.key);
  }
  for (const key of [...changedCards.keys()]) if (!after[key]) changedCards.delete(key);
  writeStore(SHOWN, after);
  writeStore(":changed " + UNIT, [...changedCards]);
}

function seen(card) {
  changedCards.delete(card.key);
  writeStore(":changed " + UNIT, [...changedCards]);
  draw();
  tellState();
}

const staleOn = (card) => DATA.build.stale[card.key];

stateWords = (card) => (changedCards.has(card.key) ? ", ▲ changed since you looked" : "") + (staleOn(card) ? ", ▲ its print is stale" : "");

noticesOf = (card) => {
  const had = changedCards.get(card.key);
  if (!had && !staleOn(card)) return null;
  const says = cardSays(card);
  const lost = had ? had.filter((line) => !says.includes(line)) : [];
  const now = had ? says.filter((line) => !had.includes(line)) : [];
  const part = partOf(card.key);
  return el("section", { class: "notices", id: "notices" },
    staleOn(card) ? el("p", {}, el("b", {}, "▲ The printed card is stale: "), `it was printed on ${staleOn(card)} and says something else. Work from this page, or print it again.`) : null,
    had ? el("div", { class: "notice" },
      el("div", {}, el("p", {}, el("b", {}, "▲ This card has changed since you looked. "), part.changed || ""),
        lines(now.slice(0, 4).map((line) => "now: " + line)), lines(lost.slice(0, 4).map((line) => "before: " + line)),
        now.length > 4 || lost.length > 4 ? el("p", {}, "More lines differ: read the card from its start.") : null),
      button("Seen", () => seen(card), "plain", { id: "seen" })) : null);
};

// A size that is being written in is held against the limits of the fresh plan.
function enterAfresh() {
  if (!entering) return;
  const fresh = DATA.parts.flatMap((part) => part.cards).flatMap((card) => card.steps).flatMap((step) => step.measure);
  const found = fresh.find((one) => one.size === entering.measure.size);
  if (!found || JSON.stringify(found) === JSON.stringify(entering.measure)) return;
  entering = { ...entering, measure: found, sure: false, asked: false };
  drawEntry();
  tell("The plan has changed while you wrote: these are the new limits.");
}

// Fetch the page anew and take its cards; false while the server is still planning.
async function takeFresh() {
  const answer = await fetch(location.pathname, { cache: "no-store" });
  if (answer.redirected || !answer.ok) throw new Error("not let in");
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  const found = page.getElementById("contents");
  if (!found) return false;
  const fresh = JSON.parse(found.textContent);
  if (fresh.plan.unit !== UNIT) { // the unit was switched on another page of this browser
    if ($("panel").hidden) location.reload();
    return false;
  }
  const words = takeContents(fresh);
  token = fresh.build.token;
  $("paper").replaceChildren(...page.getElementById("paper").childNodes);
  noteChanges();
  enterAfresh();
  if ($("panel").hidden) draw();
  if (words) tell(words);
  return true;
}
