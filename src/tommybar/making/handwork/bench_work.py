"""What is done by hand on a part after its machining: one card in the order that spoils nothing."""

from __future__ import annotations

from tommybar.design.joints import BenchWork
from tommybar.design.model import Part
from tommybar.facts.materials import material
from tommybar.findings import Finding
from tommybar.making.cards import Card, Measure
from tommybar.making.handwork.cautions import (
    ADHESIVE,
    BLUEING,
    ENGRAVING,
    HARDENING,
    LAPPING,
    POLISHING,
    RIVETING,
    SOLDERING,
    TEMPERING,
)
from tommybar.making.handwork.hand_card import HandCard
from tommybar.making.lengths import Mm
from tommybar.shapes.features import Cylinder, Dim, PlateShape, TurnedShape
from tommybar.shop.model import Shop

RANK = {  # shaping, then heat, then what joins, then what makes a size, then the skin
    "sawn": 0,
    "filed": 1,
    "bent": 2,
    "rolled": 2,
    "wound": 2,
    "engraved": 3,
    "hardened": 4,
    "tempered": 5,
    "soldered": 6,
    "riveted": 7,
    "adhesive": 7,
    "pinned": 8,
    "reamed in place": 9,
    "scraped": 10,
    "lapped": 11,
    "polished": 12,
    "blued": 13,
}
SAID: dict[str, tuple[str, str, tuple[str, ...], tuple[str, ...], float]] = {
    "sawn": ("Saw", "saw", ("0.5 mm outside the line, then file.",), (), 8.0),
    "filed": (
        "File",
        "files, square",
        (
            "Across first, then drawn along it; where a line is scribed, to the line; a radius about a hole by hard buttons.",
        ),
        ("A handle on every file: a bare tang goes through the palm.",),
        15.0,
    ),
    "bent": (
        "Bend",
        "bending bars",
        ("Round a former, over-bent by the spring-back of a trial strip.",),
        (),
        8.0,
    ),
    "rolled": ("Roll", "former, mallet", ("Both ends first, then the middle.",), (), 10.0),
    "wound": (
        "Wind",
        "mandrel, wire brake",
        ("On a mandrel by trial turns.",),
        ("A wire's end let go whips round.",),
        15.0,
    ),
    "engraved": ("Engrave", "graver, rule", ("Scribe lines first; one even depth.",), ENGRAVING, 30.0),
    "hardened": (
        "Harden",
        "torch, quench bath",
        ("Heat evenly, only what is named, to the maker's temperature; quench straight down, stir.",),
        HARDENING,
        20.0,
    ),
    "tempered": (
        "Temper",
        "torch or oven, polished face",
        ("Polish a face bright to see the colour.",),
        TEMPERING,
        15.0,
    ),
    "soldered": (
        "Solder",
        "flux, solder, torch",
        ("Bright, fluxed, bound; heat the metal, not the solder; wash off the flux.",),
        SOLDERING,
        20.0,
    ),
    "riveted": (
        "Rivet",
        "rivet snap, hammer, set",
        ("Draw the sheets together with the set first, then form the head.",),
        RIVETING,
        10.0,
    ),
    "adhesive": (
        "Bond",
        "adhesive, cleaner",
        ("Degrease both, one drop, no force; wipe off what comes out.",),
        ADHESIVE,
        10.0,
    ),
    "pinned": (
        "Drill and pin together",
        "drill, reamer, pin",
        ("Both parts clamped as they will stand; drill through both in one go, ream, drive the pin.",),
        (),
        15.0,
    ),
    "reamed in place": ("Ream in place", "reamer", ("By hand, turning one way, oil.",), (), 8.0),
    "scraped": (
        "Scrape to blue",
        "scraper, surface plate, marking blue",
        ("Spots off, crosswise each time, until they lie evenly.",),
        (),
        40.0,
    ),
    "lapped": (
        "Lap",
        "lap, fine paste",
        ("Short strokes, all paste washed off before it is measured.",),
        LAPPING,
        20.0,
    ),
    "polished": (
        "Polish",
        "fine paper on a stick",
        ("Only what is named: edges of a fit stay sharp.",),
        POLISHING,
        10.0,
    ),
    "blued": (
        "Blue",
        "hot sand or oil",
        ("Clean of every finger mark; watch the colour, take it out a shade early.",),
        BLUEING,
        20.0,
    ),
}


def worked(part: Part) -> tuple[BenchWork, ...]:
    """The work of a part in the order in which it is done: heat before final fits, the skin last.

    Work of the same rank stays in the order written.
    """
    return tuple(sorted(part.bench, key=lambda one: RANK[one.kind]))


def bench_card(
    part: Part, shop: Shop, gives_to: dict[str, tuple[str, ...]], cards_before: int
) -> tuple[Card | None, list[Finding]]:
    """One card with all work of the hand that the design writes for a part; None when it writes none."""
    if not part.bench:
        return None, []
    card = HandCard(part, shop, cards_before + 1, gives_to)
    order = worked(part)
    if order != part.bench:
        card.find(
            464,
            "note",
            f"{part.name}: its work is done in another order than written: "
            + ", ".join(one.kind for one in order)
            + ".",
            remedy="Heat before final fits, joints before the last ream, the skin last.",
            figure=", ".join(one.kind for one in part.bench),
        )
    kinds = {one.kind for one in order}
    if "soldered" in kinds and kinds & {"hardened", "tempered"}:
        card.find(
            466,
            "caution",
            f"{part.name} is both hardened and soldered: the heat of the joint draws its temper.",
            remedy="Soft solder, the hardened end in a wet rag or a copper clamp; or bond it instead.",
            figure="soldered after hardening",
        )
    for one in order:
        _work(card, one)
    device, surface, why = _held({one.kind for one in order})
    done = card.card(
        "by hand: " + ", ".join(dict.fromkeys(one.kind for one in order)),
        device,
        surface,
        why,
        ("Read the cautions of each step before the first: some need things made ready.",),
        _goes_wrong({one.kind for one in order}),
        "After all machining, in the order that spoils nothing that is finished.",
    )
    return done, card.findings


