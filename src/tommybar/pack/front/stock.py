"""The cut list with its bars drawn and the saw marks read from one end, and the slip for what is bought."""

from __future__ import annotations

from tommybar.making.lengths import spoken
from tommybar.nest.cutlist import SawnBar
from tommybar.pack.boxes import box_of, box_ring, moved, spread
from tommybar.pack.front.leaf import BOTTOM, LEFT, WIDTH, Leaves
from tommybar.pack.grid import Column
from tommybar.pack.lettering import width_of
from tommybar.pack.sheet import Area, Line, Mark, Text
from tommybar.pack.units import Reader
from tommybar.planning import Plan

BODY = 4.25
THICK = 8.5  # how thick a bar is drawn [mm]


def section_words(section: str, size: float, width: float, reader: Reader) -> str:
    """A section in shop words.

    Examples
    --------
    >>> section_words("round", 92.0, 0.0, Reader()), section_words("flat", 10.0, 30.0, Reader())
    ('round Ø92', 'flat 30 × 10')
    >>> section_words("tube", 25.0, 23.0, Reader())
    'tube Ø25 × 23 bore'
    """
    if section == "round":
        return f"round Ø{reader.plain(size)}"
    if section == "tube":
        return f"tube Ø{reader.plain(size)} × {reader.plain(width)} bore"
    if width:
        return f"{section} {reader.plain(width)} × {reader.plain(size)}"
    return f"{section} {reader.plain(size)}"


def bar_marks(bar: SawnBar, longest: float, reader: Reader) -> tuple[list[Mark], float]:
    """One bar from (0, 0): its words, the bar with its cuts, the places of the saw below it."""
    long = max(105.0, (WIDTH - 16.0) * bar.length / longest)
    scale = long / bar.length
    sheeted = any(cut.far_edge > 0 for cut in bar.cuts) and bar.width > 0
    tall = min(max(bar.width * scale, THICK), 46.0) if sheeted else THICK
    across = tall / bar.width if sheeted else 0.0
    where = "to be bought" if bar.bought else "on the rack"
    head = (
        f"{bar.material}, {section_words(bar.section, bar.size, bar.width, reader)}, "
        f"{reader.length(bar.length)} long, {where}"
    )
    marks: list[Mark] = [Text((0.0, 4.0), head, BODY, True)]
    top = 7.0
    marks.append(Area((box_ring(0.0, top, long, tall),), "hatch", "thick", 2.6))
    saw_places: list[float] = []
    names: list[tuple[float, float, str]] = []
    for cut in bar.cuts:
        x, w = cut.start * scale, (cut.end - cut.start) * scale
        y, h = (top + cut.edge * across, (cut.far_edge - cut.edge) * across) if sheeted else (top, tall)
        marks.append(Area((box_ring(x, y, w, h),), "light", "thick"))
        name = cut.part.replace("_", " ")
        wide = width_of(name, BODY, True)
        if wide + 2.0 < w:
            marks.append(Text((x + w / 2, y + h / 2 + 1.5), name, BODY, True, "middle"))
        else:
            names.append((x + w / 2, y + h, name))
        saw_places.append(cut.end)
    y = top + tall
    marks += [Text((-6.0, top + tall / 2 + 1.4), "0", BODY, True)]
    places = sorted({round(place, 3) for place in saw_places})
    words = [reader.length(place, 1) for place in places]
    rooms = [width_of(one, BODY) + 3.0 for one in words]
    xs = spread([p * scale - r / 2 for p, r in zip(places, rooms, strict=True)], rooms, 0.0, WIDTH - 6.0)
    for place, one, x, room in zip(places, words, xs, rooms, strict=True):
        middle = x + (room - 3.0) / 2
        marks.append(Line(((place * scale, y), (place * scale, y + 1.5), (middle, y + 4.0)), "thin"))
        marks.append(Text((x, y + 7.6), one, BODY))
    height = y + 9.5
    for x, edge, name in names:
        marks += [
            Line(((x, edge), (x, height + 1.0)), "thin"),
            Text((x + 1.0, height + 3.4), name, BODY, True),
        ]
    if names:
        height += 6.0
    left = f"left {reader.length(bar.left, 1)}" if bar.left > 0 else "nothing left"
    last = max((cut.end for cut in bar.cuts), default=0.0) * scale
    if not sheeted and long - last > width_of(left, BODY) + 4.0:
        box_x = last + (long - last) / 2
        wide = width_of(left, BODY) + 2.0
        marks.append(Area((box_ring(box_x - wide / 2, top + 1.6, wide, tall - 3.2),), "white", None))
        marks.append(Text((box_x, top + tall / 2 + 1.5), left, BODY, anchor="middle"))
    return marks, height + 3.0


