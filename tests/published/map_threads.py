"""From the words of a row of threads.csv to a call of public functions."""

from __future__ import annotations

import re
from collections.abc import Callable

from tommybar.facts.fasteners import spanner_across_flats
from tommybar.facts.threads import (
    ba_shortening,
    ba_tolerance,
    crest_radius,
    fundamental_deviation,
    metric_tolerance,
    pitch_rule_drill,
    thread,
    thread_limits,
    threads_of_series,
    triangle_height,
)

from .frame import Computed, Row, Unmapped

LEFT_OUT: dict[str, str] = {}

INCH = 25.4

_TABLES = {"Td": "external_major", "Td2": "external_pitch", "TD1": "internal_minor", "TD2": "internal_pitch"}
_BASIC = re.compile(
    r"(?P<size>.*?) (?P<figure>pitch|tapping drill|basic pitch diameter|basic minor diameter|major diameter"
    r"|core|minor|effective diameter|external root|threads per inch|depth of thread|stress area)\b"
)


def expected_call(row: Row) -> Computed:
    """What the program computes for this row."""
    group, item = row.group, row.item
    if group == "ISO 965 tolerances":
        return _metric_tolerance(item)
    if group == "ISO 965 limits":
        return _metric_limits(item)
    if group == "Unified 2A/2B limits":
        return _unified_limits(item)
    if group == "Whitworth form":
        return _whitworth_form(item)
    if found := re.match(r"fundamental triangle height H, P=([\d.]+)", item):
        return triangle_height(float(found[1]))
    if group.startswith("BA") and not re.match(r"\d", item):
        return _ba_form(item)
    if found := re.match(r"(\d+) tpi (pitch|thread depth)", item):
        one = next(one for one in threads_of_series("ME") if one.threads_per_inch == int(found[1]))
        return _in_unit(one.pitch if found[2] == "pitch" else (one.major - one.core) / 2, row)
    return _basic(row)


def _basic(row: Row) -> Computed:
    """A diameter, pitch or drill of one size."""
    found = _BASIC.match(row.item)
    if not found:
        raise Unmapped(row.item)
    one = thread(found["size"])
    figure = found["figure"]
    if figure == "threads per inch" and one.threads_per_inch is not None:
        return one.threads_per_inch
    if figure == "stress area":
        return one.stress_area / (INCH**2 if row.unit == "in2" else 1.0)
    if figure == "tapping drill":
        if row.unit == "drill":
            return one.tapping_drill_name
        by_rule = row.source.startswith("d-P rule")
        return _in_unit(pitch_rule_drill(one) if by_rule else one.tapping_drill, row)
    lengths = {
        "pitch": one.pitch,
        "basic pitch diameter": one.pitch_diameter,
        "effective diameter": one.pitch_diameter,
        "basic minor diameter": one.minor,
        "major diameter": one.major,
        "core": one.core,
        "minor": one.core,
        "external root": one.core,
        "depth of thread": (one.major - one.core) / 2,
    }
    return _in_unit(lengths[figure], row)


def _in_unit(length: float, row: Row) -> float:
    return length / INCH if row.unit == "in" else length


def _metric_tolerance(item: str) -> Computed:
    if found := re.match(r"(M\S+) (?:es|EI) \(position (\w)\)", item):
        return fundamental_deviation(thread(found[1]), found[2])
    if found := re.match(r"(M\S+) (Td2|TD2|TD1|Td) grade (\d)", item):
        return metric_tolerance(thread(found[1]), _TABLES[found[2]], int(found[3]))
    raise Unmapped(item)


def _metric_limits(item: str) -> Computed:
    found = re.match(r"(M[\dx.]+)-(\w+) (major|pitch|minor) diameter", item)
    if not found:
        raise Unmapped(item)
    limits = thread_limits(found[1], found[2])
    side = limits.external or limits.internal
    pair: tuple[float, float] = getattr(side, "pitch_diameter" if found[3] == "pitch" else found[3])
    return pair


def _unified_limits(item: str) -> Computed:
    found = re.match(r"(\S+) (\d[AB]) (allowance|(?:major|pitch|minor) (?:max|min))", item)
    if not found:
        raise Unmapped(item)
    limits = thread_limits(found[1], found[2])
    side = limits.external or limits.internal
    if found[3] == "allowance" and limits.external is not None:
        return limits.external.allowance / INCH
    figure, end = found[3].split()
    if found[2].endswith("B") and figure == "major" and limits.internal is not None:
        return limits.internal.major_least / INCH
    pair: tuple[float, float] = getattr(side, "pitch_diameter" if figure == "pitch" else figure)
    return pair[end == "max"] / INCH


def _whitworth_form(item: str) -> Computed:
    one = thread("1/4 BSW")
    depth = one.profile.core / 2
    if "angle" in item:
        return one.flank_angle
    if item == "H / pitch":
        return triangle_height(1.0, one.flank_angle)
    if "radius" in item:
        return crest_radius(1.0, one.flank_angle, depth)
    if "depth" in item:
        return depth
    raise Unmapped(item)


def _ba_form(item: str) -> Computed:
    """Rows that hold for the whole series."""
    zero = thread("0 BA")  # its pitch is 1 mm
    if "angle" in item:
        return zero.flank_angle
    if item.startswith("shortening at crest and root"):
        return ba_shortening(zero)
    if "allowance" in item:
        outside = thread_limits(zero, "close" if item.startswith("close") else "normal").external
        return outside.allowance if outside is not None else 0.0
    if item.startswith("spanner across flats"):
        return spanner_across_flats(zero.designation) / zero.major
    found = re.match(
        r"(normal|close)?(?: class)? ?(external|internal) (major|effective|minor) tolerance", item
    )
    if found:
        element = "pitch_diameter" if found[3] == "effective" else found[3]
        sizes = ("11 BA", "16 BA") if "11-16" in item else ("0 BA", "10 BA")
        return _rule(lambda size: ba_tolerance(thread(size), element, found[1] or ""), sizes)
    if "radius" in item:
        return crest_radius(1.0, zero.flank_angle, zero.profile.core / 2)
    if "depth" in item:
        return zero.profile.core / 2
    raise Unmapped(item)


def _rule(tolerance: Callable[[str], float], sizes: tuple[str, str]) -> str:
    """The straight line in p that the computed tolerances of two sizes lie on, as the standard writes it."""
    (coarse, at_coarse), (fine, at_fine) = ((thread(size).pitch, tolerance(size)) for size in sizes)
    slope = (at_coarse - at_fine) / (coarse - fine)
    fixed = round(at_coarse - slope * coarse, 6)
    text = f"{slope:.3f}"
    text = text[:-1] if text.endswith("0") else text
    return f"{text}*p+{fixed:g}" if fixed else f"{text}*p"
