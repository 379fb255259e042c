"""The plots of the checks page: each a picture, what it says in a sentence, why, and its figures as a table."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import floor, log10

from tommybar.checks.curves import Curve
from tommybar.checks.engaged import Engaged
from tommybar.checks.zones import FitZones, FloatStack, Member, Zone
from tommybar.pack.lettering import width_of, wrapped
from tommybar.pack.units import Reader
from tommybar.web.plot import LINE, SIZE, WIDE, Plot, box_of, crosses, round_ticks, tick_words

ROWS = 8  # steps of a curve's table


@dataclass(frozen=True)
class Drawn:
    """One plot as the page shows it."""

    title: str
    svg: str
    reads: tuple[str, ...]  # what it says, in sentences
    formula: str
    inputs: tuple[str, ...]
    source: str
    head: tuple[str, ...]  # of the table
    rows: tuple[tuple[str, ...], ...]


def small(reader: Reader, mm: float) -> float:
    """A small length as the reader's trade says it: um or thousandths of an inch."""
    return round(mm / 0.0254 if reader.unit == "in" else mm * 1000, 6) + 0.0


def small_unit(reader: Reader) -> str:
    """um, or thou: a thousandth of an inch."""
    return "thou" if reader.unit == "in" else "µm"


def figure(value: float) -> str:
    """Three figures without an exponent.

    Examples
    --------
    >>> figure(0.0497317), figure(250.669), figure(46545.08), figure(0.0)
    ('0.0497', '251', '46545', '0')
    """
    if value == 0:
        return "0"
    decimals = max(0, 2 - floor(log10(abs(value))))
    words = f"{value:.{decimals}f}"
    return (words.rstrip("0").rstrip(".") if "." in words else words).replace("-", "–")


def signed(value: float) -> str:
    """A deviation with its sign."""
    return f"{'+' if value > 0 else ''}{figure(value)}"


def named(name: str) -> str:
    """part.feature as it is read."""
    return name.replace(".", " ").replace("_", " ")


def short(words: str) -> str:
    """Words that are no wider than a plot; the rest stands in its table.

    Examples
    --------
    >>> short("hole: wheel bore")
    'hole: wheel bore'
    """
    if width_of(words, SIZE) <= WIDE - 4:
        return words
    return wrapped(words, WIDE - 24, SIZE)[0].rstrip(",:") + " …"


