// Parts as solids, drawn as an ink drawing is: metal in greys, edges and outlines in ink, on the page's own ground.
// Lengths in mm. The file of three.js is loaded when a view is first wanted.

const LIBRARY = "./three-0.187.0.min.js";
const CREASE = Math.cos((25 * Math.PI) / 180); // two faces that meet more sharply share an edge in ink
const FLAT = 1 - 1e-7; // faces of one plane meet without any line
const ANGLE = 22; // of the camera: a long lens, so that what is parallel looks so [deg]
const STEP = Math.PI / 12; // one press of an arrow
const TIME = 650; // to pull apart [ms]
const GREYS = { // of metal by family, by day and by night
  "aluminium": ["#e3e4e2", "#b6b8b4"], "magnesium": ["#dcdedb", "#b0b3ae"], "brass": ["#cfc9b9", "#a8a291"],
  "bronze": ["#bdb4a4", "#968d7e"], "copper": ["#bfaea3", "#96867c"], "stainless": ["#cfd1d2", "#a3a6a8"],
  "cast iron": ["#9c9d9b", "#6d6f6c"], "steel": ["#bbbdbd", "#8b8e8e"], "": ["#c9c9c5", "#96978f"],
};

/** Whether this browser can draw it at all. */
export function able() {
  try {
    const context = document.createElement("canvas").getContext("webgl2");
    if (context) context.getExtension("WEBGL_lose_context")?.loseContext();
    return Boolean(context);
  } catch {
    return false;
  }
}

/** A scene of these solids on a canvas inside an element. */
export async function sceneOf(place, data, told) {
  const three = await import(LIBRARY);
  return new Scene(three, place, data, told);
}

// Corner normals that keep edges sharp, edges in ink, and the lines that may become the outline.
function faceted(three, part) {
  const { points, triangles } = part;
  const faces = triangles.length / 3;
  const normals = new Float32Array(faces * 3); // of unit length
  const areas = new Float32Array(faces);
  const at = [...Array(points.length / 3)].map(() => []); // faces round each point
  const [a, b, c] = [new three.Vector3(), new three.Vector3(), new three.Vector3()];
  for (let face = 0; face < faces; face++) {
    const [i, j, k] = [0, 1, 2].map((corner) => triangles[3 * face + corner]);
    a.fromArray(points, 3 * i);
    b.fromArray(points, 3 * j).sub(a);
    c.fromArray(points, 3 * k).sub(a);
    b.cross(c);
    areas[face] = b.length();
    b.normalize().toArray(normals, 3 * face);
    for (const corner of [i, j, k]) at[corner].push(face);
  }
  const along = (one, other) => normals[3 * one] * normals[3 * other] + normals[3 * one + 1] * normals[3 * other + 1]
    + normals[3 * one + 2] * normals[3 * other + 2];
  const position = new Float32Array(faces * 9);
  const normal = new Float32Array(faces * 9);
  for (let face = 0; face < faces; face++) {
    for (let corner = 0; corner < 3; corner++) {
      const point = triangles[3 * face + corner];
      a.set(0, 0, 0);
      for (const near of at[point]) {
        if (along(face, near) > CREASE) a.addScaledVector(b.fromArray(normals, 3 * near), areas[near]);
      }
      if (a.lengthSq() === 0) a.fromArray(normals, 3 * face);
      a.normalize().toArray(normal, 9 * face + 3 * corner);
      for (let axis = 0; axis < 3; axis++) position[9 * face + 3 * corner + axis] = points[3 * point + axis];
    }
  }
  const seen = new Map();
  const edges = [];
  const rounds = []; // point, point, face, face
  for (let face = 0; face < faces; face++) {
    for (let corner = 0; corner < 3; corner++) {
      const from = triangles[3 * face + corner], to = triangles[3 * face + (corner + 1) % 3];
      const key = from < to ? from * 1e7 + to : to * 1e7 + from;
      const other = seen.get(key);
      if (other === undefined) {
        seen.set(key, face);
        continue;
      }
      const cosine = along(face, other);
      if (cosine < CREASE) edges.push(...points.slice(3 * from, 3 * from + 3), ...points.slice(3 * to, 3 * to + 3));
      else if (cosine < FLAT) rounds.push([from, to, face, other]);
    }
  }
  const body = new three.BufferGeometry();
  body.setAttribute("position", new three.BufferAttribute(position, 3));
  body.setAttribute("normal", new three.BufferAttribute(normal, 3));
  body.computeBoundingBox();
  body.computeBoundingSphere();
  const ink = new three.BufferGeometry();
  ink.setAttribute("position", new three.BufferAttribute(new Float32Array(edges), 3));
  return { body, ink, rounds, normals };
}

