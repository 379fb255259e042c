// Drawing the view that is open, keys and the pedal, and coming back after a reload.

function draw() {
  document.body.dataset.hand = wishes.hand;
  document.documentElement.dataset.light = isDark() ? "night" : "day";
  if (view.name !== "list" && !DATA.parts.some((part) => part.cards.some((card) => card.key === view.card && (view.i || 0) < Math.max(card.steps.length, 1)))) view = { name: "list" };
  if (view.name === "step") drawStep();
  else if (view.name === "setup") drawSetup();
  else drawList();
  fitNumber();
  fitSketch();
}

// The one number is never cut off: on a narrow screen it shrinks to what there is.
function fitNumber() {
  const digits = document.querySelector(".big .digits");
  if (!digits) return;
  digits.style.fontSize = "";
  const room = digits.parentElement.clientWidth - digits.nextElementSibling.offsetWidth - 16;
  const wide = digits.getBoundingClientRect().width;
  if (wide > room) digits.style.fontSize = Math.floor(parseFloat(getComputedStyle(digits).fontSize) * room / wide) + "px";
}

// Words of the sketch keep their size however small the sketch is drawn.
function fitSketch() {
  for (const one of document.querySelectorAll("#view .sketch")) one.style.setProperty("--per", 1 / one.getScreenCTM().a);
}

document.addEventListener("keydown", (event) => {
  const typing = /^(INPUT|SELECT|TEXTAREA)$/.test(event.target.tagName) && event.target.type !== "radio";
  if (event.key === "Escape" && !$("panel").hidden && !standing().pause) return closePanel();
  if (entering && !typing) return entryKey(event);
  if (!$("panel").hidden) return keepInside(event);
  if (typing || event.ctrlKey || event.metaKey || event.altKey || event.repeat) return undefined;
  const pedal = [" ", "Enter", "PageDown", "ArrowRight"].includes(event.key);
  const onButton = event.target.tagName === "BUTTON" && event.target.id !== "main" && (event.key === " " || event.key === "Enter");
  if (pedal && !onButton && $("main")) {
    event.preventDefault();
    $("main").click();
  } else if (["PageUp", "ArrowLeft"].includes(event.key) && view.name !== "list") {
    event.preventDefault();
    lookBack();
  }
  return undefined;
});

// The focus stays inside an open panel.
function keepInside(event) {
  if (event.key !== "Tab") return;
  const all = [...$("panel").querySelectorAll("button, input, select")];
  const first = all[0];
  const last = all[all.length - 1];
  if (!all.length) return;
  if (event.shiftKey && (document.activeElement === first || document.activeElement === $("panel"))) {
    event.preventDefault();
    last.focus();
  } else if (!event.shiftKey && document.activeElement === last) {
    event.preventDefault();
    first.focus();
  }
}

window.addEventListener("storage", (event) => {
  if (event.key !== STORE) return;
  takeKept();
  if ($("panel").hidden) draw();
});
window.addEventListener("beforeunload", (event) => {
  if (!keeps && log.some((one) => !one.file)) event.preventDefault();
});
window.addEventListener("resize", () => { fitNumber(); fitSketch(); });

// The screen stays awake where the browser allows it.
async function stayAwake() {
  try {
    await navigator.wakeLock.request("screen");
  } catch (fault) {
    // a page from a memory stick may not ask; nothing depends on it
  }
}
document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && stayAwake());
stayAwake();

draw();
if (standing().pause) openResume();
if (document.fonts) document.fonts.ready.then(fitNumber);
