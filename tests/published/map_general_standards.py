"""From the words of a row of general_standards.csv to a call of public functions."""

from __future__ import annotations

import re
from collections.abc import Callable

from tommybar.facts.balance.grades import grade_for_machine, grade_magnitude
from tommybar.facts.drawing import general_tolerances as general
from tommybar.facts.drawing import preferred_numbers as preferred
from tommybar.facts.drawing import sheets
from tommybar.facts.drawing.reference_temperature import reference_temperature, round_expansion
from tommybar.facts.materials.catalogue import material
from tommybar.mechanics import rotors, unbalance
from tommybar.refusals import Refusal
from tommybar.sizes.temperature import thermal_growth

from .frame import Computed, Row, Unmapped

LEFT_OUT: dict[str, str] = {}

_CLASS = re.compile(
    r"class ([A-Za-z](?:/[A-Za-z])*)(?: shorter side)?(?: (?:(?P<low>[\d.]+)-(?P<high>[\d.]+)"
    r"|to (?P<to>[\d.]+)|over (?P<over>[\d.]+)) mm)?"
)
_NUMBER = r"([\d.]+)"
_FRAME = {  # other words for a figure of the frame
    r"filing|left (border|margin)": "filing margin width",
    r"grid.*(length|pitch)": "grid reference field length",
    r"grid.*letter": "grid reference lettering height",
    r"grid.*line": "grid reference line width",
}


def expected_call(row: Row) -> Computed:
    """What the program computes for this row."""
    for words, rule in _RULES.items():
        if re.search(words, row.group):
            return rule(row)
    raise Unmapped(row.group)


def _by_class(row: Row, figure: Callable[[float, str], float]) -> Computed:
    """One figure for every class and both ends of the step that a row names."""
    match = _CLASS.fullmatch(row.item)
    if not match:
        raise Unmapped(row.item)
    if match["low"]:
        sizes = (float(match["low"]) + 0.001, float(match["high"]))
    elif match["to"]:
        sizes = (0.7, float(match["to"]))
    elif match["over"]:
        sizes = (float(match["over"]) + 0.001, float(match["over"]) * 2)
    else:
        sizes = (10.0, 100.0)
    found: set[float] = set()
    for name in match[1].split("/"):
        for size in sizes:
            try:
                found.add(figure(size, name))
            except Refusal:
                if row.value != "none":
                    raise
                return "none"
    return found.pop() if len(found) == 1 else str(sorted(found))


def _form(row: Row) -> Computed:
    kind = {"straightness and flatness": "flatness", "circular run-out": "run-out"}
    name = row.group.removeprefix("ISO 2768-2 ")
    return _by_class(
        row, lambda size, wanted: general.general_form_tolerance(kind.get(name, name), size, wanted)
    )


def _grade(row: Row) -> Computed:
    meaning = re.fullmatch(rf"(G {_NUMBER}) meaning e_per\*omega", row.item)
    if meaning:
        return grade_magnitude(meaning[1])
    return grade_for_machine(row.item)


def _balance(row: Row) -> Computed:
    rotor = re.fullmatch(rf"G{_NUMBER}, {_NUMBER} kg, {_NUMBER} rpm: permissible (.*) unbalance .*", row.item)
    if rotor:
        grade, mass, speed = (float(rotor[n]) for n in (1, 2, 3))
        if rotor[4] == "specific":
            return unbalance.permissible_eccentricity(grade, speed)
        return unbalance.permissible_unbalance(grade, mass, speed)
    if row.item.startswith("constant in U"):
        return unbalance.permissible_unbalance(1.0, 1.0, 1.0)
    hole = re.fullmatch(
        rf"hole depth: (\w+) disc, {_NUMBER} mm drill at radius {_NUMBER}, unbalance {_NUMBER} g mm", row.item
    )
    if hole:
        named = {"steel": "structural steel", "brass": "free-cutting brass", "aluminium": "aluminium 6082"}
        density = material(named.get(hole[1], hole[1])).density
        return unbalance.flat_hole_depth(float(hole[4]), float(hole[3]), float(hole[2]), density)
    raise Unmapped(row.item)