class Scene {
  constructor(three, place, data, told) {
    this.three = three;
    this.told = told; // called with the number of the part that is chosen, or -1
    this.still = matchMedia("(prefers-reduced-motion: reduce)").matches;
    this.place = place;
    const colour = (name) => new three.Color(getComputedStyle(place).getPropertyValue(name).trim());
    this.colours = { paper: colour("--paper"), ink: colour("--ink"), line: colour("--metal-line") };
    this.night = document.documentElement.dataset.light === "night";
    this.renderer = new three.WebGLRenderer({ antialias: true, alpha: true });
    this.renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
    this.canvas = this.renderer.domElement;
    this.canvas.setAttribute("aria-hidden", "true");
    place.append(this.canvas);
    this.scene = new three.Scene();
    this.scene.add(new three.HemisphereLight("#ffffff", this.night ? "#66685f" : "#a3a29b", 2.4));
    this.camera = new three.PerspectiveCamera(ANGLE, 1, 1, 1000);
    this.camera.up.set(0, 0, 1);
    const lamp = new three.DirectionalLight("#ffffff", 1.6);
    lamp.position.set(-0.45, 0.9, 1); // over the left shoulder, as on a drawing
    this.camera.add(lamp, lamp.target);
    lamp.target.position.set(0, 0, -1);
    this.scene.add(this.camera);
    this.pieces = [];
    data.parts.forEach((part, number) => this.add(part, number));
    this.moves = (data.moves || []).map((one) => ({ ...one, at: 0, frame: new three.Matrix4().set(...one.axis, 0, 0, 0, 1) }));
    this.apart = 0;
    this.chosen = -1;
    this.controls = new three.OrbitControls(this.camera, this.canvas);
    this.controls.enableDamping = false;
    this.controls.enableZoom = false; // until the view is entered: the wheel goes on scrolling the page
    this.controls.addEventListener("change", () => this.draw());
    this.touchable();
    new ResizeObserver(() => this.fitted()).observe(place);
    this.look(data.views[0].from);
    this.fitted();
  }

  add(part, number) {
    const three = this.three;
    const shape = faceted(three, part);
    const grey = (GREYS[part.family] || GREYS[""])[this.night ? 1 : 0];
    part.frames.forEach((frame, which) => {
      const metal = new three.MeshLambertMaterial({ color: grey, polygonOffset: true, polygonOffsetFactor: 1.5, polygonOffsetUnits: 2 });
      const ink = new three.LineBasicMaterial({ color: this.colours.ink });
      const piece = new three.Group();
      const body = new three.Mesh(shape.body, metal);
      const round = new three.BufferGeometry();
      round.setAttribute("position", new three.BufferAttribute(new Float32Array(shape.rounds.length * 6), 3));
      const outline = new three.LineSegments(round, ink);
      outline.frustumCulled = false;
      piece.add(body, new three.LineSegments(shape.ink, ink), outline);
      piece.matrixAutoUpdate = false;
      const home = new three.Matrix4().set(...frame, 0, 0, 0, 1);
      this.scene.add(piece);
      this.pieces.push({
        number, which, piece, body, outline, metal, ink, home, part, shape, grey: new three.Color(grey),
        way: new three.Vector3(...part.apart[which]), inside: new three.Matrix4(), drawnAt: home.clone(),
      });
    });
    this.pull(0);
  }

