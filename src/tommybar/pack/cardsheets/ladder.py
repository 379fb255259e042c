"""The ladder of steps: a box to tick, the number, the verb, one big figure; hold points as full bars."""

from __future__ import annotations

from tommybar.making.cards import Card, HolePlace, Step
from tommybar.pack.cardsheets.piece import BODY, STEP, Piece
from tommybar.pack.lettering import CAPITAL, width_of, wrapped
from tommybar.pack.sheet import LINE_STEP, Area, Line, Mark, Text
from tommybar.pack.units import Reader

TICK = 12.0  # side of the box to tick [mm]
IN = 21.5  # where the words of a rung begin [mm]
DO = 4.9  # type size of the verb line, 14 point [mm]
LEAST_ROOM = 30.0  # for the verb line beside the big figure [mm]
BIG = 8.6  # type size of the big figure, 24 point [mm]


def big_words(step: Step, reader: Reader) -> tuple[str, str]:
    """The figure that rules the rung and what it is, in the reader's unit.

    The size of a drill, reamer or cutter stays as it is marked on the tool.
    """
    big, kind = step.big, step.big_kind
    words = kind.split()
    chamfer = words[:1] == ["x"]
    if reader.unit == "mm" or not ("mm" in words or chamfer):
        return big, kind
    try:
        figure = float(big)
    except ValueError:
        return big, kind
    if not chamfer and step.tool_size and abs(figure - step.tool_size) < 1e-6:
        return big, kind
    places = min(4, max(3, len(big.partition(".")[2]) + 1))
    said = ["in", *words] if chamfer else ["in" if word == "mm" else word for word in words]
    return f"{reader.of(figure):.{places}f}", " ".join(said)


def rung(
    step: Step, width: float, reader: Reader, step_of: float = LINE_STEP, *, bench: bool = False
) -> Piece:
    """One step; ``step_of`` is the distance of lines as part of the type size, ``bench``: no spindle is near."""
    line_step = BODY * step_of
    big, kind = big_words(step, reader)
    kind_wide = width_of(kind, BODY, True)
    size = BIG
    while size > 5.6 and width_of(big, size, True) > 52.0:
        size -= 0.4
    marks: list[Mark] = [
        Area((((0, 1), (TICK, 1), (TICK, 1 + TICK), (0, 1 + TICK)),), "white", "thick"),
        Text((TICK + 2.0, 1 + TICK / 2 + CAPITAL * 2.5), str(step.number), 5.0, True),
    ]
    base = under = 1.6 + CAPITAL * BIG
    room = width - IN - kind_wide - width_of(big, size, True) - 6.0
    if room < LEAST_ROOM:  # what it is stands under the figure
        under = base + 1.4 * BODY
        room = width - IN - max(kind_wide, width_of(big, size, True)) - 4.0
    marks.append(Text((width, under), kind, BODY, True, "end"))
    marks.append(Text((width - (kind_wide + 1.8 if under == base else 0.0), base), big, size, True, "end"))
    y = 1.4
    for line in wrapped(step.do.replace("_", " "), max(room, LEAST_ROOM), DO, True):
        marks.append(Text((IN, y + CAPITAL * DO), line, DO, True))
        y += DO * step_of
    tool = _tool_words(step, bench, reader)
    if y < under + 1.5 and width_of(tool, BODY, True) > room:
        y = under + 2.4
    for line in wrapped(tool, width - IN, BODY, True):
        marks.append(Text((IN, y + CAPITAL * BODY), line, BODY, True))
        y += line_step
    y = max(y, base + 1.6)
    for line in wrapped(" ".join(step.dial), width - IN, BODY):
        marks.append(Text((IN, y + CAPITAL * BODY), line, BODY))
        y += line_step
    cuts = _cuts_words(step, reader)
    if cuts:
        for line in wrapped(cuts, width - IN, BODY):
            marks.append(Text((IN, y + CAPITAL * BODY), line, BODY))
            y += line_step
    for caution in step.cautions:
        for n, line in enumerate(wrapped(caution, width - IN - 5.0, BODY, True)):
            if n == 0:
                marks.append(Text((IN, y + CAPITAL * BODY), "!", BODY, True))
            marks.append(Text((IN + 4.0, y + CAPITAL * BODY), line, BODY, True))
            y += line_step
    y = max(y, TICK + 2.0)
    marks.append(Line(((0.0, y + 0.7), (width, y + 0.7)), "rule"))
    return Piece(tuple(marks), y + 1.5, with_next=bool(step.measure))


