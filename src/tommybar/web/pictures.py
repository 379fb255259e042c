"""Pictures of metal for the pages: parts at one scale, turned ones in half-section; bars with their saw marks.

Colours and hatches are classes of the page, so that the same picture serves by
day, at night and on paper.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from html import escape

from tommybar.design.model import Part, SizedDesign
from tommybar.nest.cutlist import SawnBar
from tommybar.pack.units import Reader
from tommybar.refusals import Refusal
from tommybar.shapes.features import PlateShape, TurnedShape

WIDE = 640.0  # of a picture, in its own units
NAME = 17.0  # size of a name under a part
GAP = 26.0  # between parts
TALLEST = 170.0  # a part is drawn no taller


@dataclass(frozen=True)
class Drawn:
    """One part drawn: its size and its marks, top left corner at 0, 0 [mm]."""

    name: str
    width: float
    height: float
    marks: tuple[tuple[str, str], ...]  # class and path


def drawn_part(part: Part) -> Drawn | None:
    """The outline of a part that is made; None for a bought one."""
    shape = part.shape
    if isinstance(shape, TurnedShape):
        return _drawn_turned(part.name, shape)
    if isinstance(shape, PlateShape):
        return _drawn_plate(part.name, shape)
    return None


def _drawn_turned(name: str, shape: TurnedShape) -> Drawn | None:
    from tommybar.shapes.section import half_section

    try:
        ring = list(half_section(shape).exterior.coords)
    except Refusal:
        return None
    radius = max(r for _, r in ring)
    length = shape.length.value
    upper = _path((z, radius - r) for z, r in ring)
    lower = _path((z, radius + r) for z, r in ring)
    return Drawn(
        name,
        length,
        2 * radius,
        (
            ("metal", upper),
            ("metal-hatch", upper),
            ("metal", lower),
            ("axis", f"M-4 {radius:.3f}H{length + 4:.3f}"),
        ),
    )


def _drawn_plate(name: str, shape: PlateShape) -> Drawn:
    long, wide = shape.length.value, shape.width.value
    marks = [("metal", _path(((0, 0), (long, 0), (long, wide), (0, wide))))]
    for hole in shape.holes:
        if hole.face == "top":
            marks.append(("hole", _circle(hole.x, wide - hole.y, hole.dia.value / 2)))
    return Drawn(name, long, wide, tuple(marks))


def _path(points: Iterable[tuple[float, float]]) -> str:
    return "M" + "L".join(f"{x:.3f} {y:.3f}" for x, y in points) + "Z"


def _circle(x: float, y: float, r: float) -> str:
    return f"M{x - r:.3f} {y:.3f}a{r:.3f} {r:.3f} 0 1 0 {2 * r:.3f} 0a{r:.3f} {r:.3f} 0 1 0 {-2 * r:.3f} 0Z"


def parts_picture(design: SizedDesign, words: str) -> str:
    """All parts that are made, at one scale, in rows; their names under them."""
    parts = [one for one in map(drawn_part, design.parts) if one is not None]
    if not parts:
        return ""
    scale = min((WIDE - 20) / max(one.width for one in parts), TALLEST / max(one.height for one in parts))
    body: list[str] = []
    x, y, tallest = 10.0, 10.0, 0.0
    for one in sorted(parts, key=lambda one: -one.height):
        room = max(one.width * scale, 0.56 * NAME * len(one.name))
        if x > 10.0 and x + room > WIDE - 10:
            x, y, tallest = 10.0, y + tallest + NAME + GAP, 0.0
        tallest = max(tallest, one.height * scale)
        body.append(f'<g transform="translate({x:.1f} {y:.1f})">')
        body.append(f'<g transform="scale({scale:.4f})">')
        body += [f'<path class="{kind}" d="{path}"/>' for kind, path in one.marks]
        body.append(
            f'</g><text y="{one.height * scale + NAME + 4:.1f}">{escape(one.name.replace("_", " "))}</text></g>'
        )
        x += room + GAP
    return _picture("parts", WIDE, y + tallest + NAME + 14, words, body)


def _picture(kind: str, wide: float, tall: float, words: str, body: list[str]) -> str:
    return (
        f'<svg class="sketch {kind}" viewBox="0 0 {wide:.0f} {tall:.0f}" role="img">'
        f"<title>{escape(words)}</title>{''.join(body)}</svg>"
    )


LONG = 900.0  # a bar on its picture
BAR = 64.0  # its height


def bar_picture(bar: SawnBar, reader: Reader) -> str:
    """A bar of the rack with its saw marks, measured from its marked end at the left."""
    scale = (LONG - 30) / bar.length
    tall = max(BAR, min(bar.width * scale, 220.0)) if any(one.far_edge for one in bar.cuts) else BAR
    down = tall / bar.width if any(one.far_edge for one in bar.cuts) else 0.0
    body = [
        _box("left-over", 10, 24, bar.length * scale, tall),
        _box("left-hatch", 10, 24, bar.length * scale, tall),
    ]
    level, last = 0, 0.0
    for number, cut in enumerate(sorted(bar.cuts, key=lambda one: (one.start, one.edge)), 1):
        x, wide = 10 + cut.start * scale, (cut.end - cut.start) * scale
        y, high = 24 + cut.edge * down, (cut.far_edge - cut.edge) * down if cut.far_edge else tall
        body.append(_box("metal", x, y, wide, high))
        words = f"{number}"
        body.append(f'<text class="in-bar" x="{x + wide / 2:.1f}" y="{y + high / 2 + 7:.1f}">{words}</text>')
        at = 10 + cut.end * scale
        level = (level + 1) % 2 if at - last < 60 else 0
        last = at
        foot = 24 + tall + 26 + 22 * level
        body.append(f'<path class="saw" d="M{at:.1f} 16V{24 + tall + 8:.1f}"/>')
        anchor = "end" if at > LONG - 60 else "middle"
        body.append(
            f'<text class="mark {anchor}" x="{at:.1f}" y="{foot:.1f}">{escape(reader.length(cut.end, 1))}</text>'
        )
    body.append(f'<path class="marked-end" d="M10 12V{24 + tall + 10:.1f}"/>')
    body.append('<text class="mark start" x="4" y="12">0</text>')
    crowded = int(any(f'y="{24 + tall + 48:.1f}"' in one for one in body))
    listed = ", ".join(f"{one.part} to {reader.length(one.end, 1)}" for one in bar.cuts)
    return _picture(
        "bar",
        LONG,
        24 + tall + 34 + 22 * crowded,
        f"{bar.bar}, saw marks from the marked end: {listed}",
        body,
    )


def _box(kind: str, x: float, y: float, wide: float, high: float) -> str:
    return f'<rect class="{kind}" x="{x:.1f}" y="{y:.1f}" width="{wide:.1f}" height="{high:.1f}"/>'
