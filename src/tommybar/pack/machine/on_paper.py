"""The same words for the printer, and for a browser that runs no script: one block for each card."""

from __future__ import annotations

from html import escape
from typing import Any


def paper_cards(contents: dict[str, Any]) -> str:
    """Every card of the plan as static HTML with boxes to tick and lines to write on."""
    plan = contents["plan"]
    head = (
        f"<h1>{escape(plan['title'])}</h1><p>revision {escape(plan['revision'])}, scale {plan['scale']},"
        f" {escape(plan['shop'])}, plan {escape(plan['id'])}</p>" + _list(plan["cautions"])
    )
    unit = plan["unit"]
    return head + "".join(_card(part, card, unit) for part in contents["parts"] for card in part["cards"])


def _card(part: dict[str, Any], card: dict[str, Any], unit: str) -> str:
    count = f", {part['count']} off" if part["count"] > 1 else ""
    out = f"; sticks out <b>{card['out']} {unit}</b>" if card["out"] else ""
    changed = f"<p><b>Changed:</b> {escape(part['changed'])}</p>" if part["changed"] else ""
    rows = "".join(_step(step, unit) for step in card["steps"])
    drawer = f"<p>Drawer: {escape(' · '.join(card['drawer']))}</p>" if card["drawer"] else ""
    return (
        f'<section class="sheet"><h2>{escape(part["name"])}, card {card["number"]} of {card["of"]}{count}: '
        f"{escape(card['title'])}</h2>{changed}"
        f"{_held(part, card, out)}"
        f'<div class="sheet-cols"><div>{card["sketch"]}<p>{escape(card["gap"])}</p>{_list(card["before"])}'
        f"{drawer}</div>"
        f"<table>{rows}</table></div>{_places(card, unit)}<p>{escape(card['after'])}</p></section>"
    )


def _held(part: dict[str, Any], card: dict[str, Any], out: str) -> str:
    """What is held and how; nothing for a card of the assembly, which is held by itself."""
    if not (part["material"] or card["hold"]):
        return ""
    return f"<p>{escape(part['material'])}. {escape(card['hold'])}{out}. {escape(card['stop'])}</p>"


def _step(step: dict[str, Any], unit: str) -> str:
    speed = f"{step['speed']} rev/min" if step["speed"] else "by hand"
    with_what = " · ".join(escape(one) for one in (step["tool"], speed, step["feed"]) if one)
    dials = "".join(f"<br>{escape(line)}" for line in [*step["dial"], *step["cautions"]])
    passes = ", ".join(f"{one['to']} ({one['dial']})" for one in step["passes"])
    row = (
        f'<tr><td class="box"></td><td>{step["n"]}</td><td><b>{escape(step["do"])}</b><br>{with_what}'
        f"{dials}{'<br>cuts to ' + escape(passes) if passes else ''}</td>"
        f'<td class="sheet-big">{escape(step["big"])} <small>{escape(step["kind"])}</small></td></tr>'
    )
    if step["measure"]:
        lines = "".join(_measure(one, unit) for one in step["measure"])
        row += f'<tr class="sheet-hold"><td colspan="4">STOP. Do not let go until measured:{lines}</td></tr>'
    return row


def _measure(one: dict[str, Any], unit: str) -> str:
    each, places = (25.4, 4) if unit == "in" else (1.0, 3)
    bound = f" {one['target'] / each:.{places - 1}f} {unit}, general tolerance,"
    if one["low"] is not None:
        bound = f" {one['low'] / each:.{places}f} to {one['high'] / each:.{places}f} {unit}"
    gives = f" (give it to {escape(', '.join(one['gives']))})" if one["gives"] else ""
    return f"<br>{escape(one['label'])} ____________{bound} {escape(one['with'])}{gives}"


def _places(card: dict[str, Any], unit: str) -> str:
    if not card["places"]:
        return ""
    rows = "".join(
        f'<tr><td class="box"></td><td>{one["n"]}</td><td>{one["x"]}</td><td>{one["y"]}</td>'
        f"<td>{escape(one['dial_x'])}</td><td>{escape(one['dial_y'])}</td><td>{escape(one['from'])}</td>"
        f"<td>{escape(one['what'])}</td></tr>"
        for one in card["places"]
    )
    head = f"<tr><th></th><th>n</th><th>X {unit}</th><th>Y {unit}</th><th>dial X</th><th>dial Y</th>"
    return f"<table>{head}<th>come from</th><th>hole</th></tr>{rows}</table>{_list(card['chords'])}"


def _list(lines: list[str]) -> str:
    return f"<ul>{''.join(f'<li>{escape(line)}</li>' for line in lines)}</ul>" if lines else ""
