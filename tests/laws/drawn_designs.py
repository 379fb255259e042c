"""Whole designs drawn at random, as the text of a design file: every kind of part, every feature, relations."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from hypothesis import strategies as st

MATERIALS = ("mild steel", "silver steel", "free-cutting brass", "aluminium 6082", "phosphor bronze")


def number(low: float, high: float) -> st.SearchStrategy[float]:
    """A figure of a drawing, to a tenth."""
    return st.integers(math.ceil(low * 10), math.floor(high * 10)).map(lambda tenths: tenths / 10)


def chosen(draw: st.DrawFn, offered: dict[str, Callable[[], str]], most: int) -> list[str]:
    """Some of the lists offered, each with its one feature; figures are drawn for these alone."""
    keys = draw(st.lists(st.sampled_from(sorted(offered)), max_size=most, unique=True))
    return [f"      {key}: [{offered[key]()}]" for key in keys]


@st.composite
def turned(draw: st.DrawFn) -> list[str]:
    """A turned part: lands of every form, and a few features out of all that there are."""
    dias = draw(st.lists(number(10, 40), min_size=1, max_size=3))
    first, last, least = dias[0], dias[-1], min(dias)
    lands = []
    for n, dia in enumerate(dias):
        edge = draw(
            st.sampled_from(["", ", edges: 0.3", ", edges: 1 x 15 deg", ", corner: 0.4", ", limits: h7"])
        )
        lands.append(f"{{name: land{n}, dia: {dia}, long: {draw(number(8, 30))}{edge}}}")
    end = draw(
        st.sampled_from(
            [
                "",
                "",
                f"{{name: dome, dia: {last}, dome: {{radius: {last}}}}}",
                f"{{name: point, dia: {last}, point: {{included: 90 deg}}}}",
                f"{{name: cone, cone: {{large: {last}, half_angle: 10 deg}}, long: 6}}",
                f"{{name: cone, cone: {{large: {last}, small: {round(last * 0.7, 1)}}}, long: 6}}",
                f"{{name: cove, cove: {{a: {last}, b: {last}, radius: 20}}, long: 6}}",
                f"{{name: grip, dia: {last}, knurl: {{pattern: diamond, pitch: 0.8}}, long: 10}}",
                f"{{name: pin, dia: {round(last / 3, 1)}, eccentric: {{throw: 2, angle: 90 deg}}, long: 8}}",
                "{name: screw, thread: M8, long: 14, full: 11}",
            ]
        )
    )
    lands += [end] if end else []
    form, walls = draw(st.sampled_from(["square", "round", "vee"])), draw(st.sampled_from([1, 2]))
    count, angle = draw(st.sampled_from([1, 2, 4, 6])), draw(number(0, 350))
    deep, wide, hole = draw(number(0.4, 5)), draw(number(1, 9)), draw(number(1, 8))
    bore, level = draw(number(3, least * 0.8)), draw(number(first * 0.3, first * 0.52))
    bores = draw(
        st.sampled_from(
            [
                f"{{name: bore, dia: {bore}, through: true, limits: H7, edge: 0.3}}",
                f"{{name: bore, dia: {bore}, deep: 6, face: A, bottom: flat}}",
                f"{{name: bore, dia: {bore}, deep: 7, face: B}}",
                "{name: bore, thread: M6, face: A, deep: 8}",
                "{name: bore, thread: M5, through: true}",
            ]
        )
    )
    more = {
        "grooves": lambda: (
            f"{{name: groove, on: land0, at: middle, wide: {wide}, deep: {deep}, form: {form}}}"
        ),
        "bores": lambda: bores,
        "cross_holes": lambda: (
            f"{{name: across, dia: {hole}, on: land0, walls: {walls}, angle: {angle} deg}}"
        ),
        "flats": lambda: f"{{name: flat, on: land0, count: {count}, level: {level}}}",
        "keyways": lambda: (
            f"{{name: key, on: land0, from_a: 1, long: {draw(number(4, 8))}, wide: 2, deep: {deep}}}"
        ),
        "head_slots": lambda: f"{{name: driver, face: A, wide: 1, deep: {deep}}}",
        "cups": lambda: f"{{name: cup, face: A, mouth: {draw(number(3, 9))}, included: 90 deg}}",
        "centres": lambda: "{name: centre, face: B, size: A 2}",
        "slits": lambda: f"{{name: split, face: A, wide: 1, deep: {draw(number(2, 7))}, walls: {walls}}}",
        "cross_slots": lambda: (
            f"{{name: window, on: land0, from_a: 2, long: {draw(number(4, 6))}, wide: 2, angle: {angle} deg}}"
        ),
        "holes": lambda: (
            f"{{name: ring, dia: {round(first / 20 + 0.5, 1)}, count: {draw(st.integers(1, 6))}, "
            f"circle: {draw(number(first * 0.6, first))}, first: {angle} deg}}"
        ),
        "recesses": lambda: (
            f"{{name: dish, face: A, inside: {round(first * 0.6, 1)}, outside: {round(first * 0.9, 1)}, deep: {deep}}}"
        ),
        "engravings": lambda: (
            f"{{name: scale, on: land0, divisions: {draw(st.sampled_from([12, 60, 100]))}, "
            "short: 2, long: 3, long_every: 5}"
        ),
    }
    return ["    turned:", "      outside:", *(f"        - {one}" for one in lands), *chosen(draw, more, 3)]


@st.composite
def plate(draw: st.DrawFn) -> list[str]:
    """A plate with an outline and what may be cut in it."""
    long, wide, thick = draw(number(30, 90)), draw(number(24, 60)), draw(number(4, 16))
    kind, high = draw(st.sampled_from([("plate", "thick"), ("block", "height")]))
    outline = draw(
        st.sampled_from(
            [
                [f"length: {long}", f"width: {wide}"],
                [f"length: {long}", f"width: {wide}"],
                [f"outline: {{disc: {wide}}}"],
                [f"outline: {{bosses: [{{at: [12, 12], radius: 12}}, {{at: [{long}, 12], radius: 8}}]}}"],
                [f"outline: {{polygon: [[0, 0], [{long}, 0], [{long}, {wide}, 3], [0, {wide}]]}}"],
            ]
        )
    )
    x, y, side = draw(number(8, long - 8)), draw(number(8, 16)), draw(st.sampled_from(["front", "back"]))
    dia, deep = draw(number(2, 9)), draw(number(0.5, 6))
    hole = draw(
        st.sampled_from(
            [
                f"{{name: hole, face: top, dia: {dia}, through: true, at: [[{x}, {y}]], limits: H7}}",
                f"{{name: hole, face: top, dia: {dia}, deep: {deep}, at: [[{x}, {y}], [{round(x + 7, 1)}, {y}]]}}",
                f"{{name: hole, face: top, thread: M4, through: true, at: [[{x}, {y}]]}}",
                f"{{name: hole, face: {side}, thread: M3, deep: 6, at: [[{x}, {round(thick / 2, 1)}]]}}",
                f"{{name: hole, face: top, screw: ISO 4762 M3, through: true, at: [[{x}, {y}]]}}",
                f"{{name: hole, face: top, dia: 3, deep: 3, tilt: 20 deg, towards: 90 deg, at: [[{x}, {y}]]}}",
                f"{{name: hole, face: bottom, screw: ISO 10642 M3, through: true, at: [[{x}, {y}]]}}",
            ]
        )
    )
    more = {
        "holes": lambda: hole,
        "slots": lambda: f"{{name: window, face: top, at: [{x}, {y}], centres: 6, wide: 3, deep: {deep}}}",
        "pockets": lambda: (
            f"{{name: well, face: top, at: [{x}, {y}], length: 10, width: 6, corner: 2, deep: {deep}}}"
        ),
        "steps": lambda: f"{{name: ledge, side: left, wide: {draw(number(2, 6))}, deep: {deep}}}",
        "vees": lambda: f"{{name: vee, face: top, along: y, at: {x}, wide: 3, angle: 90 deg}}",
        "edges": lambda: "{name: rim, face: top, size: 0.5 x 45 deg}",
        "slits": lambda: f"{{name: split, side: {side}, at: {x}, long: 6, wide: 1}}",
    }
    return [
        f"    {kind}:",
        *(f"      {one}" for one in outline),
        f"      {high}: {thick}",
        *chosen(draw, more, 3),
    ]


@st.composite
def bent(draw: st.DrawFn) -> list[str]:
    """A part of sheet or wire."""
    angle = draw(st.sampled_from([90, 45, -60]))
    wire, out = draw(number(0.5, 1.5)), draw(number(6, 14))
    return draw(
        st.sampled_from(
            [
                ["    sheet:", "      width: 20", "      thick: 1.5", f"      legs: [{draw(number(15, 30))}, 25]",
                 f"      bends: [{{name: fold, angle: {angle} deg, radius: 2}}]"],
                [f"    ring: {{inside: {draw(number(20, 60))}, wide: 6, thick: 1.5, joint: butt}}"],
                [f"    spring: {{wire: {wire}, outside: {out}, active: 6, free: 30, ends: closed}}"],
                [f"    wire: {{dia: 2, legs: [{draw(number(5, 20))}, 20], bends: [{{angle: {angle} deg, radius: 4}}]}}"],
            ]
        )
    )  # fmt: skip


RELATIONS = {  # each with the words of a file in which it makes sense
    "{runout: part.land0, to: part.land1, within: 0.02}": ("part.land0", "part.land1"),
    "{runout: part.land0, to: part.bore, within: 0.02}": ("part.land0", "part.bore"),
    "{square: part.land0, to: part.face_a, within: 0.05}": ("part.land0",),
    "{fit: other.bore, on: part.land0, clearance: [0.01, 0.05], engaged: 5}": ("part.land0", "other.bore"),
    "{loop: [part.length, -other.length], float: [-40, 40], made_last: part}": ("part.land0", "other.land0"),
    "{screw: M4, through: part.hole, into: other.hole, head: ISO 4762}": ("part.hole", "other.hole"),
    "{pattern: part.hole, on: other.hole, screw: M4}": ("part.hole", "other.hole"),
    "{belt: part.land0, drives: other.land0, centres: 80, thick: 3}": ("part.land0", "other.land0"),
    "{pivot: part.land0, in: other.bore, swing: [-30 deg, 30 deg]}": ("part.land0", "other.bore"),
    "{sweep: part, about: part.land0, clear_of: other, gap: 1}": ("part.land0", "other"),
    "{flush: part.length, with: other.length, within: 60}": ("part", "other"),
    "{thread: part.screw, in: other.bore, engaged: 5}": ("part.screw", "other.bore"),
    "{press: other.bore, on: part.land0, interference: [0.005, 0.02], length: 5}": (
        "part.land0",
        "other.bore",
    ),
}


def relation(draw: st.DrawFn, lines: list[str]) -> list[str]:
    """One relation, most times of features that the parts have, sometimes of any."""
    names: set[str] = set()
    owner = ""
    for line in lines:
        if line.startswith("  ") and line[2] != " ":
            owner = line.strip().split(":")[0]
            names.add(owner)
        names |= {f"{owner}.{one}" for one in re.findall(r"name: (\w+)", line)}
    fitting = sorted(one for one, wanted in RELATIONS.items() if names.issuperset(wanted))
    offered = fitting if draw(st.integers(0, 3)) else sorted(RELATIONS)
    return ["relations:", f"  - {draw(st.sampled_from(offered))}"] if offered else []


@st.composite
def designs(draw: st.DrawFn) -> str:
    """A design of one or two made parts, perhaps with a bought one, named sizes and a relation."""
    lines = ["tommybar: 1", "design: Drawn at random", "units: mm", "parts:"]
    for name in ("part", "other")[: draw(st.sampled_from([1, 1, 2]))]:
        lines += [f"  {name}:", f"    material: {draw(st.sampled_from(MATERIALS))}"]
        lines += draw(draw(st.sampled_from([turned(), turned(), plate(), plate(), bent()])))
    bought = draw(st.sampled_from(["", "", "608-2Z", "ISO 4762 M4 x 12", "ball 6", "DIN 471 10"]))
    if bought:
        lines.append(f'  catalogue: {{bought: "{bought}"}}')
    if draw(st.integers(0, 2)) == 0:
        lines += relation(draw, lines)
    return "\n".join(lines) + "\n"
