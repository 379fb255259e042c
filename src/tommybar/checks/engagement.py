"""How much thread is engaged, and whether a screw's length suits what it goes through."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tommybar.checks.checked import PRACTICE, Checked, at_least
from tommybar.checks.figures import Figure
from tommybar.checks.turning import outside_threads
from tommybar.design.model import Part, ScrewRelation, SizedDesign
from tommybar.facts.fasteners import clearance_hole, screw_length_at_least
from tommybar.facts.materials import material
from tommybar.facts.threads import thread
from tommybar.findings import Finding
from tommybar.refusals import Refusal
from tommybar.shapes.features import Cylinder, PlateHole, PlateShape, TurnedShape
from tommybar.shapes.holes import drawn_hole
from tommybar.shapes.plates import face_size
from tommybar.shop.model import Shop

# Engaged length over diameter that practice asks for, by the family of the metal with the internal thread.
STEEL, BRASS, ALUMINIUM, OTHER = 0.8, 1.0, 1.3, 2.0
SHARES = {
    "steel": STEEL,
    "stainless": STEEL,
    "titanium": STEEL,
    "cast iron": BRASS,
    "brass": BRASS,
    "bronze": BRASS,
    "copper": ALUMINIUM,
    "aluminium": ALUMINIUM,
    "magnesium": ALUMINIUM,
    "nickel silver": BRASS,
}


@dataclass(frozen=True)
class _Bought:
    """A bought screw as its designation says it: "ISO 4762 M5 x 16"."""

    name: str
    standard: str
    size: str
    length: float
    count: int


def engagement_wanted(material_name: str, dia: float) -> float:
    """Engaged length of thread that practice asks for in a metal [mm]."""
    return SHARES.get(material(material_name).family, OTHER) * dia


def look(design: SizedDesign, shop: Shop) -> Checked:
    """Screw relations, screwed parts, and grub screws."""
    found: list[Finding | None] = []
    figures: list[Figure] = []
    for relation in once_each(design):
        for one in _screwed_joint(design, relation):
            (figures if isinstance(one, Figure) else found).append(one)  # type: ignore[arg-type]
    found += _screwed_parts(design)
    return Checked(tuple(one for one in found if one is not None), tuple(figures))


def once_each(design: SizedDesign) -> Iterator[ScrewRelation]:
    """Relations that differ in more than which of several equal holes they name."""
    seen = set()
    for relation in design.screws:
        key = (tuple(_stem(name) for name in relation.through), _stem(relation.into), relation.screw)
        if key not in seen:
            seen.add(key)
            yield relation


def _stem(name: str) -> str:
    head, _, tail = name.rpartition("_")
    return head if tail.isdigit() else name


def bought_screws(design: SizedDesign) -> tuple[_Bought, ...]:
    """The bought screws of a design."""
    found = []
    for part in design.parts:
        words = part.bought.replace("×", "x").split()
        if len(words) == 5 and words[3] == "x" and words[0] == "ISO":
            found.append(_Bought(part.name, f"ISO {words[1]}", words[2], float(words[4]), part.count))
    return tuple(found)


def bought_for(design: SizedDesign, relation: ScrewRelation) -> _Bought | None:
    """The bought screw that a relation means; a grub screw joins no plates."""
    fitting = (s for s in bought_screws(design) if s.size == relation.screw and s.standard != "ISO 4026")
    return next(fitting, None)


def plate_hole(design: SizedDesign, name: str) -> tuple[Part, PlateHole] | None:
    """The hole of a plate that part.feature names."""
    part = next((one for one in design.parts if one.name == name.split(".")[0]), None)
    if part is None or not isinstance(part.shape, PlateShape):
        return None
    return next(((part, hole) for hole in part.shape.holes if hole.name == name.split(".", 1)[1]), None)


def metal_behind(part: Part, hole: PlateHole) -> float:
    """Thickness of the plate under a hole's face [mm]."""
    assert isinstance(part.shape, PlateShape)
    return face_size(part.shape, hole.face).depth


