"""The bench card of a part that is finished after it is joined: pressed in, then reamed in place."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from tommybar.design.model import Part, SizedDesign
from tommybar.facts.materials import material
from tommybar.findings import Finding
from tommybar.making.cards import Card, Hold, Measure, Step
from tommybar.making.instruments import instrument_name
from tommybar.making.jobs import bore_span
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.reaming import predrill_for
from tommybar.mechanics.press_fit import press_fit
from tommybar.shapes.features import Bore, Cylinder, Dim, PlateShape, TurnedShape
from tommybar.shop.model import Shop


@dataclass(frozen=True)
class Joint:
    """A feature of this part pressed into a hole of another, with what the force depends on."""

    feature: str  # the pressed surface of this part
    into: str  # the mate, part.feature
    hub_material: str
    hub_outside: float  # smallest metal round the hole, as a diameter [mm]
    least: float  # interference [mm], 0 or more
    most: float


def joints_of(design: SizedDesign, name: str) -> tuple[Joint, ...]:
    """The press joints in which that part is the inner member."""
    found = []
    for fit in design.fits:
        part, feature = fit.shaft.split(".", 1)
        if fit.joint != "press" or part != name:
            continue
        hub, hole = fit.hole.split(".", 1)
        inner = _outside_dim(design.part(part), feature)
        outer = _hole_dim(design.part(hub), hole)
        if inner is None or outer is None or not (inner.toleranced and outer.toleranced):
            continue
        assert inner.smallest is not None and inner.largest is not None
        assert outer.smallest is not None and outer.largest is not None
        found.append(
            Joint(
                feature,
                fit.hole,
                design.part(hub).material,
                _hub_outside(design.part(hub), hole),
                round(max(0.0, inner.smallest - outer.largest), 4),
                round(inner.largest - outer.smallest, 4),
            )
        )
    return tuple(found)


def _outside_dim(part: Part, feature: str) -> Dim | None:
    shape = part.shape
    if not isinstance(shape, TurnedShape):
        return None
    return next((f.dia for f in shape.outside if isinstance(f, Cylinder) and f.name == feature), None)


def _hole_dim(part: Part, feature: str) -> Dim | None:
    shape = part.shape
    if isinstance(shape, TurnedShape):
        return next((b.dia for b in shape.bores if b.name == feature), None)
    if isinstance(shape, PlateShape):
        return next((h.dia for h in shape.holes if h.name == feature), None)
    return None


FACE_SIZES = {"top": "xy", "bottom": "xy", "front": "xz", "back": "xz", "left": "yz", "right": "yz"}


def _hub_outside(part: Part, hole: str) -> float:
    """Twice the least metal from the middle of the hole to an edge or another hole: the ring that really holds [mm]."""
    shape = part.shape
    if isinstance(shape, PlateShape):
        mine = next(h for h in shape.holes if h.name == hole)
        sizes = {"x": shape.length.value, "y": shape.width.value, "z": shape.thickness.value}
        wide, high = (sizes[axis] for axis in FACE_SIZES[mine.face])
        reach = [mine.x, wide - mine.x, mine.y, high - mine.y]
        reach += [
            math.hypot(h.x - mine.x, h.y - mine.y) - h.dia.value / 2
            for h in shape.holes
            if h.name != hole and h.face == mine.face
        ]
        return 2 * min(reach)
    assert isinstance(shape, TurnedShape)
    length = shape.length.value
    bore = next(b for b in shape.bores if b.name == hole)
    start, end = bore_span(bore, length)
    over = [f for f in shape.outside if f.start < end - 1e-6 and f.end > start + 1e-6]
    found = [f.dia.value if isinstance(f, Cylinder) else min(f.start_dia, f.end_dia) for f in over]
    found += [g.floor for g in shape.grooves if g.start < end - 1e-6 and g.end > start + 1e-6]
    found += [
        c.circle - c.dia.value for c in shape.circle_holes if c.start < end - 1e-6 and c.end > start + 1e-6
    ]
    return min(found)


def joint_cards(
    part: Part, joints: tuple[Joint, ...], shop: Shop, gives_to: dict[str, tuple[str, ...]], cards_before: int
) -> tuple[list[Card], list[Finding]]:
    """A bench card: press in, then ream what was left for it; none when nothing waits for a joint."""
    shape = part.shape
    if not isinstance(shape, TurnedShape):
        return [], []
    waiting = [bore for bore in shape.bores if bore.after]
    if not waiting or not joints:
        return [], []
    number = cards_before + 1
    steps = [_press(part, shape, joint, shop) for joint in joints]
    findings: list[Finding] = []
    for bore in waiting:
        reamer = next((one for one in shop.reamers if abs(one.size - bore.dia.value) < 0.003), None)
        if reamer is None:
            owned = ", ".join(f"{Mm(one.size):g}" for one in shop.reamers) or "none"
            findings.append(
                Finding(
                    412,
                    "caution",
                    f"No {bore.dia.value:g} mm reamer to finish {bore.name} of {part.name} after it is pressed in.",
                    part.name,
                    bore.name,
                    number,
                    figure=f"{bore.dia.value:g} mm",
                    bound=f"reamers owned: {owned}",
                    remedy="Borrow the reamer, or bore it in place to a plug and make the journal to what comes out.",
                )
            )
        steps.append(_finish(part, bore, reamer is not None, shop, gives_to))
    numbered = tuple(
        replace(step, number=n, key=f"{part.name}/{number}/{n}") for n, step in enumerate(steps, start=1)
    )
    into = ", ".join(dict.fromkeys(joint.into for joint in joints))
    card = Card(
        part.name,
        number,
        number,
        "bench",
        f"press into {into}, then finish " + ", ".join(bore.name for bore in waiting),
        "",
        Hold(
            "vice with soft jaws, or a draw bolt and washers",
            "",
            "flange and hub",
            0.0,
            0.0,
            0.0,
            0.0,
            "Pressed straight by faces that are square to the bore, never hammered.",
            "flange home on the hub's face",
        ),
        numbered,
        (
            "Both bores clean, edges broken, a film of oil; lead chamfer first.",
            "A press that slips throws the part: stand aside, eye protection.",
        ),
        tuple(dict.fromkeys(step.tool for step in numbered)),
        minutes=round(sum(step.minutes for step in numbered) + rule("minutes", "set_up"), 1),
        after="leave it in its hub; label both",
        goes_wrong=(
            "Started crooked: take it out at once and clean the burr, it will not straighten itself.",
            "Reamed before pressing: the bore closes and the shaft sticks.",
        ),
        why="A pressed bush closes its bore by about the interference, so the size is made last.",
    )
    return [card], findings


def _press(part: Part, shape: TurnedShape, joint: Joint, shop: Shop) -> Step:
    body = next(f for f in shape.outside if isinstance(f, Cylinder) and f.name == joint.feature)
    hollow = next((b for b in shape.bores if b.through), None)
    bore = 0.0
    if hollow is not None:  # what is finished after pressing stands at its drill while it is pressed
        bore = predrill_for(hollow.dia.value, shop) if hollow.after else hollow.dia.value
    inner, hub = material(part.material), material(joint.hub_material)
    force = press_fit(
        body.dia.value,
        joint.most,
        body.end - body.start,
        joint.hub_outside,
        hub.modulus,
        hub.poisson,
        inner.modulus,
        inner.poisson,
        bore,
    ).force
    return Step(
        0,
        f"Press {joint.feature} into {joint.into}, flange home",
        joint.feature,
        "vice or draw bolt",
        "hand",
        0.0,
        0.0,
        0.0,
        f"{force / 1000:.1f}",
        "kN at most",
        (
            f"Interference {Mm(joint.least):.3f} to {Mm(joint.most):.3f}; up to {force / 1000:.1f} kN, half more to start.",
            "If it goes in by hand it is too small: make another, or use retaining adhesive.",
        ),
        minutes=8.0,
        why="Force from the thick-ring formula at the largest interference, 0.12 of friction.",
        cautions=("No hammer. Nothing hard against the flange's face.",),
    )


def _finish(part: Part, bore: Bore, owned: bool, shop: Shop, gives_to: dict[str, tuple[str, ...]]) -> Step:
    name = f"{part.name}.{bore.name}"
    instrument = instrument_name(shop, bore.dia, "inside")
    left = bore.dia.value - predrill_for(bore.dia.value, shop)
    return Step(
        0,
        f"{'Ream' if owned else 'Bore'} {bore.name} {Mm(bore.dia.value):g} {bore.dia.zone} in place",
        bore.name,
        f"reamer {Mm(bore.dia.value):tool}" if owned else "boring bar",
        "reamer" if owned else "boring",
        0.0,
        0.0,
        0.0,
        f"{bore.dia.value:g} {bore.dia.zone}",
        "DIA mm",
        (
            f"{Mm(left):.2f} was left for it, less what the press closed. By hand with a wrench, straight, turning one way.",
            "Both bushes of a pair in line: ream through both with their hubs in place if the reamer is long enough.",
        ),
        minutes=6.0,
        why="The last thing done to this bore, so nothing changes it afterwards.",
        measure=(Measure(name, bore.dia, instrument, gives_to.get(name, ())),),
        tool_size=bore.dia.value if owned else 0.0,
    )
