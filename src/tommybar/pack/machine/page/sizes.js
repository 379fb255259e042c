// Sizes in words: in the unit shown, against the target and the limits.

const UNIT = DATA.plan.unit;
const EACH = UNIT === "in" ? 25.4 : 1;
const PLACES = UNIT === "in" ? 4 : 3;
const NUDGE = UNIT === "in" ? 0.0005 : 0.01;
const SLIPS = [[25.4, "read in the other unit, inch for mm"], [1 / 25.4, "read in the other unit, mm for inch"],
  [2, "a diameter written for a radius"], [0.5, "a radius written for a diameter"]];

// A size [mm] in the unit shown; a nought at the end is dropped down to two places.
function inUnit(mm, least) {
  const text = (mm / EACH).toFixed(PLACES);
  const keep = least === undefined ? 2 : least;
  return text.replace(new RegExp("^(.*\\.\\d{" + keep + "}\\d*?)0+$"), "$1");
}

const limitsWords = (m) => m.low === null ? `${inUnit(m.target)} ${UNIT}, general tolerance` : `${inUnit(m.low, PLACES)} to ${inUnit(m.high, PLACES)} ${UNIT}`;

// What a reading means: its echo, whether it is inside, and whether it should be doubted.
function judge(m, mm) {
  const ratio = mm / m.target;
  const slip = SLIPS.find(([factor]) => Math.abs(ratio / factor - 1) < 0.03);
  let doubt = "";
  if (slip) doubt = `${inUnit(mm)} is ${slip[0] > 1 ? slip[0] + " times" : slip[0] === 0.5 ? "half" : "1/25.4 of"} the target ${inUnit(m.target)}: ${slip[1]}? Did you mean ${inUnit(mm / slip[0])}?`;
  else if (Math.abs(ratio - 1) > 0.2) doubt = `${inUnit(mm)} is far from the target ${inUnit(m.target)}. Is it the right size?`;
  const off = mm - m.target;
  const small = 0.5 * EACH * 10 ** -PLACES;
  const from = Math.abs(off) < small ? "on the target" : `${inUnit(Math.abs(off))} ${off > 0 ? "over" : "under"}`;
  if (m.low === null) return { echo: from, state: "free", doubt };
  const out = mm > m.high + 1e-9 ? mm - m.high : mm < m.low - 1e-9 ? m.low - mm : 0;
  if (out > 0) return { echo: `${from}, ${inUnit(out)} outside the limit`, state: "outside", doubt };
  const room = Math.min(m.high - mm, mm - m.low);
  return { echo: `${from}, still ${inUnit(Math.max(room, 0))} inside`, state: "inside", doubt };
}
