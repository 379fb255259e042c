"""The command ``facts``: one look-up, as a small table or as JSON."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import Annotated, Any

import typer

from tommybar.facts.answer import Answer, Row
from tommybar.refusals import Refusal, nearest
from tommybar.sizes.topics import TOPICS, look_up

MM_PER_INCH = 25.4
UNITS = ("mm", "in")
# for whoever registers the command: lets keys such as -0.3 through; mistyped options are refused here
CONTEXT_SETTINGS = {"ignore_unknown_options": True}
# house unit: its inch unit, what it is multiplied by, and how many places more are shown
_IN_INCHES = {
    "mm": ("in", 1 / MM_PER_INCH, 1),
    "um": ("thou", 1 / MM_PER_INCH, 1),
    "mm2": ("in2", 1 / MM_PER_INCH**2, 3),
}


def facts(
    context: typer.Context,
    topic: Annotated[str | None, typer.Argument(help="What to look up; left out: the list.")] = None,
    keys: Annotated[list[str] | None, typer.Argument(help="What of it, for example 8 H7.")] = None,
    as_json: Annotated[bool, typer.Option("--json", help="One JSON object, in house units.")] = False,
    units: Annotated[str, typer.Option(help="Lengths of the table: mm or in.")] = "mm",
    hole: Annotated[str | None, typer.Option(help="fit: measured hole, gives the shaft, mm.")] = None,
    shaft: Annotated[str | None, typer.Option(help="fit: measured shaft, gives the hole, mm.")] = None,
    percent: Annotated[str | None, typer.Option(help="thread: height of thread wanted, %.")] = None,
    drill: Annotated[str | None, typer.Option(help="thread: the drill that is to hand.")] = None,
    deep: Annotated[str | None, typer.Option(help="thread: depth of full thread, mm.")] = None,
    point: Annotated[str | None, typer.Option(help="drill: angle of the point, deg.")] = None,
    bar: Annotated[str | None, typer.Option(help="taper: sine bar, mm.")] = None,
    length: Annotated[str | None, typer.Option(help="taper, adhesive: length, mm.")] = None,
    work: Annotated[str | None, typer.Option(help="taper: length between centres, mm.")] = None,
    start: Annotated[str | None, typer.Option(help="circle: angle of the first hole, deg.")] = None,
    convention: Annotated[str | None, typer.Option(help="circle: centre or corner.")] = None,
    ratio: Annotated[str | None, typer.Option(help="divide: worm ratio, 40, 60 or 90.")] = None,
    plates: Annotated[str | None, typer.Option(help="divide: plates, like 15-20,21-33.")] = None,
    vernier: Annotated[str | None, typer.Option(help="divide: rotary table, its vernier.")] = None,
    leadscrew: Annotated[str | None, typer.Option(help='gears: like 3 or "8 tpi".')] = None,
    gears: Annotated[str | None, typer.Option(help="gears: those owned.")] = None,
    slot: Annotated[str | None, typer.Option(help="gears: slot of the quadrant, mm.")] = None,
    module: Annotated[str | None, typer.Option(help="gears: module, mm.")] = None,
    span: Annotated[str | None, typer.Option(help="gears: spindle to lead screw, mm.")] = None,
    within: Annotated[str | None, typer.Option(help="gears: largest error, ppm; material: band, %.")] = None,
    on: Annotated[str | None, typer.Option(help="material: what it runs on.")] = None,
    density: Annotated[str | None, typer.Option(help="material: of an offcut, g/cm3.")] = None,
    magnet: Annotated[str | None, typer.Option(help="material: yes or no.")] = None,
    tool: Annotated[str | None, typer.Option(help="speed: HSS or carbide.")] = None,
    operation: Annotated[str | None, typer.Option(help="speed: turning, drilling ...")] = None,
    diameter: Annotated[str | None, typer.Option(help="speed, adhesive: diameter, mm.")] = None,
) -> None:
    """Look up a figure: limits, fits, threads, drills, tapers, circles, dividing, gears, materials ...

    Every answer names its source. Lengths of the table are in mm, or in
    inches with --units in; --json always gives house units.
    """
    try:
        if units not in UNITS:
            raise Refusal(f'The units are "{units}"; they are mm or in.', nearest(units, UNITS) or "Take mm.")
        if topic is None:
            typer.echo(topic_list())
            return
        _refuse_mistyped(keys or [], context.params)
        answer = look_up(topic, tuple(keys or ()), options_given(context.params))
    except Refusal as refusal:
        typer.echo(str(refusal), err=True)
        raise typer.Exit(1) from None
    typer.echo(as_object(answer) if as_json else as_table(answer, units))


def options_given(parameters: Mapping[str, object]) -> dict[str, str]:
    """The options of topics that were given, out of all parameters of the command."""
    return {
        name: str(value)
        for name, value in parameters.items()
        if name not in ("context", "topic", "keys", "as_json", "units") and value is not None
    }


def topic_list() -> str:
    """The topics with an example of each, a line each."""
    wide = max(len(topic.example) for topic in TOPICS)
    return "\n".join(f"facts {topic.example:<{wide}}  {topic.about}" for topic in TOPICS)


def as_object(answer: Answer) -> str:
    """An answer as one JSON object in house units."""
    whole: dict[str, Any] = {"topic": answer.topic, "key": answer.key, "title": answer.title}
    whole.update(answer.data)
    whole["source"] = answer.source
    if answer.cautions:
        whole["cautions"] = list(answer.cautions)
    return json.dumps(whole, ensure_ascii=False, indent=2)


def as_table(answer: Answer, units: str) -> str:
    """An answer as a small table with its source under it, lengths in mm or inches."""
    cells = [(row.label, _shown(row, units)) for row in answer.rows]
    wide = max((len(label) for label, _ in cells), default=0)
    lines = [answer.title, *(f"  {label:<{wide}}  {text}" for label, text in cells)]
    lines += [f"Mind: {caution}" for caution in answer.cautions]
    return "\n".join([*lines, f"Source: {answer.source}"])


def _refuse_mistyped(keys: Iterable[str], options: Iterable[str]) -> None:
    known = [f"--{name}" for name in (*options, "json")]
    for key in keys:
        if key.startswith("--"):
            name = key.partition("=")[0]
            raise Refusal(f'"{name}" is not an option of facts.', nearest(name, known))


def _shown(row: Row, units: str) -> str:
    if row.value is None:
        return row.text
    value, unit, places = row.value, row.unit, row.decimals
    if units == "in" and unit in _IN_INCHES:
        unit, factor, more = _IN_INCHES[unit]
        value, places = value * factor, places + more
    figure = f"{value:.{places}f}"
    return " ".join(part for part in (figure, unit, row.text) if part)
