"""Look-up "fastener": clearance holes, screws, nuts, washers, bearings, circlips, pins, keys, O-rings."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from tommybar.facts.answer import Answer, Row
from tommybar.facts.fasteners.bearings import bearing
from tommybar.facts.fasteners.circlips import circlip
from tommybar.facts.fasteners.clearance import CLEARANCES, clearance_hole, clearance_source
from tommybar.facts.fasteners.drivers import hexagon_key, open_spanner, screwdriver, socket_spanner
from tommybar.facts.fasteners.keys import key_for_shaft
from tommybar.facts.fasteners.nuts import nut, washer
from tommybar.facts.fasteners.o_rings import o_ring, o_ring_groove
from tommybar.facts.fasteners.pins import parallel_pin
from tommybar.facts.fasteners.screws import SCREWS, screw_head, standard_screw_lengths
from tommybar.facts.keyed import number
from tommybar.refusals import Refusal, nearest

Lines = list[tuple[str, str, float | tuple[float, ...], str]]  # label, key in --json, figure, unit
Told = tuple[str, Lines, str]  # title, lines, source


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """A standard part: ``fastener M5``, ``fastener nut M6``, ``fastener bearing 608``.

    Parameters
    ----------
    keys : tuple[str, ...]
        A size alone, or a kind and a size: clearance, nut, washer, bearing,
        circlip, pin, key, woodruff, o-ring, hexagon-key, spanner,
        screwdriver, or a screw standard such as "ISO 4762" [-]
    options : Mapping[str, str]
        None is used [-]

    Returns
    -------
    Answer
        Dimensions of the part and of its seat [mm]

    Raises
    ------
    Refusal
        If the kind or the size is not in the tables.

    Examples
    --------
    >>> answer(("nut", "M6"), {}).data["across_flats_mm"]
    10.0

    References
    ----------
    source: the part's data file in facts/fasteners, named in the answer.
    """
    words = " ".join(keys).split()
    if not words:
        raise Refusal("The look-up fastener has no name; it needs one.", "For example: fastener M5.")
    key = " ".join(words)
    if words[0].upper() == "ISO" and len(words) > 2:
        told = _screw(" ".join(words[:2]).upper(), " ".join(words[2:]))
    elif len(words) == 1:
        told = _by_size(key)
    elif words[0].lower() in KINDS:
        told = KINDS[words[0].lower()](" ".join(words[1:]))
    else:
        raise Refusal(
            f'There is no kind "{words[0]}"; the kinds are {", ".join(KINDS)} and {", ".join(SCREWS)}.',
            nearest(words[0].lower(), KINDS),
        )
    title, lines, source = told
    rows = tuple(row for line in lines for row in _rows(line))
    data: dict[str, object] = {
        name: list(figure) if isinstance(figure, tuple) else figure for _, name, figure, _ in lines
    }
    return Answer("fastener", key, title, rows, source, {**data, "source": source})


def _rows(line: tuple[str, str, float | tuple[float, ...], str]) -> list[Row]:
    label, _, figure, unit = line
    if not isinstance(figure, tuple):
        return [Row(label, figure, unit, 2)]
    if len(figure) == 2:
        return [Row(f"{label}, least", figure[0], unit, 3), Row(f"{label}, most", figure[1], unit, 3)]
    return [Row(label, text=f"{', '.join(f'{one:g}' for one in figure)} {unit}")]


def _by_size(size: str) -> Told:
    """Everything that belongs to one screw size."""
    title, lines, source = _clearance(size)
    sources = [source]
    for _, more, source in (_screw("ISO 4762", size), _nut(size), _washer(size)):
        lines += more
        sources.append(source)
    return title.replace("Clearance holes for", "Screws of"), lines, "; ".join(sources)


def _clearance(size: str) -> Told:
    lines: Lines = [
        (f"clearance hole, {fit}", f"clearance_{fit}_mm", clearance_hole(size, fit), "mm")
        for fit in CLEARANCES
    ]
    return f"Clearance holes for {size}", lines, str(clearance_source())


def _screw(standard: str, size: str) -> Told:
    head = screw_head(standard, size)
    lines: Lines = [
        ("head diameter", "head_diameter_mm", head.diameter, "mm"),
        ("head height", "head_height_mm", head.height, "mm"),
    ]
    if head.key is not None:
        lines.append(("key", "key_mm", head.key, "mm"))
    lines.append(("lengths", "lengths_mm", standard_screw_lengths(standard, size), "mm"))
    return f"{standard} {head.size}", lines, str(head.source)


def _nut(size: str) -> Told:
    one = nut(size)
    return (
        f"{one.standard} nut {one.size}",
        [
            ("nut across flats", "across_flats_mm", one.across_flats, "mm"),
            ("nut height", "nut_height_mm", one.height, "mm"),
        ],
        str(one.source),
    )


def _washer(size: str) -> Told:
    one = washer(size)
    return (
        f"{one.standard} washer {one.size}",
        [
            ("washer inside", "washer_inside_mm", one.inside, "mm"),
            ("washer outside", "washer_outside_mm", one.outside, "mm"),
            ("washer thickness", "washer_thickness_mm", one.thickness, "mm"),
        ],
        str(one.source),
    )


def _bearing(name: str) -> Told:
    one = bearing(name)
    return (
        f"Deep-groove bearing {one.number}",
        [
            ("bore", "bore_mm", one.bore, "mm"),
            ("outside diameter", "outside_mm", one.outside, "mm"),
            ("width", "width_mm", one.width, "mm"),
            ("width with shields", "width_shielded_mm", one.width_shielded, "mm"),
            ("bore deviation", "bore_deviation_um", one.bore_deviation, "um"),
            ("outside deviation", "outside_deviation_um", one.outside_deviation, "um"),
            ("radial play", "radial_play_um", one.radial_play, "um"),
        ],
        str(one.source),
    )


def _circlip(name: str) -> Told:
    one = circlip(name)
    return (
        f"{one.standard} circlip, {one.kind} {one.diameter:g} mm",
        [
            ("ring thickness", "thickness_mm", one.thickness, "mm"),
            ("groove diameter", "groove_diameter_mm", one.groove_diameter, "mm"),
            ("groove width, least", "groove_width_mm", one.groove_width, "mm"),
            ("land outside the groove, least", "edge_mm", one.edge, "mm"),
        ],
        str(one.source),
    )


def _pin(name: str) -> Told:
    one = parallel_pin(number(name, "diameter of the pin"))
    lines: Lines = [
        ("diameter, m6", "diameter_mm", one.diameter, "mm"),
        ("lengths", "lengths_mm", one.lengths, "mm"),
    ]
    return f"Parallel pin {one.diameter:g} mm", lines, str(one.source)


def _key(name: str, kind: str = "parallel") -> Told:
    one = key_for_shaft(number(name, "diameter of the shaft"), kind)
    lines: Lines = [
        ("width", "width_mm", one.width, "mm"),
        ("height", "height_mm", one.height, "mm"),
        ("depth in the shaft", "shaft_depth_mm", one.shaft_depth, "mm"),
        ("depth in the hub", "hub_depth_mm", one.hub_depth, "mm"),
    ]
    if one.disc is not None:
        lines.append(("disc", "disc_mm", one.disc, "mm"))
    return f"{one.standard} key for a shaft of {name} mm", lines, str(one.source)


def _woodruff(name: str) -> Told:
    return _key(name, "woodruff")


def _o_ring(name: str) -> Told:
    one = o_ring(name)
    still, moving = o_ring_groove(one.section), o_ring_groove(one.section, "moving")
    return (
        f"O-ring {one.name}",
        [
            ("inside diameter", "inside_mm", one.inside, "mm"),
            ("section", "section_mm", one.section, "mm"),
            ("groove depth, static", "groove_static_mm", still.depth, "mm"),
            ("groove depth, moving", "groove_moving_mm", moving.depth, "mm"),
            ("groove width", "groove_width_mm", still.width, "mm"),
        ],
        str(one.source),
    )


def _hexagon_key(name: str) -> Told:
    one = hexagon_key(number(name, "size across flats of the key"))
    return (
        f"Hexagon key {name} mm",
        [
            ("across corners, most", "corners_mm", one.corners, "mm"),
            ("long arm", "long_arm_mm", one.long, "mm"),
            ("short arm", "short_arm_mm", one.short, "mm"),
        ],
        str(one.source),
    )


def _spanner(name: str) -> Told:
    across = number(name, "size across flats of the spanner")
    jaws, socket = open_spanner(across), socket_spanner(across)
    return (
        f"Spanner and socket {name} mm",
        [
            ("width over the jaws", "jaws_mm", jaws.width, "mm"),
            ("thickness", "thickness_mm", jaws.thick, "mm"),
            ("length", "length_mm", jaws.length, "mm"),
            ("socket outside", "socket_outside_mm", socket.outside, "mm"),
            ("socket length", "socket_length_mm", socket.length, "mm"),
        ],
        str(jaws.source),
    )


def _screwdriver(name: str) -> Told:
    one = screwdriver(name)
    return (
        f"Screwdriver for a slot of {name}",
        [
            ("width of the tip", "tip_mm", one.tip, "mm"),
            ("blade", "blade_mm", one.blade, "mm"),
            ("handle", "handle_mm", one.handle, "mm"),
        ],
        str(one.source),
    )


KINDS: Mapping[str, Callable[[str], Told]] = {
    "clearance": _clearance,
    "nut": _nut,
    "washer": _washer,
    "bearing": _bearing,
    "circlip": _circlip,
    "pin": _pin,
    "key": _key,
    "woodruff": _woodruff,
    "o-ring": _o_ring,
    "hexagon-key": _hexagon_key,
    "spanner": _spanner,
    "screwdriver": _screwdriver,
}
