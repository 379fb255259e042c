"""A plan as a short table for a person at a terminal."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from tommybar.findings import SEVERITIES, Finding
from tommybar.making.lengths import spoken
from tommybar.pack.units import Reader
from tommybar.planning import Plan
from tommybar.resize.table import Bind

TITLES = {"stop": "Stops", "caution": "Cautions", "note": "Notes"}


def plan_table(plan: Plan, unit: Literal["mm", "in"] = "mm") -> str:
    """Scale and what binds, each part with its cards and minutes, findings by severity."""
    reader = Reader(unit)
    lines = [
        f"{plan.title}, revision {plan.revision}, in {plan.shop.name}",
        f"plan {plan.plan_id}   scale {plan.scale:.2f}",
        *binding_lines(plan.binds, plan.scale, reader),
        "",
    ]
    rows: list[tuple[str, ...]] = [("part", "off", "from", "cards", "minutes", "mass g")]
    for one in plan.parts:
        minutes = sum(card.minutes for card in one.cards)
        blank = one.blank
        cut = f"{blank.section} {reader.length(blank.size, 4)}" if blank else one.part.bought
        if blank and blank.width:
            cut += f" x {reader.length(blank.width, 4)}"
        if blank:
            long = f"{blank.length:.1f}" if unit == "mm" else f"{reader.length(blank.length, 1)} in"
            cut += f" x {long}, {blank.material}"
        cards = str(len(one.cards)) if one.cards else ""
        mass = f"{one.mass:.1f}" if one.mass else ""
        rows.append(
            (one.part.name, str(one.part.count), cut, cards, f"{minutes:.0f}" if minutes else "", mass)
        )
    lines += in_columns(rows, right=(1, 3, 4, 5))
    if plan.stock.buy:
        lines += ["", "To buy or ask for:", *(f"  {line.words}" for line in plan.stock.buy)]
    return "\n".join([*lines, *finding_lines(plan.findings)])


def binding_lines(binds: Iterable[Bind], scale: float, reader: Reader) -> list[str]:
    """What decides the scale, one limit a line."""
    found = [_binding_line(one, reader) for one in binds if one.binds]
    return found or ["bound by nothing: made as drawn" if scale == 1 else "bound by nothing: as asked for"]


def _binding_line(one: Bind, reader: Reader) -> str:
    of = f" of {one.part}" if one.part else ""
    if one.bound == one.scale:  # a limit that the making found: it is a scale and no length
        return f"bound above scale {one.scale:g}{of and of.replace(' of ', ' for ')}: {one.what}"
    words = f"bound by {one.what}{of}: {one.figure:g} mm, {'at least' if one.least else 'at most'} {one.bound:g} mm"
    return spoken(words, reader.unit)


def finding_lines(findings: Iterable[Finding]) -> list[str]:
    """Findings by severity, with where they stand and what can be done."""
    lines: list[str] = []
    for severity in SEVERITIES:
        some = [one for one in findings if one.severity == severity]
        if some:
            lines += ["", f"{TITLES[severity]} ({len(some)}):"]
            lines += [f"  {finding_line(one)}" for one in some]
    return lines or ["", "No findings."]


def finding_line(one: Finding) -> str:
    """One finding in one line.

    >>> finding_line(Finding(301, "stop", "No jaws hold it.", "wheel", card=2, remedy="Take soft jaws."))
    '301 wheel card 2: No jaws hold it. Take soft jaws.'
    """
    where = [one.part, one.feature]
    where += [f"card {one.card}"] if one.card else []
    where += [f"step {one.step}"] if one.step else []
    place = " ".join(part for part in where if part)
    head = f"{one.number} {place}: " if place else f"{one.number} "
    return f"{head}{one.words} {one.remedy}".rstrip()


def in_columns(rows: list[tuple[str, ...]], right: tuple[int, ...] = ()) -> list[str]:
    """Rows set in columns, two blanks apart.

    >>> in_columns([("a", "1"), ("bb", "10")], right=(1,))
    ['a    1', 'bb  10']
    """
    wide = [max(len(row[at]) for row in rows) for at in range(len(rows[0]))]
    lines = []
    for row in rows:
        cells = [cell.rjust(wide[at]) if at in right else cell.ljust(wide[at]) for at, cell in enumerate(row)]
        lines.append("  ".join(cells).rstrip())
    return lines
