"""What the dry run says, in words: findings 500 to 519, each with figure, bound and remedy."""

from __future__ import annotations

from tommybar.dryrun.left_over import Piece
from tommybar.findings import Finding
from tommybar.making.cards import Card, Step

SOURCE = "dry run on the half-section"


def gouged(card: Card, step: Step, volume: float, deep: float) -> Finding:
    """The tool cuts into the finished part."""
    return Finding(
        500,
        "stop",
        f"{step.do}: the tool cuts {volume:.2f} mm3 out of the finished part, {deep:.3f} mm deep.",
        card.part,
        step.feature,
        card.number,
        step.number,
        f"{deep:.3f} mm",
        "0.005 mm",
        "Stop short, shift the tool by its width, or take one with a smaller nose.",
        SOURCE,
    )


def meets_fixture(card: Card, step: Step, what: str, area: float) -> Finding:
    """A tool move runs into jaws, chuck or arbor."""
    return Finding(
        501,
        "stop",
        f"{step.do}: the tool runs into the {what} ({area:.1f} mm2 of overlap).",
        card.part,
        step.feature,
        card.number,
        step.number,
        "0 mm of room",
        f"{what} of {card.hold.device}",
        "Let the work stand out further, or stop short and cut the rest in another grip.",
        SOURCE,
    )


def meets_tail(card: Card, step: Step, what: str, area: float) -> Finding:
    """Tool, tool post or holder runs into the tail centre or the tailstock."""
    tail = card.hold.tail
    has = f"{tail.kind} centre, point up to {tail.nose:g} mm" if tail is not None else ""
    return Finding(
        515,
        "stop",
        f"{step.do}: the tool runs into the {what} that carries the free end ({area:.1f} mm2 of overlap).",
        card.part,
        step.feature,
        card.number,
        step.number,
        "0 mm of room",
        has,
        "Take a half centre or one with a slender point, let the barrel stand out further, or cut it in a grip without it.",
        SOURCE,
    )


def rapid_through_metal(card: Card, step: Step, move: int, area: float) -> Finding:
    """A quick move goes through metal."""
    return Finding(
        502,
        "stop",
        f"{step.do}: move {move} is a quick one and goes through {area:.2f} mm2 of metal.",
        card.part,
        step.feature,
        card.number,
        step.number,
        f"{area:.2f} mm2",
        "0 mm2",
        "Draw the tool clear first, or feed there.",
        SOURCE,
    )


def body_meets_metal(card: Card, step: Step, move: int, area: float) -> Finding:
    """The shank, bar or blade behind the edge touches the work."""
    return Finding(
        503,
        "stop",
        f"{step.do}: behind its edge the tool runs into metal on move {move} ({area:.2f} mm2).",
        card.part,
        step.feature,
        card.number,
        step.number,
        f"{area:.2f} mm2",
        "0 mm2",
        "Take less depth, a thinner bar or blade, or open the place up first.",
        SOURCE,
    )


def too_short(card: Card, step: Step, move: int, reach: float, area: float) -> Finding:
    """The holder or drill chuck arrives at the work before the edge has done its way."""
    has = f"{reach:g} mm" if reach > 0 else "as it usually stands out"
    return Finding(
        504,
        "stop",
        f"{step.do}: the tool is too short; its holder runs into metal on move {move} ({area:.2f} mm2).",
        card.part,
        step.feature,
        card.number,
        step.number,
        f"reach {has}",
        "as deep as the cut",
        "Take a tool with more reach, or cut from the other side.",
        SOURCE,
    )


def grip_cut_away(card: Card, step: Step, before: float, after: float) -> Finding:
    """A step takes away what the jaws hold."""
    return Finding(
        505,
        "stop",
        f"{step.do}: it cuts away the grip; {after:.1f} mm of {before:.1f} mm are left.",
        card.part,
        step.feature,
        card.number,
        step.number,
        f"{after:.1f} mm",
        f"{before:.1f} mm at the start of the card",
        "Cut this feature in another grip, or hold on another surface.",
        SOURCE,
    )


def grip_not_there(card: Card, touched: float, dia: float) -> Finding:
    """The surface to be gripped is not what the card says."""
    return Finding(
        506,
        "stop",
        f"The jaws are to hold {card.hold.length:.1f} mm at {card.hold.dia:.2f} mm diameter; they touch "
        f"{touched:.1f} mm, and the metal there measures {dia:.2f} mm.",
        card.part,
        card.hold.surface,
        card.number,
        0,
        f"{touched:.1f} mm",
        f"half of {card.hold.length:.1f} mm",
        "Hold on a surface that is there, or make it first.",
        SOURCE,
    )


