// A design or a part to be turned about: fetches its solids, puts the buttons beside them, and says what was touched.
// Until it is drawn, and where it cannot be, the picture of the page stays.

import { able, sceneOf } from "./solid_scene.js";

const KEYS = { // an arrow turns as the finger does that drags that way
  ArrowLeft: (scene) => scene.turn(1, 0), ArrowRight: (scene) => scene.turn(-1, 0),
  ArrowUp: (scene) => scene.turn(0, 1), ArrowDown: (scene) => scene.turn(0, -1),
  "+": (scene) => scene.nearer(1.25), "=": (scene) => scene.nearer(1.25), "-": (scene) => scene.nearer(0.8),
};

function made(kind, attributes = {}, ...inside) {
  const one = document.createElement(kind);
  for (const [name, value] of Object.entries(attributes)) one.setAttribute(name, value);
  one.append(...inside);
  return one;
}

function button(words, deed) {
  const one = made("button", { type: "button" }, words);
  one.addEventListener("click", deed);
  return one;
}

// While the plan is still being worked out, the server answers with that page; ask again.
async function solids(address) {
  for (let tries = 0; tries < 120; tries++) {
    const answer = await fetch(address, { headers: { accept: "application/json" } });
    if (!answer.ok) throw new Error(`the server answered ${answer.status}`);
    if (answer.headers.get("content-type").startsWith("application/json")) return answer.json();
    await new Promise((done) => setTimeout(done, 1000));
  }
  throw new Error("the plan takes too long");
}

class View {
  constructor(figure) {
    this.figure = figure;
    this.said = made("p", { class: "solid-said", role: "status" });
    figure.append(this.said);
    this.instead = figure.querySelector(".solid-still") ? "Here is the picture instead." : "The drawing above shows it.";
  }

  async begin() {
    if (!able()) {
      this.say(`This browser cannot draw in three dimensions: it has no WebGL 2. ${this.instead}`);
      return;
    }
    this.say("The solids are being worked out.");
    try {
      this.data = await solids(this.figure.dataset.solid);
    } catch (fault) {
      this.say(`The solids could not be fetched: ${fault.message}. ${this.instead}`);
      return;
    }
    if (!this.data.parts.length) {
      this.say([...this.data.lacks, this.instead].join(" "));
      return;
    }
    this.place = made("div", {
      class: "solid-view", tabindex: "0", role: "group",
      "aria-label": `${this.data.title} in three dimensions; the arrow keys turn it, + and − bring it nearer and farther`,
    });
    this.figure.insertBefore(this.place, this.said);
    this.figure.classList.add("is-live");
    this.scene = await sceneOf(this.place, this.data, (number) => this.choose(number));
    this.listen();
    this.acts();
    this.choose(-1);
    this.say("");
    if (this.data.lacks.length) {
      const list = made("ul", {}, ...this.data.lacks.map((words) => made("li", {}, words)));
      this.figure.append(made("details", { class: "why" }, made("summary", {}, "What is not shown, or taken for granted"), list));
    }
  }

  say(words) {
    this.said.textContent = words;
  }

