// Small things that a page does by itself; every page works without them too, apart from printing by a button.
"use strict";

document.addEventListener("click", function (event) {
  const target = event.target.closest("[data-print], [data-line], [data-add-row]");
  if (!target) return;
  if (target.hasAttribute("data-print")) window.print();
  if (target.hasAttribute("data-line")) toLine(event, Number(target.dataset.line));
  if (target.hasAttribute("data-add-row")) addRow(target.dataset.addRow);
});

// Put the cursor on the line of the text that a fault is about.
function toLine(event, number) {
  const text = document.getElementById("text");
  if (!text) return;
  event.preventDefault();
  const lines = text.value.split("\n");
  const start = lines.slice(0, number - 1).join("\n").length + (number > 1 ? 1 : 0);
  text.focus();
  text.setSelectionRange(start, start + (lines[number - 1] || "").length);
  text.scrollTop = Math.max(0, (number - 6) * (text.scrollHeight / lines.length));
}

// One more row of a table of entries: a copy of its last row with empty fields.
function addRow(id) {
  const body = document.querySelector("#" + CSS.escape(id) + " tbody");
  const row = body.rows[body.rows.length - 1].cloneNode(true);
  for (const field of row.querySelectorAll("input")) field.value = "";
  body.append(row);
  row.querySelector("input, select").focus();
}

// After a dimension was touched, its field is ready to be typed into.
window.addEventListener("load", function () {
  const field = location.hash === "#edit" && document.querySelector("#edit input[name=figure]");
  if (field) setTimeout(function () { field.focus(); field.select(); });
});

// Undo and redo by keyboard, outside fields; where a page has several files to undo, the buttons alone do it.
document.addEventListener("keydown", function (event) {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  if (event.target.closest("input, textarea, select, [contenteditable]")) return;
  const key = event.key.toLowerCase();
  const step = key === "y" || (key === "z" && event.shiftKey) ? "redo" : key === "z" ? "undo" : "";
  const forms = step ? document.querySelectorAll("form[data-step=" + step + "]") : [];
  if (forms.length !== 1) return;
  event.preventDefault();
  forms[0].requestSubmit();
});

// What scrolls sideways can be reached and scrolled with the keyboard.
function reachScrollers() {
  for (const one of document.querySelectorAll(".scroll:not([aria-label])")) {
    const wide = one.scrollWidth > one.clientWidth;
    one.tabIndex = wide ? 0 : -1;
    if (!wide) one.removeAttribute("tabindex");
  }
}
window.addEventListener("load", reachScrollers);
window.addEventListener("resize", reachScrollers);
document.addEventListener("toggle", reachScrollers, true);

// Where tabs run off the side of a small screen, the one that is open is brought into sight.
for (const one of document.querySelectorAll(".tabs [aria-current], .names [aria-current]")) {
  const bar = one.parentElement;
  bar.scrollLeft = Math.max(0, one.offsetLeft - bar.offsetLeft - (bar.clientWidth - one.offsetWidth) / 2);
}

// The token of our forms goes with what htmx sends.
document.addEventListener("htmx:configRequest", function (event) {
  const token = document.querySelector("input[name=token]");
  if (token) event.detail.headers["X-Token"] = token.value;
});