def _screwed_joint(design: SizedDesign, relation: ScrewRelation) -> list[Finding | Figure | None]:
    """One screw through its holes into its thread: clearance, length, engagement, bottoming."""
    into = plate_hole(design, relation.into)
    through = [plate_hole(design, name) for name in relation.through]
    screw = bought_for(design, relation)
    if into is None or any(one is None for one in through):
        return [_not_followed(relation)]
    part, tapped = into
    if screw is None:
        return [_no_screw(relation)]
    gripped = sum(metal_behind(*one) - one[1].sink_depth for one in through if one is not None)
    engaged = screw.length - gripped
    size = thread(relation.screw)
    place = {"part": part.name, "feature": tapped.name}
    wanted = engagement_wanted(part.material, size.major)
    found: list[Finding | Figure | None] = [_clear(relation, one) for one in through if one is not None]
    words = f"{screw.size} x {screw.length:g} through {gripped:g} mm leaves little thread in {relation.into}"
    try:
        longer = screw_length_at_least(screw.standard, screw.size, gripped + wanted)
        remedy = f"Take {screw.standard} {screw.size} x {longer:g}, if the thread is deep enough."
    except Refusal:
        remedy = "Take a longer screw."
    found.append(at_least(630, words, engaged, wanted, remedy=remedy, **place))
    found.append(
        Figure(
            "thread engaged",
            part.name,
            engaged,
            "mm",
            1,
            f"{screw.size} x {screw.length:g} less {gripped:g} mm gripped; {wanted:.1f} mm wanted",
            PRACTICE,
        )
    )
    deep = tapped.depth if tapped.depth is not None else metal_behind(part, tapped)
    if engaged > deep:
        found.append(
            Finding(
                631,
                "stop",
                f"{screw.size} x {screw.length:g} bottoms in {relation.into}: {engaged:g} mm of it, {deep:g} mm of thread.",
                part.name,
                tapped.name,
                figure=f"{engaged:g} mm",
                bound=f"{deep:g} mm",
                remedy="Take a shorter screw or tap deeper.",
                source="lengths of the design",
            )
        )
    return found


def _clear(relation: ScrewRelation, one: tuple[Part, PlateHole]) -> Finding | None:
    """A hole that the screw goes through must be wide enough."""
    part, hole = one
    try:
        least = clearance_hole(relation.screw, "fine")
    except Refusal:
        return None
    dia = drawn_hole(hole.dia, hole.thread)
    if dia >= least - 1e-6:
        return None
    return Finding(
        632,
        "stop",
        f"{relation.screw} does not pass through {part.name}.{hole.name}, {dia:g} mm.",
        part.name,
        hole.name,
        figure=f"{dia:g} mm",
        bound=f"{least:g} mm",
        remedy=f"Drill {clearance_hole(relation.screw):g} mm.",
        source="ISO 273, fine series",
    )


def _no_screw(relation: ScrewRelation) -> Finding:
    return Finding(
        633,
        "caution",
        f"No bought {relation.screw} screw stands in the design for {relation.into}.",
        relation.into.split(".")[0],
        relation.into.split(".", 1)[1],
        figure="none",
        bound=f"one {relation.screw} screw",
        remedy=f'Add a part like {{bought: "ISO 4762 {relation.screw} x 16"}}.',
        source="the design",
    )


def _not_followed(relation: ScrewRelation) -> Finding:
    return Finding(
        690,
        "note",
        f"The screw into {relation.into} does not join plates; its length is not checked yet.",
        relation.into.split(".")[0],
        figure=relation.screw,
        bound="only plates that are screwed together are followed",
        remedy="Measure the stack under its head and see that at least one diameter of thread is in the metal.",
        source="the design",
    )


def _screwed_parts(design: SizedDesign) -> list[Finding | None]:
    """Turned screws in tapped bores and circle holes of other turned parts, by equal designation."""
    found: list[Finding | None] = []
    turned = [part for part in design.parts if isinstance(part.shape, TurnedShape)]
    for part in turned:
        assert isinstance(part.shape, TurnedShape)
        for screw in outside_threads(part.shape):
            usable = usable_thread(part.shape, screw)
            for mate, feature, deep in tapped_in(turned, screw.thread, part):
                engaged = min(usable, deep)
                wanted = engagement_wanted(mate.material, thread(screw.thread).major)
                words = f"{part.name} engages little thread {screw.thread} in {mate.name}.{feature}"
                remedy = "Make the thread longer or the tapped part thicker."
                found.append(
                    at_least(630, words, engaged, wanted, part=mate.name, feature=feature, remedy=remedy)
                )
    return found


def usable_thread(shape: TurnedShape, screw: Cylinder) -> float:
    """Length of an outside thread that no groove cuts away [mm]."""
    cut = sum(
        min(g.end, screw.end) - max(g.start, screw.start)
        for g in shape.grooves
        if g.end > screw.start and g.start < screw.end
    )
    return screw.end - screw.start - cut


def tapped_in(parts: list[Part], designation: str, but: Part) -> Iterator[tuple[Part, str, float]]:
    """Tapped bores and circle holes of the other turned parts: part, feature, length of thread [mm]."""
    for part in parts:
        if part is but or not isinstance(part.shape, TurnedShape):
            continue
        for bore in part.shape.bores:
            if bore.thread == designation:
                yield part, bore.name, part.shape.length.value if bore.through else bore.depth
        for holes in part.shape.circle_holes:
            if holes.thread == designation:
                yield part, holes.name, holes.end - holes.start
