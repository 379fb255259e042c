// Small bits that every view is built of. Words from the plan go in as text, never as markup.

const $ = (id) => document.getElementById(id);

function el(tag, given, ...inside) {
  const node = document.createElement(tag);
  for (const [key, value] of Object.entries(given || {})) {
    if (key === "act") node.addEventListener("click", value);
    else if (key === "svg") node.innerHTML = value; // drawn by the program, its words escaped there
    else if (value === true) node.setAttribute(key, "");
    else if (value !== false && value !== null && value !== undefined) node.setAttribute(key, value);
  }
  node.append(...inside.flat().filter((one) => one !== null && one !== undefined && one !== ""));
  return node;
}

const fill = (node, ...inside) => node.replaceChildren(...inside.flat().filter(Boolean));
const button = (words, act, kind, more) => el("button", { type: "button", class: kind || "plain", act, ...more }, words);
const row = (name, ...inside) => inside.flat().filter(Boolean).length ? [el("dt", {}, name), el("dd", {}, ...inside)] : [];
const lines = (list) => list.length ? el("ul", {}, list.map((one) => el("li", {}, one))) : null;
const spoken = (name) => name.replace(/_/g, " ");

// Words for a moment: nothing that matters is said here alone.
let toldAt = 0;
function tell(words) {
  $("told").textContent = words;
  $("told").className = "shown";
  clearTimeout(toldAt);
  toldAt = setTimeout(() => { $("told").className = ""; }, 6000);
}

let back = null; // what had the focus before a panel opened
function openPanel(...inside) {
  if ($("panel").hidden) back = document.activeElement;
  $("told").className = ""; // it would stand over the panel's heading
  $("panel").replaceChildren(el("div", { class: "sheet-of-panel" }, ...inside));
  $("panel").hidden = false;
  document.body.classList.add("covered");
  $("panel").setAttribute("aria-label", $("panel").querySelector("h2").textContent);
  const first = $("panel").querySelector("[data-first]") || $("panel");
  first.focus();
  $("panel").scrollTop = 0;
}

function closePanel() {
  $("panel").hidden = true;
  $("panel").replaceChildren();
  document.body.classList.remove("covered");
  entering = null;
  if (back && back.isConnected) back.focus();
}

function go(to) {
  view = to;
  writeStore(":view", view);
  draw();
  window.scrollTo(0, 0);
}