def curve_plot(curve: Curve, reader: Reader) -> Drawn:
    """A figure against the speed, with the design's own speed."""
    unit = small_unit(reader) if curve.unit == "um" else curve.unit

    def turned(value: float) -> float:
        return small(reader, value / 1000) if curve.unit == "um" else value

    points = [(speed, turned(value)) for speed, value in curve.points]
    at = (curve.at[0], turned(curve.at[1]))
    plot = Plot(300.0)
    up_ticks = round_ticks(0.0, max(value for _, value in points))
    left = 10 + max(width_of(one, SIZE) for one in tick_words(up_ticks))
    foot, top = 242.0, 34.0
    across = plot.across(round_ticks(0.0, points[-1][0]), left, WIDE - 22, foot, "speed, rev/min")
    plot.words(0, SIZE, f"{curve.what}, {unit}")

    def up(value: float) -> float:
        return foot - value / up_ticks[-1] * (foot - top)

    for value, words in zip(up_ticks, tick_words(up_ticks), strict=True):
        plot.line("grid", (left, up(value)), (WIDE - 22, up(value)))
        plot.words(left - 6, up(value) + SIZE * 0.33, words, "end")
    way = [(across(speed), up(value)) for speed, value in points]
    x, y = across(at[0]), up(at[1])
    plot.line("drop", (left, y), (x, y), (x, foot))
    for value in dict.fromkeys(turned(one.value) for one in curve.levels):
        if value <= up_ticks[-1]:
            plot.line("level", (left, up(value)), (WIDE - 22, up(value)))
    plot.line("curve", *way)
    plot.body.append(f'<circle class="here" cx="{x:.1f}" cy="{y:.1f}" r="6"/>')
    here = f"{figure(at[0])} rev/min: {figure(at[1])} {unit}"
    places = [(x + dx, y + dy, a) for dx, dy, a in ((14, -12, "start"), (-14, -12, "end"), (14, 24, "start"))]
    places += [(x + 14, y - 12 - LINE * n, "start") for n in range(1, 8)]
    clear = [
        one
        for one in places
        if (box := box_of(one[0], one[1], here, one[2], True))[0] > left and not crosses(box, way)
    ]
    plot.words_at_best(here, clear, True)
    for value, many in _levels_drawn(curve, turned, up_ticks[-1]).items():
        words = " and ".join(many) if len(many) < 3 else f"{many[0]} and {len(many) - 1} more"
        spots = [(WIDE - 26, up(value) + dy, "end") for dy in (-6, 18)]
        spots += [(left + 8, up(value) + dy, "start") for dy in (-6, 18)]
        plot.words_at_best(
            words, (one for one in spots if not crosses(box_of(one[0], one[1], words, one[2]), way))
        )
    reads = [f"At {here.replace(':', '')}.".replace("rev/min ", "rev/min it is ")]
    for one in curve.levels:
        words = f"{one.words[0].upper()}{one.words[1:]}: {figure(turned(one.value))} {unit}"
        how = "the grade allows it up to" if curve.unit == "um" else "reached at"
        reads.append(f"{words}, {how} {figure(one.reached_at)} rev/min.")
    step = max(1, (len(points) - 1) // ROWS)
    return Drawn(
        f"{curve.what[0].upper()}{curve.what[1:]}: {curve.of}",
        plot.svg(f"{curve.what} of {curve.of} against speed. {reads[0]}"),
        tuple(dict.fromkeys(reads)),
        curve.formula,
        curve.inputs,
        "; ".join(dict.fromkeys([curve.source, *(one.source for one in curve.levels)])),
        ("speed, rev/min", f"{curve.what}, {unit}"),
        tuple((figure(speed), figure(value)) for speed, value in sorted({*points[::step], points[-1], at})),
    )


def _levels_drawn(curve: Curve, turned: Callable[[float], float], highest: float) -> dict[float, list[str]]:
    found: dict[float, list[str]] = {}
    for one in curve.levels:
        if turned(one.value) <= highest:
            found.setdefault(turned(one.value), []).append(one.words)
    return found


def fit_plot(fit: FitZones, reader: Reader) -> Drawn:
    """The two zones of a fit about the basic size."""
    unit = small_unit(reader)
    rows = [("hole", fit.hole), ("shaft", fit.shaft)]
    ends = [small(reader, end) for _, zone in rows for end in (zone.low, zone.high)]
    ticks = round_ticks(min(0.0, *ends), max(0.0, *ends))
    plot = Plot(216.0)
    basic = f"{reader.length(fit.basic, 3)} {reader.unit}"
    scale = plot.across(ticks, 20, WIDE - 30, 160, f"from {basic}, {unit}")
    for number, (kind, zone) in enumerate(rows):
        top = 30.0 + 72 * number
        plot.words(0, top - 10, short(f"{kind}: {named(zone.name)}, {_zone_words(zone, reader)}"))
        plot.bar(
            f"zone {kind}", scale(small(reader, zone.low)), top, scale(small(reader, zone.high)), top + 30
        )
        plot.line("nought", (scale(0), top - 4), (scale(0), 160 if number else top + 34))
    least, most = small(reader, fit.least), small(reader, fit.most)
    plays = _plays(least, most, unit)
    joint = f", {fit.joint}" if fit.joint else ""
    return Drawn(
        f"{named(fit.hole.name)} on {named(fit.shaft.name)}: {fit.zones}{joint}",
        plot.svg(f"Zones of {named(fit.hole.name)} and {named(fit.shaft.name)} about {basic}. {plays}"),
        (plays,),
        "clearance = hole − shaft, least and most",
        tuple(f"{kind}: {_zone_words(zone, reader)}" for kind, zone in rows),
        "ISO 286-1:2010, definitions of fits (seen in public reprints); limits of the plan",
        ("", f"low, {unit}", f"high, {unit}"),
        (
            *(
                (f"{kind} {named(one.name)}", signed(small(reader, one.low)), signed(small(reader, one.high)))
                for kind, one in rows
            ),
            ("clearance", signed(least), signed(most)),
        ),
    )


def _zone_words(zone: Zone, reader: Reader) -> str:
    unit = small_unit(reader)
    if zone.measured:
        return f"measured {signed(small(reader, zone.low))} {unit}"
    return f"{signed(small(reader, zone.low))} to {signed(small(reader, zone.high))} {unit}"


def _plays(least: float, most: float, unit: str) -> str:
    if least >= 0:
        return f"It plays {figure(least)} to {figure(most)} {unit}."
    if most <= 0:
        return f"It is pressed by {figure(-most)} to {figure(-least)} {unit}."
    return f"It may be {figure(-least)} {unit} tight or {figure(most)} {unit} loose."


def float_plot(stack: FloatStack, reader: Reader) -> Drawn:
    """The lengths of a float loop stacked against each other, and the float that they leave."""
    told = [
        ("room", _sum_words(stack.opens, reader), stack.opens),
        ("filled", _sum_words(stack.fills, reader), stack.fills),
    ]
    lines = [wrapped(f"{kind}: {words}", WIDE - 8, SIZE) for kind, words, _ in told]
    longest = max(sum(one.length for one in side) for *_, side in told)
    plot = Plot(156.0 + sum(LINE * len(one) + 44 for one in lines))
    y = SIZE
    for some, (kind, _, side) in zip(lines, told, strict=True):
        for line in some:
            plot.words(0, y, line)
            y += LINE
        x = 0.0
        for one in side:
            wide = one.length / longest * (WIDE - 4)
            plot.bar(f"zone {'hole' if kind == 'room' else 'shaft'}", x + 2, y - 10, x + wide + 2, y + 20)
            words = reader.length(one.length, 3)
            if width_of(words, SIZE) < wide - 8:
                plot.words(x + wide / 2, y + 10, words, "middle", plain=True)
            x += wide
        y += 44
    left, least, most = (reader.of(one) for one in (stack.left, stack.least, stack.most))
    ticks = round_ticks(min(0.0, left), max(most, left))
    decimals = 4 if reader.unit == "in" else 3
    leaves = f"leaves {reader.length(stack.left, decimals)} {reader.unit}"
    y += 8
    plot.words(0, y, f"float, {reader.length(stack.least, 3)} to {reader.length(stack.most, 3)} is right")
    scale = plot.across(ticks, 20, WIDE - 30, y + 76, f"float, {reader.unit}")
    plot.bar("zone right", scale(least), y + 40, scale(most), y + 76)
    plot.line("mark", (scale(left), y + 32), (scale(left), y + 76))
    plot.words_at_best(
        leaves,
        [(scale(left) + dx, y + 28, a) for dx, a in ((0, "middle"), (-16, "start"), (16, "end"))],
        True,
    )
    last = ""
    if stack.last_limits:
        low, high = reader.limits(*stack.last_limits)
        last = f"{named(stack.made_last)} is made last: {low} to {high} {reader.unit} keeps the float."
    stand = "right" if stack.least <= stack.left <= stack.most else "wrong"
    return Drawn(
        stack.name[0].upper() + stack.name[1:],
        plot.svg(f"{stack.name}: it {leaves}, {stand}"),
        tuple(one for one in (f"It {leaves}: {stand}.", last) if one),
        "float = what makes room − what fills it",
        tuple(f"{kind}: {words}" for kind, words, _ in told),
        "first principles; bounds of the design",
        ("member", "times", reader.unit, ""),
        tuple(
            (
                named(one.name),
                f"{one.times:+g}".replace("-", "–"),
                reader.length(one.value, 3),
                "measured" if one.measured else "as drawn",
            )
            for one in (*stack.opens, *stack.fills)
        ),
    )


def _sum_words(side: tuple[Member, ...], reader: Reader) -> str:
    return " + ".join(
        f"{f'{abs(one.times):g} × ' if abs(one.times) != 1 else ''}{named(one.name)} {reader.length(one.value, 3)}"
        + (" (measured)" if one.measured else "")
        for one in side
    )


def engaged_plot(joints: tuple[Engaged, ...], reader: Reader) -> Drawn:
    """Every thread: what is engaged, what is wanted, what is there."""
    most = max(max(one.engaged, one.wanted, one.there) for one in joints)
    plot = Plot(60.0 + 62 * len(joints))
    foot = 4.0 + 62 * len(joints)
    scale = plot.across(round_ticks(0.0, reader.of(most)), 20, WIDE - 30, foot, f"thread, {reader.unit}")
    for number, one in enumerate(joints):
        top = 24.0 + 62 * number
        words = f"{named(one.screw)} in {named(one.into)}: {reader.length(one.engaged)}, {reader.length(one.wanted)} wanted"
        plot.words(0, top - 8, short(words))
        plot.bar("zone there", scale(0), top, scale(reader.of(one.there)), top + 24)
        plot.bar("zone hole", scale(0), top, scale(reader.of(min(one.engaged, one.there))), top + 24)
        plot.line("mark", (scale(reader.of(one.wanted)), top - 4), (scale(reader.of(one.wanted)), top + 28))
    little = [one for one in joints if one.engaged < one.wanted - 1e-6]
    says = [
        f"{named(one.screw)} in {named(one.into)} has {reader.length(one.engaged)} {reader.unit}, "
        f"{reader.length(one.wanted)} wanted."
        for one in little
    ]
    return Drawn(
        "Thread engaged",
        plot.svg("Thread engaged, wanted and there, joint by joint. " + " ".join(says)),
        (
            "Grey: engaged. Outline: thread that is there. Heavy stroke: wanted.",
            *(says or ["Every joint has the thread that is wanted."]),
        ),
        "wanted = share of the diameter for the metal of the tapped part",
        tuple(f"{named(one.screw)} in {named(one.into)}: {one.how}" for one in joints),
        "; ".join(dict.fromkeys(one.source for one in joints)),
        ("joint", f"engaged, {reader.unit}", f"wanted, {reader.unit}", f"there, {reader.unit}"),
        tuple(
            (
                f"{named(one.screw)} in {named(one.into)}",
                *(reader.length(figure) for figure in (one.engaged, one.wanted, one.there)),
            )
            for one in joints
        ),
    )