def _disc(row: Row) -> Computed:
    named = {key: float(figure) for key, figure in re.findall(rf"(rho|nu|r|n)={_NUMBER}", row.item)}
    radius, speed, density = named["r"], named["n"], named["rho"] / 1000
    if row.item.startswith("thin ring"):
        return rotors.average_hoop_stress(radius * (1 - 1e-9), radius, speed, density)
    bores = {"solid disc": 0.0, "disc with tiny centre hole": radius * 1e-6}
    for words, bore in bores.items():
        if row.item.startswith(words):
            return rotors.disc_stress(bore, bore, radius, speed, density, named["nu"], 1e5).hoop
    raise Unmapped(row.item)


def _sheet(row: Row) -> Computed:
    named = re.fullmatch(r"(A\d) (trimmed size|drawing space|untrimmed size|number of grid fields)", row.item)
    if named:
        found = sheets.sheet(named[1])
        by_words: dict[str, tuple[float, ...]] = {
            "trimmed size": found.trimmed,
            "drawing space": found.drawing_space,
            "untrimmed size": found.untrimmed,
            "number of grid fields": found.fields,
        }
        return by_words[named[2]]
    if row.item.startswith("title block position"):
        return sheets.title_block_position()
    for words, name in _FRAME.items():
        if re.search(words, row.item):
            return sheets.frame_figure(name)
    return sheets.frame_figure(row.item)


def _line(row: Row) -> Computed:
    step = re.fullmatch(r"line width step (\d+)", row.item)
    if step:
        return sheets.line_width(int(step[1]))
    kind = re.fullmatch(r"line type (.*)", row.item)
    if kind:
        return sheets.line_use(kind[1])
    if row.item == "wide : narrow line ratio":
        return "{}:{}".format(*sheets.wide_to_narrow())
    raise Unmapped(row.item)


def _lettering(row: Row) -> Computed:
    height = float(row.item.removeprefix("nominal height "))
    return next((one for one in sheets.lettering_heights() if abs(one - height) < 1e-9), "none")


def _scale(row: Row) -> Computed:
    wanted = row.item.removeprefix("scale ")
    return wanted if wanted in sheets.scales() else "none"


def _preferred(row: Row) -> Computed:
    number = re.fullmatch(r"R40 number (\d+)", row.item)
    if number:
        decade, place = divmod(int(number[1]), 40)
        found = preferred.preferred_numbers("R40")[place] * 10**decade
        coarsest = row.condition.removeprefix("coarsest series ")
        actual = preferred.coarsest_series(found)
        return found if actual == coarsest else f"{found} in {actual}"
    if re.match(r"5th root of 10", row.item):
        return preferred.series_ratio("R5")
    if row.item.startswith("R40 irregular values"):
        return preferred.irregular_numbers()
    raise Unmapped(row.item)


def _warm(row: Row) -> Computed:
    if re.search(r"temperature", row.item) and "warmed" not in row.item:
        return reference_temperature()
    grown = re.fullmatch(rf"([\w ]+) {_NUMBER} mm warmed {_NUMBER} K grows", row.item)
    if not grown:
        raise Unmapped(row.item)
    return thermal_growth(float(grown[2]), round_expansion(grown[1]), float(grown[3]))


_RULES: dict[str, Callable[[Row], Computed]] = {
    r"ISO 2768-1 linear": lambda row: _by_class(row, general.general_tolerance),
    r"ISO 2768-1 angular": lambda row: _by_class(row, general.general_angle_tolerance),
    r"ISO 2768-1 radii": lambda row: _by_class(row, general.general_radius_tolerance),
    r"ISO 2768-2": _form,
    r"ISO 21940-11": _grade,
    r"balance worked": _balance,
    r"rotating discs": _disc,
    r"sheets": _sheet,
    r"line widths": _line,
    r"lettering": _lettering,
    r"scales": _scale,
    r"preferred numbers": _preferred,
    r"reference temperature": _warm,
}