  // Move what a movement moves to a place on its way: degrees about its axis, or mm along it.
  moveTo(number, value) {
    this.moves[number].at = value;
    for (const one of this.pieces) one.home.copy(one.drawnAt);
    const own = new this.three.Matrix4();
    for (const { at, unit, frame, pieces } of this.moves) {
      if (unit === "deg") own.makeRotationZ((at * Math.PI) / 180);
      else own.makeTranslation(0, 0, at);
      const moved = frame.clone().multiply(own).multiply(frame.clone().invert());
      for (const one of this.pieces) {
        if (pieces.some(([part, which]) => part === one.number && which === one.which)) one.home.premultiply(moved);
      }
    }
    this.pull(this.apart);
    this.draw();
  }

  // Put every piece where it is when things are that far apart: 0 together, 1 pulled apart.
  pull(share) {
    this.apart = share;
    for (const one of this.pieces) {
      one.piece.matrix.makeTranslation(...one.way.clone().multiplyScalar(share).toArray()).multiply(one.home);
      one.piece.updateMatrixWorld(true);
      one.inside.copy(one.piece.matrixWorld).invert();
    }
  }

  // Every point of all pieces, apart or together.
  *points(share) {
    const point = new this.three.Vector3();
    for (const one of this.pieces) {
      const { points } = one.part;
      for (let at = 0; at < points.length; at += 3) {
        yield point.fromArray(points, at).applyMatrix4(one.home).addScaledVector(one.way, share);
      }
    }
  }

  // Where the camera must stand in that direction to see all: its target and its distance.
  stand(toward, share) {
    const three = this.three;
    const right = new three.Vector3().crossVectors(this.camera.up, toward);
    if (right.lengthSq() < 1e-9) right.set(1, 0, 0);
    right.normalize();
    const up = new three.Vector3().crossVectors(toward, right).normalize();
    const axes = [right, up, toward];
    const low = [Infinity, Infinity, Infinity], high = [-Infinity, -Infinity, -Infinity];
    for (const point of this.points(share)) {
      axes.forEach((axis, n) => {
        low[n] = Math.min(low[n], axis.dot(point));
        high[n] = Math.max(high[n], axis.dot(point));
      });
    }
    const target = new three.Vector3();
    axes.forEach((axis, n) => target.addScaledVector(axis, (low[n] + high[n]) / 2));
    const half = Math.tan((ANGLE * Math.PI) / 360);
    const [wide, tall, deep] = axes.map((_, n) => (high[n] - low[n]) / 2);
    return { target, away: deep + (1.08 * Math.max(wide / this.camera.aspect, tall, 0.5)) / half };
  }

  // Look from a direction at everything.
  look(from) {
    const toward = new this.three.Vector3(...from).normalize();
    const { target, away } = this.stand(toward, this.apart);
    this.put(toward, target, away);
  }

  put(toward, target, away) {
    this.controls?.target.copy(target);
    this.camera.position.copy(target).addScaledVector(toward, away);
    this.camera.near = away / 50;
    this.camera.far = away * 12;
    this.camera.updateProjectionMatrix();
    this.controls?.update();
    this.draw();
  }

  // The direction from what is looked at to the eye, and how far that is.
  toward() {
    const way = this.camera.position.clone().sub(this.controls.target);
    return [way.clone().normalize(), way.length()];
  }

  // Pull it apart or put it together; at once for those who want no motion.
  part(share) {
    const [toward, away] = this.toward();
    const from = { share: this.apart, target: this.controls.target.clone(), away };
    const to = this.stand(toward, share);
    if (this.still) {
      this.pull(share);
      this.put(toward, to.target, to.away);
      return;
    }
    const begun = performance.now();
    const move = (now) => {
      const done = Math.min(1, Math.max(0, (now - begun) / TIME));
      const ease = done * done * (3 - 2 * done);
      const between = (a, b) => a + (b - a) * ease;
      this.pull(between(from.share, share));
      this.put(this.toward()[0], from.target.clone().lerp(to.target, ease), between(from.away, to.away));
      if (done < 1) requestAnimationFrame(move);
    };
    requestAnimationFrame(move);
  }