def put_stock(leaves: Leaves, plan: Plan) -> None:
    """Cut list, blanks with their allowances, request slip, bought parts."""
    reader = leaves.imprint.reader
    leaves.section("Stock and saw")
    kerf = reader.length(plan.shop.saw_kerf)
    leaves.say(
        f"Saw in this order, each mark read from the end marked 0, in {reader.unit}; "
        f"the saw ({kerf} wide) runs beyond the mark, on the waste side."
    )
    if plan.stock.bound_words:
        leaves.say(spoken(plan.stock.bound_words, reader.unit))
    longest = max((bar.length for bar in plan.stock.bars), default=1.0)
    _bars(plan.stock.bars, longest, leaves, reader)
    blanks = [one.blank for one in plan.parts if one.blank is not None]
    if blanks:
        leaves.head("Blanks", 40.0)
        leaves.table(
            (
                Column("part"),
                Column("off", align="end"),
                Column("blank"),
                Column("saw", align="end", bold=True),
                Column("finished", align="end"),
                Column("mass", align="end"),
                Column("allowances"),
            ),
            [
                (
                    blank.part.replace("_", " "),
                    str(blank.count),
                    f"{blank.material}, {section_words(blank.section, blank.size, blank.width, reader)}",
                    reader.length(blank.length, 1),
                    reader.length(blank.finished_length, 2),
                    f"{blank.mass:.0f} g",
                    ", ".join(f"{words} {reader.length(mm)}" for words, mm in blank.allowances if mm),
                )
                for blank in blanks
            ],
        )
    _buying(plan, leaves, reader)


def _bars(bars: tuple[SawnBar, ...], longest: float, leaves: Leaves, reader: Reader) -> None:
    """Bars under one another, short ones side by side."""
    x, tallest = 0.0, 0.0
    for bar in sorted(bars, key=lambda one: one.length):
        marks, height = bar_marks(bar, longest, reader)
        wide = box_of(marks)[2] + 14.0
        if x and (x + wide - 6.0 > WIDTH or leaves.y + height > BOTTOM):
            leaves.y += tallest
            x, tallest = 0.0, 0.0
        if not x:
            leaves.need(height)
        leaves.sheet.add(*moved(marks, LEFT + 6.0 + x, leaves.y))
        x += wide
        tallest = max(tallest, height)
    leaves.y += tallest


def _buying(plan: Plan, leaves: Leaves, reader: Reader) -> None:
    if plan.stock.buy:
        leaves.head("Request slip", 40.0)
        leaves.table(
            (Column("ask for"), Column("mass", align="end"), Column("for"), Column("does as well")),
            [
                (line.words, f"{line.mass:.0f} g", ", ".join(line.for_parts), ", ".join(line.accept))
                for line in plan.stock.buy
            ],
        )
        total = sum(line.mass for line in plan.stock.buy)
        leaves.say(f"Together {total:.0f} g.")
    bought = [one.part for one in plan.parts if one.part.kind == "bought"]
    if bought:
        leaves.head("Bought parts", 24.0)
        leaves.table(
            (Column("part"), Column("off", align="end"), Column("what"), Column("note")),
            [(p.name.replace("_", " "), str(p.count), p.bought, p.note) for p in bought],
        )