def forgotten(card: Card, piece: Piece) -> Finding:
    """Metal stands over the finished part at the end."""
    return Finding(
        507,
        "stop",
        f"After the last card {piece.volume:.1f} mm3 still stand over the finished part, "
        f"{_place(piece)}, {piece.thick:.2f} mm thick.",
        card.part,
        "",
        card.number,
        0,
        f"{piece.volume:.1f} mm3",
        "0 mm3",
        "Add the step that takes it away, or give the drawing what may stand there.",
        SOURCE,
    )


def rounded_corners(card: Card, pieces: tuple[Piece, ...], nose: float) -> Finding:
    """Inside corners keep the nose radius of the tool."""
    volume = sum(piece.volume for piece in pieces)
    return Finding(
        508,
        "note",
        f"{len(pieces)} inside corner{'s keep' if len(pieces) > 1 else ' keeps'} the tool's nose radius, "
        f"{volume:.2f} mm3 in all: the mating edge needs a chamfer of {nose:.2f} mm or more.",
        card.part,
        "",
        card.number,
        0,
        f"{nose:.2f} mm",
        "a sharp corner",
        "Break the mating edge, or draw the corner with an undercut.",
        SOURCE,
    )


def missing(card: Card, piece: Piece) -> Finding:
    """Metal that should stand is not there."""
    return Finding(
        509,
        "stop",
        f"{piece.volume:.1f} mm3 of the finished part are not there at the end, {_place(piece)}.",
        card.part,
        "",
        card.number,
        0,
        f"{piece.volume:.1f} mm3",
        "0 mm3",
        "Take a larger blank, or look for the step that cuts too deep.",
        SOURCE,
    )


def comes_loose(card: Card, step: Step, volume: float) -> Finding:
    """A piece falls off that the jaws do not hold."""
    return Finding(
        510,
        "caution",
        f"{step.do}: a piece of {volume:.0f} mm3 comes loose.",
        card.part,
        step.feature,
        card.number,
        step.number,
        f"{volume:.0f} mm3",
        "",
        "Stop before it is through and break or saw it off; stand out of its way.",
        SOURCE,
    )


def not_parted(card: Card, step: Step) -> Finding:
    """The parting cut does not go through."""
    return Finding(
        511,
        "stop",
        f"{step.do}: the piece does not come off; metal stands where the cut ends.",
        card.part,
        step.feature,
        card.number,
        step.number,
        "",
        "past the axis, or into the bore",
        "Feed on to the axis, or take a blade with more reach.",
        SOURCE,
    )


def gave_up(card: Card, step: Step, words: str) -> Finding:
    """The section became too fine to go on with: the step was left out."""
    return Finding(
        512,
        "stop",
        f"{step.do}: the dry run gave up on this step, {words}; it took nothing away.",
        card.part,
        step.feature,
        card.number,
        step.number,
        words,
        "5000 corners",
        "This is a fault of the program's: please report it with the design and the shop.",
        SOURCE,
    )


def unknown(card: Card, words: str, step: Step | None = None) -> Finding:
    """Something the dry run cannot draw yet: it says so."""
    return Finding(
        513,
        "note",
        f"{words}; the dry run leaves it out.",
        card.part,
        step.feature if step else "",
        card.number,
        step.number if step else 0,
        remedy="Look at this step yourself.",
        source=SOURCE,
    )


def close_to_fixture(card: Card, gap: float, where: str) -> Finding:
    """The tool passes close to the jaws."""
    return Finding(
        514,
        "caution",
        f"The tool passes {gap:.1f} mm from the {where}: turn the spindle by hand with the carriage "
        "there first.",
        card.part,
        "",
        card.number,
        0,
        f"{gap:.1f} mm",
        "0.9 mm",
        "Let the work stand out a little further if the grip allows.",
        "common practice, no source",
    )


def close_to_tail(card: Card, gap: float, where: str, bound: float) -> Finding:
    """The tool passes close to the tail centre."""
    return Finding(
        516,
        "caution",
        f"The tool passes {gap:.2f} mm from the {where}: go there by hand first, spindle stopped.",
        card.part,
        "",
        card.number,
        0,
        f"{gap:.2f} mm",
        f"{bound:g} mm",
        "Take a half centre or one with a slender point.",
        "common practice, no source",
    )


def _place(piece: Piece) -> str:
    return (
        f"{piece.z[0]:.1f} to {piece.z[1]:.1f} mm from face A, "
        f"{2 * piece.r[0]:.1f} to {2 * piece.r[1]:.1f} mm in diameter"
    )
