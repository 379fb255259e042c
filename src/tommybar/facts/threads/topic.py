"""Look-up "thread": a thread with its limits, tapping drill and blank."""

from __future__ import annotations

import re
from collections.abc import Mapping

from tommybar.facts.answer import Answer, Row
from tommybar.facts.drills import drill_size
from tommybar.facts.keyed import number
from tommybar.facts.threads.blind_hole import tap_depths
from tommybar.facts.threads.designation import thread
from tommybar.facts.threads.die_blank import die_blank_diameter
from tommybar.facts.threads.limit_pair import ThreadLimits
from tommybar.facts.threads.limits import has_limits, thread_limits
from tommybar.facts.threads.tapping import (
    drill_for_percent,
    engagement_percent,
)
from tommybar.facts.threads.thread import Thread
from tommybar.refusals import Refusal

_METRIC_CLASS = r"(?:\d[efghGH]){1,2}"
_INCH_CLASS = r"[1-3][AB]"
_CLASS = re.compile(
    rf"^(.*?\S)[\s-]+((?:{_METRIC_CLASS}|{_INCH_CLASS})(?:/(?:{_METRIC_CLASS}|{_INCH_CLASS}))?"
    r"|close|medium|free|normal)$"
)


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """A thread: ``thread M6``, ``thread "M6-4g6g"``, ``thread "1/4-20 UNC"``.

    Parameters
    ----------
    keys : tuple[str, ...]
        Designation, with a tolerance class if it is not to be the usual one [-]
    options : Mapping[str, str]
        "drill" (its name, or a diameter [mm]) or "percent" of thread [%];
        "deep" (full thread of a blind hole [mm])

    Returns
    -------
    Answer
        Pitch, diameters, limits, drills [mm] and stress area [mm2]

    Raises
    ------
    Refusal
        If there is no such thread or class.

    Examples
    --------
    >>> found = answer(("M6",), {}).data
    >>> found["pitch_mm"], found["tapping_drill_mm"], found["external"]["pitch_diameter_mm"]
    (1.0, 5.0, [5.212, 5.324])

    References
    ----------
    source: the series' data file in facts/threads, named in the answer.
    """
    key = " ".join(keys).strip()
    if not key:
        raise Refusal("The look-up thread has no designation; it needs one.", "For example: thread M6.")
    named = _CLASS.match(key)
    one = thread(named[1] if named else key)
    limits = thread_limits(one, named[2] if named else "") if named or has_limits(one) else None
    percent = engagement_percent(one, one.tapping_drill)
    rows = [
        Row("pitch", one.pitch, "mm", 4),
        *([Row("threads per inch", one.threads_per_inch, "", 0)] if one.threads_per_inch else []),
        Row("major diameter", one.major, "mm"),
        Row("pitch diameter", one.pitch_diameter, "mm"),
        Row("minor diameter, hole", one.minor, "mm"),
        Row("root diameter, screw", one.core, "mm"),
        Row("stress area", one.stress_area, "mm2", 2),
        Row(f"tapping drill {one.tapping_drill_name}", one.tapping_drill, "mm", 2),
        Row(f"thread it leaves, of {one.profile.engagement:.4f} P", percent, "%", 0),
        Row("blank for a die, d - 0.1 P", die_blank_diameter(one), "mm", 2),
    ]
    data: dict[str, object] = {
        "designation": one.designation,
        "series": one.series,
        "pitch_mm": one.pitch,
        "major_mm": one.major,
        "pitch_diameter_mm": one.pitch_diameter,
        "minor_diameter_mm": one.minor,
        "core_diameter_mm": one.core,
        "stress_area_mm2": one.stress_area,
        "flank_angle_deg": one.flank_angle,
        "tapping_drill_mm": one.tapping_drill,
        "tapping_drill": one.tapping_drill_name,
        "tapping_drill_rule": one.tapping_drill_rule,
        "engagement_percent": percent,
        "engagement_basic_percent": engagement_percent(one, one.tapping_drill, "basic"),
        "engagement_base": one.profile.engagement_base,
        "die_blank_mm": die_blank_diameter(one),
    }
    source = f"{one.source}; tapping drill: {one.tapping_drill_rule}"
    if limits is not None:
        source += _add_limits(limits, rows, data)
    _add_tapping(one, options, rows, data)
    data["source"] = source
    cautions = () if limits is not None else (f"The {one.series} series has no tolerances of its own.",)
    return Answer("thread", key, f"Thread {one.designation}", tuple(rows), source, data, cautions)


def _add_limits(limits: ThreadLimits, rows: list[Row], data: dict[str, object]) -> str:
    """Rows and figures of the limits; gives back their sources."""
    sources: list[str] = []
    outside, inside = limits.external, limits.internal
    if outside is not None:
        for label, pair in (("major", outside.major), ("pitch", outside.pitch_diameter)):
            rows.append(Row(f"screw {outside.tolerance_class}, {label} diameter, least", pair[0], "mm"))
            rows.append(Row(f"screw {outside.tolerance_class}, {label} diameter, most", pair[1], "mm"))
        data["external"] = {
            "class": outside.tolerance_class,
            "major_mm": list(outside.major),
            "pitch_diameter_mm": list(outside.pitch_diameter),
            "allowance_mm": outside.allowance,
        }
        sources.append(str(outside.source))
    if inside is not None:
        for label, pair in (("minor", inside.minor), ("pitch", inside.pitch_diameter)):
            rows.append(Row(f"nut {inside.tolerance_class}, {label} diameter, least", pair[0], "mm"))
            rows.append(Row(f"nut {inside.tolerance_class}, {label} diameter, most", pair[1], "mm"))
        data["internal"] = {
            "class": inside.tolerance_class,
            "minor_mm": list(inside.minor),
            "pitch_diameter_mm": list(inside.pitch_diameter),
            "major_least_mm": inside.major_least,
        }
        sources.append(str(inside.source))
    return "".join(f"; limits: {source}" for source in dict.fromkeys(sources))


def _add_tapping(one: Thread, options: Mapping[str, str], rows: list[Row], data: dict[str, object]) -> None:
    """What the options about the hole ask for."""
    drill = one.tapping_drill
    if "drill" in options:
        drill = drill_size(options["drill"]).diameter
        share = engagement_percent(one, drill)
        rows.append(Row(f"thread that a {options['drill']} drill leaves", share, "%", 0))
        data["drill_mm"], data["drill_percent"] = drill, share
    if "percent" in options:
        wanted = number(options["percent"], "percentage of thread")
        hole = drill_for_percent(one, wanted)
        rows.append(Row(f"hole for {wanted:g} % of thread", hole, "mm", 2))
        data["hole_for_percent_mm"] = hole
    if "deep" in options:
        depths = tap_depths(one, number(options["deep"], "depth of full thread"), drill)
        rows.append(Row("full diameter to", depths.full_diameter_depth, "mm", 2))
        rows.append(Row("point of the drill to", depths.tip_depth, "mm", 2))
        data["full_thread_mm"] = depths.full_thread
        data["full_diameter_depth_mm"] = depths.full_diameter_depth
        data["tip_depth_mm"] = depths.tip_depth