  turn(sideways, over) {
    const [toward, away] = this.toward();
    const round = new this.three.Spherical().setFromCartesianCoords(toward.x, toward.z, -toward.y);
    round.theta += sideways * STEP;
    round.phi = Math.min(Math.PI - 1e-3, Math.max(1e-3, round.phi + over * STEP));
    const way = new this.three.Vector3().setFromSpherical(round);
    this.put(new this.three.Vector3(way.x, -way.z, way.y), this.controls.target.clone(), away);
  }

  nearer(times) {
    const [toward, away] = this.toward();
    this.put(toward, this.controls.target.clone(), away / times);
  }

  // Show one part in full and the others faint; -1 shows all alike.
  choose(number) {
    this.chosen = number;
    for (const one of this.pieces) {
      const faint = number >= 0 && one.number !== number;
      one.metal.color.copy(one.grey).lerp(this.colours.paper, faint ? 0.72 : 0);
      one.ink.color.copy(faint ? this.colours.line : this.colours.ink);
    }
    this.draw();
  }

  touchable() {
    let down = null;
    this.canvas.addEventListener("pointerdown", (event) => {
      down = [event.clientX, event.clientY];
    });
    this.canvas.addEventListener("pointerup", (event) => {
      if (!down || Math.hypot(event.clientX - down[0], event.clientY - down[1]) > 6) return;
      const box = this.canvas.getBoundingClientRect();
      const spot = new this.three.Vector2(
        ((event.clientX - box.left) / box.width) * 2 - 1, 1 - ((event.clientY - box.top) / box.height) * 2);
      const ray = new this.three.Raycaster();
      ray.setFromCamera(spot, this.camera);
      const hit = ray.intersectObjects(this.pieces.map((one) => one.body))[0];
      this.told(hit ? this.pieces.find((one) => one.body === hit.object).number : -1);
    });
  }

  fitted() {
    const { clientWidth: wide, clientHeight: tall } = this.place;
    if (!wide || !tall) return;
    this.renderer.setSize(wide, tall);
    const [toward] = this.toward();
    this.camera.aspect = wide / tall;
    this.look(toward.toArray());
  }

  // The lines at which a round body turns away from the eye.
  outlines() {
    const eye = new this.three.Vector3();
    for (const one of this.pieces) {
      const { rounds, normals } = one.shape;
      const points = one.part.points;
      const place = one.outline.geometry.attributes.position;
      eye.copy(this.camera.position).applyMatrix4(one.inside);
      let used = 0;
      for (const [from, to, face, other] of rounds) {
        const x = eye.x - points[3 * from], y = eye.y - points[3 * from + 1], z = eye.z - points[3 * from + 2];
        const first = x * normals[3 * face] + y * normals[3 * face + 1] + z * normals[3 * face + 2];
        const second = x * normals[3 * other] + y * normals[3 * other + 1] + z * normals[3 * other + 2];
        if (first > 0 === second > 0) continue;
        place.setXYZ(used++, points[3 * from], points[3 * from + 1], points[3 * from + 2]);
        place.setXYZ(used++, points[3 * to], points[3 * to + 1], points[3 * to + 2]);
      }
      place.needsUpdate = true;
      one.outline.geometry.setDrawRange(0, used);
    }
  }

  draw() {
    if (this.waiting) return;
    this.waiting = requestAnimationFrame(() => {
      this.waiting = 0;
      this.camera.updateMatrixWorld();
      this.outlines();
      this.renderer.render(this.scene, this.camera);
      this.place.dataset.drawn = String(1 + Number(this.place.dataset.drawn || 0));
    });
  }
}
