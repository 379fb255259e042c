// A measured size is written in: big digits, a nudge from the target, the echo, and a guard against slips.

let entering = null; // {measure, piece, text, sure}

function openEntry(measure, piece, done) {
  entering = { measure, piece, text: "", sure: false, with: measure.with, done };
  drawEntry();
}

const enteredMm = () => entering.text === "" || !/[0-9]/.test(entering.text) ? null : Number(entering.text) * EACH;

function typeDigit(sign) {
  entering.sure = entering.asked = false;
  if (sign === "back") entering.text = entering.text.slice(0, -1);
  else if (sign === "." ? !entering.text.includes(".") : entering.text.length < 9) entering.text += sign;
  showEntry();
}

function nudge(way) {
  const from = enteredMm() === null ? entering.measure.target / EACH : Number(entering.text);
  entering.text = Math.max(0, from + (enteredMm() === null ? 0 : way * NUDGE)).toFixed(PLACES);
  entering.sure = entering.asked = false;
  showEntry();
}

function drawEntry() {
  const m = entering.measure;
  const keys = ["7", "8", "9", "4", "5", "6", "1", "2", "3", ".", "0", "back"];
  const names = [...new Set([m.with, ...DATA.instruments].filter(Boolean)), "other"];
  openPanel(
    el("h2", {}, `${m.label}: what is it?`),
    el("p", { class: "soft" }, `${limitsWords(m)}${m.zone ? ", " + m.zone : ""}${m.because ? " (" + m.because + ")" : ""}`),
    el("div", { class: "entry" },
      el("div", { class: "entry-read" },
        el("output", { id: "entry-value", class: "entry-value" }), el("span", { class: "entry-unit" }, UNIT),
        el("p", { id: "entry-echo", class: "echo", role: "status" }),
        el("label", { class: "soft", for: "entry-with" }, "read with"),
        el("select", { id: "entry-with", "aria-label": "read with" }, names.map((name) => el("option", name === entering.with ? { selected: true } : {}, name))),
        el("div", { class: "nudges" },
          button("− " + NUDGE, () => nudge(-1), "plain", { id: "nudge-down", "aria-label": "less by " + NUDGE }),
          button("+ " + NUDGE, () => nudge(1), "plain", { id: "nudge-up", "aria-label": "more by " + NUDGE }))),
      el("div", { class: "keypad" }, keys.map((key) => button(key === "back" ? "⌫" : key, () => typeDigit(key), "key", { "aria-label": key === "back" ? "rub out" : key })))),
    el("div", { class: "acts two" },
      button("Not yet", closePanel, "plain"),
      button("Write it in", () => writeIn(false), "main", { id: "entry-write" })));
  showEntry();
}

function showEntry() {
  const mm = enteredMm();
  $("entry-value").textContent = entering.text || "—";
  const echo = $("entry-echo");
  echo.className = "echo";
  $("entry-write").textContent = "Write it in";
  if (mm === null) {
    echo.textContent = `Type the reading; − and + start from the target ${inUnit(entering.measure.target)}.`;
    return;
  }
  const told = judge(entering.measure, mm);
  echo.textContent = (told.state === "outside" ? "▲ " : "") + told.echo;
  echo.classList.add(told.state);
  if (told.doubt) {
    echo.textContent = "? " + told.doubt;
    echo.classList.add("doubt");
  }
}

// Enter and the pedal may write what is inside; a doubt or a size outside asks for a press of its own.
function writeIn(byKey) {
  const mm = enteredMm();
  if (mm === null || !(mm > 0)) {
    $("entry-echo").textContent = "Nothing is written yet. Type what the instrument reads.";
    $("entry-echo").className = "echo doubt";
    return;
  }
  const told = judge(entering.measure, mm);
  if ((told.doubt || told.state === "outside") && !entering.sure) {
    if (byKey && entering.asked) return;
    entering.asked = true;
    $("entry-write").textContent = told.doubt ? "Yes, it really is " + inUnit(mm) : "Write it in, outside";
    $("entry-write").blur();
    entering.sure = !byKey;
    return;
  }
  if (byKey && (told.doubt || told.state === "outside")) return;
  const { measure, piece, done } = entering;
  mark({ kind: "size", key: measure.size, piece, is: Math.round(mm * 1e6) / 1e6, with: $("entry-with").value === "other" ? "" : $("entry-with").value });
  closePanel();
  const mates = measure.gives.length ? ` Give it to: ${measure.gives.join(", ")}.` : "";
  tell(`${measure.label} ${inUnit(mm)} ${UNIT}, ${told.echo}.${mates}` + (told.state === "outside" && mates ? (SERVED ? " The mate gets new limits." : " Save the made file and plan again: the mate gets new limits.") : ""));
  done();
}

function entryKey(event) {
  const key = event.key === "," ? "." : event.key;
  if (/^[0-9.]$/.test(key)) typeDigit(key);
  else if (key === "Backspace") typeDigit("back");
  else if (key === "ArrowUp") nudge(1);
  else if (key === "ArrowDown") nudge(-1);
  else if (key === "Enter" && event.target.tagName === "BUTTON" && event.target.id !== "entry-write") return;
  else if (key === "Enter") writeIn(true);
  else return;
  event.preventDefault();
}
