"""Feed: how far the tool goes in one turn."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from tommybar.facts.cutting.speeds import operation_name
from tommybar.facts.lines import read_lines
from tommybar.facts.materials import material
from tommybar.facts.table import read_table
from tommybar.refusals import Refusal, nearest

_FILE = Path(__file__).parent / "feeds.toml"
STAGES = ("roughing", "finishing")


@dataclass(frozen=True)
class FeedRange:
    """Feed from fine to coarse, and where it comes from."""

    low: float  # [mm/rev]; milling: [mm] a tooth
    high: float  # [mm/rev]; milling: [mm] a tooth
    source: str


def feed_range(operation: str, tool_material: str, stage: str) -> FeedRange:
    """Feed of an operation on a small machine.

    Parameters
    ----------
    operation : str
        "turning", "facing", "boring", "parting", "milling" ... [-]
    tool_material : str
        "HSS" or "carbide" [-]
    stage : str
        "roughing" or "finishing" [-]

    Returns
    -------
    FeedRange
        Low and high feed [mm/rev]; for milling and slotting [mm] a tooth.

    Raises
    ------
    Refusal
        If the table has no such line. Drilling and reaming go by diameter: see
        :func:`drilling_feed`.

    Examples
    --------
    >>> feed_range("turning", "HSS", "finishing").high
    0.1

    References
    ----------
    source: common practice of small shops.
    """
    name = operation_name(operation)
    source, lines = read_lines(_FILE)
    if stage not in STAGES:
        raise Refusal(
            f'The stage is "{stage}"; the feed table has roughing and finishing.', nearest(stage, STAGES)
        )
    for line in lines:
        if (line["operation"], line["tool_material"], line["stage"]) == (name, tool_material, stage):
            return FeedRange(line["low"], line["high"], str(source))
    held = dict.fromkeys(line["operation"] for line in lines if line["tool_material"] == tool_material)
    raise Refusal(
        f"The feed asked for is {name} with {tool_material}; the table has {', '.join(held) or 'none'}.",
        "Drilling and reaming: ask by the diameter (drilling_feed). Screwcutting: the feed is the pitch.",
    )


def drilling_feed(material_name: str, diameter: float) -> FeedRange:
    """Feed of a twist drill by its diameter.

    Parameters
    ----------
    material_name : str
        Any name that :func:`tommybar.facts.materials.material` knows [-]
    diameter : float
        Drill diameter, 1 to 25 [mm]

    Returns
    -------
    FeedRange
        Half and whole of the table's feed [mm/rev]; a hand-fed small machine
        keeps to the lower.

    Raises
    ------
    Refusal
        If the diameter lies outside 1 to 25 mm.

    Notes
    -----
    Reaming stands two to three times the drilling feed.

    Examples
    --------
    >>> drilling_feed("mild steel", 6.0).high
    0.2
    >>> round(drilling_feed("mild steel", 15.0).high, 3)
    0.33

    References
    ----------
    University tutorial on feeds and speeds for high-speed steel, 6 to 25 mm
    (seen in part); source below 6 mm: common practice.
    """
    block = read_table(_FILE).figures
    diameters: list[float] = block["drilling"]["diameters"]
    if not diameters[0] <= diameter <= diameters[-1]:
        raise Refusal(
            f"The drill is {diameter:g} mm; the table runs from {diameters[0]:g} to {diameters[-1]:g} mm.",
            "Smaller: feed by hand and clear often. Larger: open the hole up in steps.",
        )
    kind = material(material_name).cutting_family
    row = next(row for row, kinds in block["drilling_like"].items() if kind in kinds)
    feeds: list[float] = block["drilling"][row]
    place = next(index for index in range(1, len(diameters)) if diameter <= diameters[index])
    share = (diameter - diameters[place - 1]) / (diameters[place] - diameters[place - 1])
    feed = feeds[place - 1] + share * (feeds[place] - feeds[place - 1])
    return FeedRange(feed / 2, feed, block["drilling"]["source"])
