"""The shop file with something missing or otherwise, spliced so that it stays the owner's file."""

from __future__ import annotations

from typing import Any

from tommybar.bench.splice import with_key, with_value, without_item
from tommybar.design.figures import figure
from tommybar.design.validation import unit_of
from tommybar.design.yaml_file import Place, yaml_from_text
from tommybar.facts.threads import thread
from tommybar.refusals import Refusal


def _group(text: str, name: str) -> tuple[list[Any], Any]:
    file = yaml_from_text(text)
    found = file.data.get(name)
    if not isinstance(found, list):
        raise Refusal(
            f"The shop file does not list its {name}; they were taken from an example.",
            f"Write your own {name} into it.",
        )
    return found, unit_of(file)


def without_reamer(text: str, size: float) -> str:
    """The shop without the reamer of a size [mm]."""
    group, unit = _group(text, "reamers")
    for index, one in enumerate(group):
        if abs(figure(one["size"] if isinstance(one, dict) else one, unit) - size) < 1e-6:
            return without_item(text, ("reamers", index))
    raise Refusal(f"The shop file has no reamer of {size:g} mm.", "Name one that it has.")


def without_jaws(text: str, name: str) -> str:
    """The shop without a jaw set."""
    group, _ = _group(text, "jaws")
    for index, one in enumerate(group):
        if one.get("name") == name:
            return without_item(text, ("jaws", index))
    names = ", ".join(str(one.get("name")) for one in group)
    raise Refusal(f'The shop file has no jaws "{name}".', f"It has {names}.")


def with_jaws_runout(text: str, name: str, runout: float) -> str:
    """The shop with the run-out that a jaw set really has [mm]."""
    group, unit = _group(text, "jaws")
    for index, one in enumerate(group):
        if one.get("name") == name:
            return with_key(text, ("jaws", index), "runout", runout / (25.4 if unit == "in" else 1.0))
    raise Refusal(f'The shop file has no jaws "{name}".', "Name one that it has.")


def without_thread_tool(text: str, designation: str) -> str:
    """The shop without the tap and the die of a thread."""
    for kind in ("taps", "dies"):
        group, _ = _group(text, kind)
        for index, one in enumerate(group):
            if thread(str(one)).designation == designation:
                text = without_item(text, (kind, index))
                break
    return text


def without_speed(text: str, machine: str, speed: float) -> str:
    """The shop whose lathe or mill has lost one of its speeds [rev/min]."""
    given = yaml_from_text(text).data.get(machine)
    listed = given.get("speeds") if isinstance(given, dict) else None
    if not isinstance(listed, list):
        raise Refusal(f"The shop file does not list the speeds of the {machine}.", "Write them into it.")
    for index, one in enumerate(listed):
        if abs(figure(one, kind="speed") - speed) < 1e-6:
            return without_item(text, (machine, "speeds", index))
    raise Refusal(f"The {machine} has no speed of {speed:g} rev/min.", "Name one from its plate.")


def with_dial(text: str, slide: str, key: str, value: str | float) -> str:
    """The shop with a dial's key set: ``slide`` is lathe.cross_slide, mill.dial and so on."""
    place: Place = tuple(slide.split("."))
    return with_key(text, place, key, value)


def with_cutter(text: str, size: float, real: float) -> str:
    """The shop in which a cutter is what it really measures [mm]."""
    group, unit = _group(text, "cutters")
    each = 25.4 if unit == "in" else 1.0
    for index, one in enumerate(group):
        if abs(figure(one, unit) - size) < 1e-6:
            return with_value(text, ("cutters", index), round(real / each, 5))
    raise Refusal(f"The shop file lists no cutter of {size:g} mm by itself.", "Write it out in the file.")