def _held(kinds: set[str]) -> tuple[str, str, str]:
    """What holds the part, where, and why: nothing that is heated stands in the jaws."""
    hot = kinds & {"hardened", "tempered", "soldered", "blued"}
    if not hot:
        return "vice with soft jaws", "what is not worked on", "Soft jaws, or finished faces are marked."
    cold = kinds - hot
    return (
        "dry tongs, on fire brick" + (", and a vice with soft jaws for what is done cold" if cold else ""),
        "what is not worked on",
        "A vice drinks the heat and draws its own jaws; wet tongs spit.",
    )


def _goes_wrong(kinds: set[str]) -> tuple[str, ...]:
    """What usually spoils the work that is done here (common practice, no source)."""
    said = (
        (
            {"hardened", "tempered", "soldered", "blued"},
            "Heat after a final fit: the size is gone.",
        ),
        (
            {"filed", "sawn"},
            "A file that rocks rounds the face: try a straight edge on it against the light.",
        ),
        (
            {"polished", "lapped"},
            "Abrasive goes on cutting: a fit is lost in a few strokes, its edges first.",
        ),
        (
            {"adhesive", "riveted", "pinned"},
            "Joined out of line: try both together dry before it is for good.",
        ),
        ({"bent", "rolled", "wound"}, "Bent twice at one place, it cracks: a trial piece first."),
        ({"engraved"}, "A slip over the surface: work away from what is finished."),
    )
    return tuple(words for which, words in said if which & kinds)


def _work(card: HandCard, one: BenchWork) -> None:
    verb, tool, lines, cautions, minutes = SAID[one.kind]
    on = ", ".join(one.on) or "all over"
    figures = [
        f"{name} {value:g} deg C" if name == "to" else f"{name} {value:g}" for name, value in one.figures
    ]
    more = [f"Figures: {', '.join(figures)}."] if figures else []
    if one.with_:
        more.append(f"Together with {', '.join(one.with_)}.")
    if one.words:
        more.append(one.words[:1].upper() + one.words[1:].rstrip(".") + ".")
    big, kind = "1", "piece"
    if one.kind == "riveted":
        length = one.figure("length") or 0.0
        big, kind = f"{length:.1f}", "mm long"
        more.append(f"Rivet {Mm(one.figure('dia') or 0.0):g} x {Mm(length):.1f} under its head.")
    elif one.kind == "tempered":
        big, kind = f"{one.figure('to') or 0:g}", "deg C"
    elif one.kind == "hardened":
        more += _heat(card, one)
    elif one.kind == "pinned":
        big, kind = f"{one.figure('dia') or 0:g}", "DIA mm"
    card.add(
        f"{verb}: {on}",
        one.on[0] if one.on else one.name,
        tool,
        big,
        kind,
        *lines,
        *more,
        minutes=minutes,
        cautions=cautions,
        measure=_after(card, one),
        why=_why(one.kind),
    )


def _heat(card: HandCard, one: BenchWork) -> list[str]:
    low, high = material(card.part.material).hardening
    if high > 0:
        return [
            f"{card.part.material}: {low:g} to {high:g} deg C, by a thermometer, or a little over where a magnet lets go."
        ]
    card.find(
        465,
        "caution",
        f"{one.name} of {card.part.name}: the tables give no hardening temperature for {card.part.material}.",
        remedy="Ask the maker's sheet; mild steel, brass and the like do not harden in a quench.",
        figure="no temperature",
    )
    return []


def _why(kind: str) -> str:
    rank = RANK[kind]
    if rank in (4, 5):
        return "Heat moves sizes and scales faces, so it comes before the final fits."
    if rank == 9:
        return "Reamed when everything that closes the bore is in place."
    return "Last, so that nothing marks it again." if rank >= 12 else ""


def _after(card: HandCard, one: BenchWork) -> tuple[Measure, ...]:
    """Sizes with limits that the work changes, measured after it."""
    if one.kind not in ("hardened", "lapped", "polished", "reamed in place", "scraped", "filed"):
        return ()
    found: list[Measure] = []
    shape = card.part.shape
    if isinstance(shape, TurnedShape):
        sized: list[tuple[str, Dim, str]] = [
            (land.name, land.dia, "outside") for land in shape.outside if isinstance(land, Cylinder)
        ]
        sized += [(bore.name, bore.dia, "inside") for bore in shape.bores]
    elif isinstance(shape, PlateShape):
        sized = [(hole.name, hole.dia, "inside") for hole in shape.holes if not hole.thread]
    else:
        sized = []
    reaches_in = one.kind not in ("filed", "polished", "scraped")  # a file that goes all over enters no bore
    for name, dim, how in sized:
        if dim.toleranced and (name in one.on or (not one.on and (how == "outside" or reaches_in))):
            found += card.measured(dim, name, how)
    return tuple(found)
