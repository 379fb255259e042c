"""Look-up "speed": cutting speed, spindle speed and feed."""

from __future__ import annotations

import math
from collections.abc import Mapping

from tommybar.facts.answer import Answer
from tommybar.facts.cutting.feeds import STAGES, FeedRange, drilling_feed, feed_range
from tommybar.facts.cutting.speeds import cutting_speed, operation_name
from tommybar.facts.keyed import number
from tommybar.facts.materials import material
from tommybar.facts.spans import span_rows
from tommybar.refusals import Refusal


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """Speed and feed: ``speed "mild steel" HSS turning 25``.

    Parameters
    ----------
    keys : tuple[str, ...]
        Material, tool ("HSS" or "carbide") and operation [-], and, if wanted,
        the diameter of the work or the cutter [mm]; tool and operation may be
        left out (HSS, turning)
    options : Mapping[str, str]
        "tool", "operation" and "diameter" [mm] instead of the keys

    Returns
    -------
    Answer
        Cutting speed [m/min], spindle speed [rev/min] and feed [mm/rev]

    Raises
    ------
    Refusal
        If a name is not known or the diameter is not above nought.

    Examples
    --------
    >>> found = answer(("mild steel", "HSS", "turning", "25"), {}).data
    >>> found["speed_m_min"], round(found["spindle_low_rpm"])
    ([25.0, 35.0], 318)

    References
    ----------
    source: facts/cutting/speeds.toml, operations.toml and feeds.toml.
    """
    if not 1 <= len(keys) <= 4:
        raise Refusal(
            f"The look-up speed has {len(keys)} words; it needs 1 to 4: material, tool, operation, diameter.",
            'For example: speed "mild steel" HSS turning 25.',
        )
    given = dict(zip(("material", "tool", "operation", "diameter"), keys, strict=False))
    stuff = material(given["material"])
    tool = given.get("tool") or options.get("tool", "HSS")
    operation = operation_name(given.get("operation") or options.get("operation", "turning"))
    speed = cutting_speed(stuff.name, tool, operation)
    rows = [*span_rows("cutting speed", speed.low, speed.high, "m/min", 0)]
    data: dict[str, object] = {
        "material": stuff.name,
        "tool": tool,
        "operation": operation,
        "speed_m_min": [speed.low, speed.high],
    }
    sources = [speed.source]
    size = given.get("diameter") or options.get("diameter", "")
    diameter = number(size, "diameter") if size else 0.0
    if size:
        if diameter <= 0:
            raise Refusal(
                f"The diameter is {diameter:g} mm; it must be above 0.", "Give work or cutter diameter."
            )
        low, high = (1000 * figure / (math.pi * diameter) for figure in (speed.low, speed.high))
        rows += span_rows(f"spindle at {diameter:g} mm", low, high, "rev/min", 0)
        data |= {"diameter_mm": diameter, "spindle_low_rpm": low, "spindle_high_rpm": high}
    for label, feed in _feeds(stuff.name, tool, operation, diameter):
        unit = "mm" if operation in ("milling", "slotting") else "mm/rev"
        rows += span_rows(label, feed.low, feed.high, unit, 3)
        data[label.replace(" ", "_") + ("_mm_tooth" if unit == "mm" else "_mm_rev")] = [feed.low, feed.high]
        sources.append(feed.source)
    source = "; ".join(dict.fromkeys(sources))
    cautions = ((speed.note,) if speed.note else ()) + stuff.cautions
    data["source"] = source
    title = f"{operation} {stuff.name} with {tool}"
    return Answer("speed", " ".join(keys), title, tuple(rows), source, data, cautions)


def _feeds(stuff: str, tool: str, operation: str, diameter: float) -> list[tuple[str, FeedRange]]:
    if operation == "drilling":
        return [("feed", drilling_feed(stuff, diameter))] if 1.0 <= diameter <= 25.0 else []
    found = []
    for stage in STAGES:
        try:
            found.append((f"feed {stage}", feed_range(operation, tool, stage)))
        except Refusal:
            return []
    return found