def _tool_words(step: Step, bench: bool, reader: Reader) -> str:
    still = "by hand" if bench or step.tool_kind == "saw" else "by hand, spindle stopped"
    speed = f"{step.speed:g} rev/min" if step.speed > 0 else still
    figure = f"{reader.of(step.feed):.4f} in" if reader.unit == "in" else f"{step.feed:.2f}"
    feed = (
        f" · feed {figure}"
        if step.feed > 0 and step.speed > 0 and step.tool_kind in ("knife", "boring")
        else ""
    )
    return f"{step.tool} · {speed}{feed}" if step.tool else speed


def _cuts_words(step: Step, reader: Reader) -> str:
    """The list of cuts, when it is short enough to be read."""
    if not 3 <= len(step.passes) <= 8 or step.big_kind[:3] not in ("DIA", "RAD"):
        return ""
    return "Cuts to " + ", ".join(reader.length(one.to, 3) for one in step.passes) + "."


def hold_bar(step: Step, width: float) -> Piece:
    """The bar across everything: what must be measured before going on."""
    names = [one.size.split(".", 1)[-1].replace("_", " ").replace(".", " ") for one in step.measure]
    lines = wrapped(f"STOP: measure {' and '.join(names)}, write at the right", width - 6.0, DO, True)
    height = len(lines) * DO * LINE_STEP + 3.2
    marks: list[Mark] = [Area((((0, 0), (width, 0), (width, height), (0, height)),), "black", None)]
    y = (height - (len(lines) - 1) * DO * LINE_STEP + CAPITAL * DO) / 2
    for line in lines:
        marks.append(Text((3.0, y), line, DO, True, tone="white"))
        y += DO * LINE_STEP
    return Piece(tuple(marks), height + 2.2)


def place_pieces(card: Card, width: float, reader: Reader, step_of: float = LINE_STEP) -> list[Piece]:
    """The hole list of a mill card: a box to tick, place and dials, in the order of visiting."""
    if not card.places:
        return []
    columns = (14.0, 22.0, 41.0, 61.0, 102.0)
    marks: list[Mark] = [Text((0.0, CAPITAL * DO + 1.0), "Places, in this order", DO, True)]
    y = DO * LINE_STEP + 1.4 + CAPITAL * BODY
    unit = reader.unit
    for x, words in zip(
        columns, ("No", f"X {unit}", f"Y {unit}", "X dial (t: turns)", "Y dial"), strict=True
    ):
        marks.append(Text((x, y), words, BODY, True))
    marks.append(Line(((0.0, y + 1.8), (width, y + 1.8)), "thick"))
    made = [Piece(tuple(marks), y + 3.0, with_next=True)]
    made += [_place(one, columns, width, reader, step_of) for one in card.places]
    if card.chord_checks:
        lines: list[Mark] = []
        y = 0.6
        for check in card.chord_checks:
            for line in wrapped("Check: " + check.replace("_", " "), width, BODY):
                lines.append(Text((0.0, y + CAPITAL * BODY), line, BODY))
                y += STEP
        made.append(Piece(tuple(lines), y + 1.5))
    return made


def _place(one: HolePlace, columns: tuple[float, ...], width: float, reader: Reader, step_of: float) -> Piece:
    marks: list[Mark] = [Area((((0, 0.4), (9, 0.4), (9, 9.0), (0, 9.0)),), "white", "thick")]
    base = 0.8 + CAPITAL * BODY
    cells = (str(one.n), reader.length(one.x, 3), reader.length(one.y, 3), one.dial_x, one.dial_y)
    for n, (x, words) in enumerate(zip(columns, cells, strict=True)):
        marks.append(Text((x, base), words, BODY, n < 3))
    note = " · ".join(words for words in (one.what.replace("_", " "), one.overshoot) if words)
    y = 0.8 + BODY * step_of
    for line in wrapped(note, width - columns[0], BODY):
        marks.append(Text((columns[0], y + CAPITAL * BODY), line, BODY))
        y += BODY * step_of
    y = max(y, 9.4)
    marks.append(Line(((0.0, y + 0.4), (width, y + 0.4)), "rule"))
    return Piece(tuple(marks), y + 0.9)
