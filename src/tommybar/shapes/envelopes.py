"""Bought parts by their designation: the figures of the tables, and the body that their envelope makes."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from tommybar.facts.fasteners import (
    SCREWS,
    bearing,
    circlip,
    nut,
    o_ring,
    parallel_pin,
    screw_head,
    standard_screw_lengths,
    washer,
)
from tommybar.facts.fasteners.nuts import NUTS, WASHERS
from tommybar.facts.fasteners.ring_widths import ball_diameters, circlip_width
from tommybar.facts.fasteners.ring_widths import source as widths_source
from tommybar.facts.threads import thread
from tommybar.refusals import Refusal, nearest
from tommybar.shapes.bought import BoughtShape
from tommybar.shapes.moments import Moments, ring_of_revolution, rod

SCREW_WORDS = {
    "ISO 4762": "socket head screw",
    "ISO 7380": "button head screw",
    "ISO 10642": "countersunk socket screw",
    "ISO 2009": "slotted countersunk screw",
    "ISO 1207": "cheese head screw",
    "ISO 4017": "hexagon head screw",
    "ISO 4026": "grub screw",
}
WRITTEN = (
    "ISO 4762 M5 x 16",
    "ISO 4032 M5",
    "ISO 7089 M5",
    "DIN 471 10",
    "DIN 472 22",
    "ISO 8734 3 x 12",
    "ISO 3290 6",
    "bearing 608",
    "O-ring 10 x 2",
)
"""One example of each kind of designation that is known."""
_NUMBER = r"(\d+(?:\.\d+)?)"


def envelope(designation: str) -> BoughtShape:
    """What the tables say of a bought part.

    Parameters
    ----------
    designation : str
        Standard, size and length as on a parts list, such as "ISO 4762 M5 x 16",
        "ISO 4032 M5", "DIN 471 10", "bearing 608-2Z", "O-ring 10 x 2", "ball 6"

    Returns
    -------
    BoughtShape
        Its kind and its named figures [mm]

    Raises
    ------
    Refusal
        If the tables do not know it; the nearest known one is named.

    Examples
    --------
    >>> one = envelope("ISO 4762 M5 x 16")
    >>> one.kind, one.size("head_dia"), one.size("head_height"), one.size("length")
    ('socket head screw', 8.5, 5.0, 16.0)

    References
    ----------
    .. [1] The standards named by the tables of fasteners, each with its source.
    """
    text = " ".join(designation.replace("×", "x").split())
    for standard in SCREWS:
        if found := re.fullmatch(rf"{standard} (\S+) x {_NUMBER}(?: mm)?", text):
            return _screw(designation, standard, found[1], float(found[2]))
    for standard in (*NUTS, *WASHERS):
        if found := re.fullmatch(rf"{standard} (\S+)", text):
            return _nut_or_washer(designation, standard, found[1])
    readers: tuple[tuple[str, Callable[[str, re.Match[str]], BoughtShape]], ...] = (
        (rf"(?:DIN (471|472)|circlip) {_NUMBER}(?: mm)?(?: (shaft|bore))?", _circlip),
        (rf"(?:ISO 8734|dowel pin) {_NUMBER} x {_NUMBER}(?: mm)?", _pin),
        (rf"(?:ISO 3290|ball) {_NUMBER}(?: mm)?", _ball),
        (rf"(?:O-ring|ISO 3601) (\d{{3}}|{_NUMBER} ?x ?{_NUMBER})", _o_ring),
        (r"(?:ball )?(?:bearing )?((?:6|16)\d{2,4}(?:-?[A-Z0-9]+)?)", _bearing),
    )
    for pattern, reader in readers:
        if found := re.fullmatch(pattern, text, re.IGNORECASE):
            return reader(designation, found)
    standards = [*SCREWS, *NUTS, *WASHERS, "DIN 471", "DIN 472", "ISO 8734", "ISO 3290", "ISO 3601"]
    first = " ".join(text.split()[:2])
    remedy = nearest(first, standards) or f"Write it like {', '.join(WRITTEN)}."
    raise Refusal(
        f'"{designation}" is in no table of bought parts.',
        f"{remedy} Or give its own figures: kind, sizes and source.",
    )


def _screw(designation: str, standard: str, size: str, length: float) -> BoughtShape:
    head, lengths = screw_head(standard, size), standard_screw_lengths(standard, size)
    if length not in lengths:
        close = sorted(lengths, key=lambda one: (abs(one - length), one))[:2]
        raise Refusal(
            f"{standard} {size} is not made {length:g} mm long ({lengths[0]:g} to {lengths[-1]:g} mm).",
            f"The nearest are {' and '.join(f'{one:g}' for one in sorted(close))} mm.",
        )
    figures: list[tuple[str, float]] = [("thread_dia", thread(size).major), ("length", length)]
    if head.height > 0:
        figures += [("head_dia", head.diameter), ("head_height", head.height)]
    if head.key is not None:
        figures.append(("across_flats" if standard == "ISO 4017" else "key", head.key))
    return BoughtShape(designation, SCREW_WORDS[standard], tuple(figures), str(head.source))


def _nut_or_washer(designation: str, standard: str, size: str) -> BoughtShape:
    if standard in NUTS:
        one = nut(size, standard)
        figures = (
            ("across_flats", one.across_flats),
            ("thickness", one.height),
            ("thread_dia", thread(size).major),
        )
        return BoughtShape(designation, "nut", figures, str(one.source))
    flat = washer(size, standard)
    sizes = (("inside", flat.inside), ("outside", flat.outside), ("thickness", flat.thickness))
    return BoughtShape(designation, "washer", sizes, str(flat.source))


def _circlip(designation: str, found: re.Match[str]) -> BoughtShape:
    kind = (found[3] or {"471": "shaft", "472": "bore"}.get(found[1] or "", "")).lower()
    if not kind:
        raise Refusal(
            f'"{designation}" does not say whether it is for a shaft or a bore.', "Write DIN 471 10."
        )
    one = circlip(f"{found[2]} {kind}")
    groove = sum(one.groove_diameter) / 2
    wide = circlip_width(one.diameter, kind)
    inside, outside = (groove, groove + 2 * wide) if kind == "shaft" else (groove - 2 * wide, groove)
    sizes = (
        ("inside", inside),
        ("outside", outside),
        ("thickness", one.thickness),
        ("groove_dia", groove),
        ("groove_wide", one.groove_width),
        ("shaft" if kind == "shaft" else "bore", one.diameter),
    )
    return BoughtShape(designation, "circlip", sizes, f"{one.source}; {widths_source()}")


def _pin(designation: str, found: re.Match[str]) -> BoughtShape:
    pin, length = parallel_pin(float(found[1])), float(found[2])
    if length not in pin.lengths:
        close = min(pin.lengths, key=lambda one: abs(one - length))
        raise Refusal(
            f"ISO 8734 of {pin.diameter:g} mm is not made {length:g} mm long "
            f"({pin.lengths[0]:g} to {pin.lengths[-1]:g} mm).",
            f"The nearest is {close:g} mm.",
        )
    return BoughtShape(designation, "dowel pin", (("dia", pin.diameter), ("length", length)), str(pin.source))


def _ball(designation: str, found: re.Match[str]) -> BoughtShape:
    dia = float(found[1])
    if dia not in ball_diameters():
        close = min(ball_diameters(), key=lambda one: abs(one - dia))
        raise Refusal(f"Balls of {dia:g} mm are not stocked.", f"The nearest is {close:g} mm.")
    return BoughtShape(designation, "ball", (("dia", dia),), str(widths_source()))


def _o_ring(designation: str, found: re.Match[str]) -> BoughtShape:
    ring = o_ring(found[1].replace(" ", ""))
    sizes = (("inside", ring.inside), ("section", ring.section), ("outside", ring.inside + 2 * ring.section))
    return BoughtShape(designation, "o-ring", sizes, str(ring.source))


def _bearing(designation: str, found: re.Match[str]) -> BoughtShape:
    one = bearing(found[1])
    closed = re.search(r"Z|RS|ZZ", found[1][3:], re.IGNORECASE)
    width = one.width_shielded if closed else one.width
    sizes = (("inside", one.bore), ("outside", one.outside), ("width", width))
    return BoughtShape(designation, "ball bearing", sizes, str(one.source))


def envelope_moments(shape: BoughtShape) -> Moments:
    """Moments of a bought part's envelope taken as solid metal, z along it.

    A screw counts as its head and a plain shank of the thread's diameter, its
    socket not taken out; a bearing as a solid ring, which is heavier than the
    real one by about a quarter (common practice, no source).

    Examples
    --------
    A washer 10.5 over 5.3, 1 thick: pi/4 (10^2 - 5.3^2) 1.

    >>> round(envelope_moments(envelope("ISO 7089 M5")).volume, 2)
    56.48
    """
    sizes = dict(shape.sizes)
    if shape.kind == "ball":
        r = sizes["dia"] / 2
        v = 4 / 3 * math.pi * r**3
        own = v * r * r / 5
        return Moments(v, 0.0, 0.0, 0.0, own, own, own)
    if shape.kind == "o-ring":
        a, radius = sizes["section"] / 2, (sizes["inside"] + sizes["section"]) / 2
        v = 2 * math.pi**2 * radius * a * a
        across = v * (radius**2 + 3 * a * a / 4) / 2
        return Moments(v, 0.0, 0.0, 0.0, across, across, v * a * a / 4)
    if "screw" in shape.kind and "thread_dia" in sizes:
        return _screw_moments(shape, sizes)
    long = next(
        (sizes[name] for name in ("length", "thickness", "width", "wide", "height") if name in sizes), 0.0
    )
    inside = sizes.get("inside", sizes.get("thread_dia", 0.0))
    outside = sizes.get("outside", sizes.get("dia", 0.0))
    body = _hexagon(sizes["across_flats"], long) if "across_flats" in sizes else rod(outside, 0.0, long)
    if not long or body.volume <= 0:
        known = ", ".join(sizes) or "nothing"
        raise Refusal(
            f"{shape.designation} has no envelope to weigh: its figures are {known}.",
            "Give outside (or dia or across_flats) and length (or thickness or width).",
        )
    return body - rod(inside, 0.0, long)


def _screw_moments(shape: BoughtShape, sizes: dict[str, float]) -> Moments:
    dia, long, high = sizes["thread_dia"], sizes["length"], sizes.get("head_height", 0.0)
    if "countersunk" in shape.kind:
        head = sizes["head_dia"] / 2
        corners = [(0.0, 0.0), (0.0, head), (high, dia / 2), (long, dia / 2), (long, 0.0)]
        return ring_of_revolution(corners)
    shank = rod(dia, 0.0, long)
    if "across_flats" in sizes:
        return shank + _hexagon(sizes["across_flats"], high).shifted(dz=-high)
    return shank + rod(sizes["head_dia"], -high, 0.0) if high else shank


def _hexagon(across: float, high: float) -> Moments:
    area = math.sqrt(3) / 2 * across**2
    second = 5 * math.sqrt(3) / 144 * across**4  # the same about every axis through the middle
    return Moments(
        area * high, 0.0, 0.0, area * high**2 / 2, second * high, second * high, area * high**3 / 3
    )