  listen() {
    const { place, scene } = this;
    place.addEventListener("keydown", (event) => {
      if (event.key === "Escape") this.choose(-1);
      const deed = KEYS[event.key];
      if (!deed || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      deed(scene);
    });
    place.addEventListener("pointerdown", () => place.focus({ preventScroll: true }));
    place.addEventListener("focus", () => { scene.controls.enableZoom = true; });
    place.addEventListener("blur", () => { scene.controls.enableZoom = false; });
    scene.canvas.addEventListener("webglcontextlost", (event) => {
      event.preventDefault();
      this.figure.classList.remove("is-live");
      this.say(`The browser has given the view up; load the page again for it. ${this.instead}`);
    });
  }

  acts() {
    const { scene } = this;
    const row = made("div", { class: "solid-acts" });
    if (this.data.apart) {
      const pull = button("Pull it apart", () => {
        const apart = pull.getAttribute("aria-pressed") !== "true";
        pull.setAttribute("aria-pressed", String(apart));
        pull.textContent = apart ? "Put it together" : "Pull it apart";
        scene.part(apart ? 1 : 0);
      });
      pull.setAttribute("aria-pressed", "false");
      row.append(pull);
    }
    for (const one of this.data.views) row.append(button(one.name, () => scene.look(one.from)));
    row.append(button("Nearer", () => scene.nearer(1.25)), button("Farther", () => scene.nearer(0.8)));
    (this.data.moves || []).forEach((one, number) => row.append(this.movement(one, number)));
    this.about = made("div", { class: "solid-part", "aria-live": "polite" });
    this.figure.append(this.about, row); // what was touched stands next to the view
    for (const one of document.querySelectorAll("button[data-show-part]")) {
      one.hidden = !this.data.parts.some((part) => part.name === one.dataset.showPart);
      one.addEventListener("click", () => {
        const number = this.data.parts.findIndex((part) => part.name === one.dataset.showPart);
        this.choose(number === scene.chosen ? -1 : number);
        this.place.scrollIntoView({ block: "nearest" });
      });
    }
  }

  // A movement as on a graduated collar: so much on, so much back, or the figure itself.
  movement(move, number) {
    const sign = move.unit === "deg" ? "°" : " mm";
    const field = made("input", { type: "text", inputmode: "decimal", size: "5", value: "0", "aria-label": `${move.words}, to [${move.unit}]` });
    const put = (value) => {
      const at = move.round ? ((value % 360) + 360) % 360 : Math.min(move.high, Math.max(move.low, value));
      field.value = String(Math.round(at * 100) / 100);
      this.scene.moveTo(number, at);
      this.place.dataset.moved = `${number}:${field.value}`;
    };
    const now = () => Number(field.value.replace(",", ".")) || 0;
    field.addEventListener("change", () => {
      const typed = Number(field.value.replace(",", "."));
      const inside = Number.isFinite(typed) && (move.round || (typed >= move.low && typed <= move.high));
      this.say(inside ? "" : `${move.words}: "${field.value}" is no place on its way; ${move.round ? "an angle in degrees is wanted" : `it goes from ${move.low} to ${move.high}${sign}`}.`);
      if (inside) put(typed);
    });
    const acts = [
      button(`− ${move.step}${sign}`, () => put(now() - move.step)), field,
      button(`+ ${move.step}${sign}`, () => put(now() + move.step)),
    ];
    if (move.narrowest !== null) acts.push(button("To where it is narrowest", () => put(move.narrowest)));
    const told = made("ul", {}, ...move.told.map((words) => made("li", {}, words)));
    return made("fieldset", { class: "solid-move" }, made("legend", {}, move.words), ...acts, told);
  }

  choose(number) {
    this.scene.choose(number);
    const part = this.data.parts[number];
    for (const one of document.querySelectorAll("button[data-show-part]")) {
      one.setAttribute("aria-pressed", String(Boolean(part) && one.dataset.showPart === part.name));
    }
    if (!part) {
      const asks = this.data.parts.length > 1 ? [made("p", { class: "soft" }, "Touch a part to see what it is.")] : [];
      this.about.replaceChildren(...asks);
      return;
    }
    const many = part.frames.length > 1 ? `${part.frames.length} off, ` : "";
    const words = [`${many}${part.material}`, part.size, part.mass].filter(Boolean).join(" · ");
    const here = part.page ? [made("p", {}, made("a", { href: part.page }, `The page of ${part.words}`))] : [];
    this.about.replaceChildren(made("p", {}, made("b", {}, part.words)), made("p", {}, words), ...here);
  }
}

for (const figure of document.querySelectorAll("[data-solid]")) {
  const view = new View(figure);
  const wanted = figure.querySelector("[data-solid-begin]");
  if (!wanted) view.begin();
  else {
    wanted.hidden = false;
    wanted.addEventListener("click", () => { wanted.remove(); view.begin(); });
  }
}
