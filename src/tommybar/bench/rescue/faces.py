"""Realities 31 and 45: faces that cannot be told apart, and a seat that the deburring ate."""

from __future__ import annotations

from collections.abc import Iterator

from tommybar.bench.rescue.situation import Mishap, Reality, Situation, Try, beware
from tommybar.findings import Finding
from tommybar.refusals import Refusal
from tommybar.shapes.features import TurnedShape
from tommybar.shapes.section import half_section

ALIKE = 0.05  # faces that differ by less than this cannot be told apart [mm]; common practice, no source
REFACING = 10.0  # a seat faced again and measured [min]; common practice, no source


def apart(shape: TurnedShape) -> float:
    """The most by which a turned part differs from itself turned end for end [mm]."""
    from shapely import affinity

    section = half_section(shape)
    turned = affinity.translate(affinity.scale(section, -1, 1, origin=(0, 0)), xoff=shape.length.value)
    return float(section.hausdorff_distance(turned))


def warn_of_faces(situation: Situation) -> Iterator[Finding]:
    """Turned parts whose two faces look alike."""
    for part in situation.plan.design.parts:
        if isinstance(part.shape, TurnedShape) and (off := apart(part.shape)) < ALIKE:
            yield beware(
                31,
                f"{part.name} is alike from both ends to {off:.3f} mm: its faces A and B cannot be told apart.",
                about=part.name,
                figure=f"{off:.3f} mm",
                bound=f"{ALIKE:g} mm",
                remedy="Mark face A with a dot as soon as it is clean.",
            )


def tries_after_losing_a_face(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """By what the faces can be told apart; when by nothing, either may be A if nothing runs to it yet."""
    known = {part.name: part for part in situation.plan.design.parts}
    if mishap.about not in known:
        raise Refusal(f'There is no part "{mishap.about}".', f"There are {', '.join(known)}.")
    shape = known[mishap.about].shape
    if not isinstance(shape, TurnedShape):
        raise Refusal(f"{mishap.about} is not turned.", "Name a turned part.")
    off = apart(shape)
    if off >= ALIKE:
        first, last = shape.outside[0].name, shape.outside[-1].name
        recess = next((f"; face {one.face} has the recess {one.name}" for one in shape.recesses), "")
        yield Try(
            f"Tell them by what differs, up to {off:.2f} mm: face A is at {first}, face B at {last}{recess}."
        )
    yield Try(
        f"Take either face of {mishap.about} as A, face it clean and make the rest from there.",
        forget=(mishap.about,),
        keep=(mishap.about,),
    )


def warn_of_sharp_edges(situation: Situation) -> Iterator[Finding]:
    """Seats that close a loop: their edges are dressed, never rounded."""
    for loop in situation.plan.design.loops:
        names = ", ".join(term.name for term in loop.terms)
        yield beware(
            45,
            f"Keep sharp what {loop.name} is measured over: {names}.",
            about=loop.terms[-1].name,
            figure=f"{loop.least:g} to {loop.most:g} mm float",
            bound="edge break 0.1 mm at most there",
            remedy="Break these edges with a stone, one stroke.",
            severity="note",
        )


def tries_after_deburring(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """The seat faced clean again; the loop is solved for the length made last."""
    loops = [
        one for one in situation.plan.design.loops if any(term.name == mishap.about for term in one.terms)
    ]
    if not loops:
        names = ", ".join(term.name for one in situation.plan.design.loops for term in one.terms)
        raise Refusal(
            f"{mishap.about} has a part in no loop of lengths.", f"Those in one are {names or 'none'}."
        )
    if mishap.value <= 0:
        raise Refusal(f"The length is {mishap.value:g} mm; it must be above 0.", "Measure it after facing.")
    last = loops[0].made_last
    own = last in (mishap.about, mishap.about.split(".")[0])
    words = "see whether the float is still right" if own else f"solve {last} anew"
    yield Try(
        f"Face {mishap.about} clean to {mishap.value:.3f} mm and {words}.",
        readings=((mishap.about, mishap.value),),
        by_hand=REFACING,
    )
    yield Try(f"Make {mishap.about.split('.')[0]} again.", forget=(mishap.about.split(".")[0],))


FACES = Reality(31, "Datum side lost", "about: the part", warn_of_faces, tries_after_losing_a_face)
SEAT = Reality(
    45,
    "Deburring ate a seat",
    "about: the length, as the loop names it; value: what it measures after facing it clean [mm]",
    warn_of_sharp_edges,
    tries_after_deburring,
)
