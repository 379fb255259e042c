"""Cutting speed: what a material, a tool and an operation stand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from tommybar.facts.lines import read_lines
from tommybar.facts.materials import material
from tommybar.facts.table import read_table
from tommybar.refusals import Refusal, nearest

_HERE = Path(__file__).parent
TOOL_MATERIALS = ("HSS", "carbide")


@dataclass(frozen=True)
class SpeedRange:
    """Cutting speed from cautious to brisk, and where it comes from."""

    low: float  # [m/min]
    high: float  # [m/min]
    source: str
    note: str = ""


def cutting_speed(material_name: str, tool_material: str, operation: str) -> SpeedRange:
    """Cutting speed for a material, a tool and an operation.

    The base speed of turning, drilling or milling stands in a table by kind of
    material; an operation that the tool stands less well takes a part of it.
    Carbide keeps its own turning speed; in drilling and milling it is taken in
    the same proportion to high-speed steel as in turning.

    Parameters
    ----------
    material_name : str
        Any name that :func:`tommybar.facts.materials.material` knows [-]
    tool_material : str
        "HSS" or "carbide" [-]
    operation : str
        "turning", "facing", "boring", "parting", "drilling" ... [-]

    Returns
    -------
    SpeedRange
        Low and high cutting speed [m/min], at the largest diameter in the cut.

    Raises
    ------
    Refusal
        If a name is not known, or carbide is asked for an operation that a
        small shop does with high-speed steel only.

    Notes
    -----
    For small machines, sharp tools and a drop of oil where the material wants
    it. Start low, go up while the chip and the finish stay good.

    Examples
    --------
    >>> speed = cutting_speed("mild steel", "HSS", "turning")
    >>> speed.low, speed.high
    (25.0, 35.0)
    >>> cutting_speed("mild steel", "HSS", "parting").high
    17.5

    References
    ----------
    source: common practice of small shops, held between a university hand-out
    and a university tutorial on speeds for high-speed steel (both seen).
    """
    if tool_material not in TOOL_MATERIALS:
        raise Refusal(
            f'The tool material is "{tool_material}"; the speed table has HSS and carbide.',
            nearest(tool_material, TOOL_MATERIALS) or "Say HSS or carbide.",
        )
    kind = material(material_name).cutting_family
    base = _bases()[kind]
    part = _operations()[operation_name(operation)]
    over = 1.0, 1.0
    if tool_material == "carbide":
        if not part["carbide"]:
            raise Refusal(
                f"The operation is {part['operation']} with carbide; the table has it for HSS only.",
                "Use the HSS figure: these tools are high-speed steel in a small shop.",
            )
        over = base["carbide_low"] / base["turning_low"], base["carbide_high"] / base["turning_high"]
    source, _ = read_lines(_HERE / "speeds.toml")
    factors, _ = read_lines(_HERE / "operations.toml")
    full = part["low"] == part["high"] == 1.0
    return SpeedRange(
        low=base[part["base"] + "_low"] * over[0] * part["low"],
        high=base[part["base"] + "_high"] * over[1] * part["high"],
        source=str(source) if full else f"{source}; {factors}",
        note=part["note"],
    )


def operation_name(word: str) -> str:
    """The table's own name of an operation.

    Parameters
    ----------
    word : str
        The operation in the reader's words, e.g. "part off" [-]

    Returns
    -------
    str
        Its name in the table [-]

    Raises
    ------
    Refusal
        If it is not known; the nearest name is offered.

    Examples
    --------
    >>> operation_name("part off")
    'parting'

    References
    ----------
    source: trade words, common practice.
    """
    others: Mapping[str, str] = read_table(_HERE / "operations.toml").figures["other_names"]
    plain = " ".join(word.casefold().split())
    name = others.get(plain, plain)
    if name not in _operations():
        raise Refusal(
            f'The operation is "{word}"; the speed table has {", ".join(_operations())}.',
            nearest(plain, (*_operations(), *others)),
        )
    return name


def operation_names(tool_material: str = "HSS") -> tuple[str, ...]:
    """Operations that have a speed.

    Parameters
    ----------
    tool_material : str
        "HSS" or "carbide" [-]

    Returns
    -------
    tuple[str, ...]
        Their names, in the order of the table [-]

    Examples
    --------
    >>> "knurling" in operation_names("carbide")
    False

    References
    ----------
    source: common practice of small shops.
    """
    return tuple(name for name, part in _operations().items() if tool_material == "HSS" or part["carbide"])


@cache
def _bases() -> Mapping[str, Mapping[str, Any]]:
    _, lines = read_lines(_HERE / "speeds.toml")
    return {line["family"]: line for line in lines}


@cache
def _operations() -> Mapping[str, Mapping[str, Any]]:
    _, lines = read_lines(_HERE / "operations.toml")
    return {line["operation"]: line for line in lines}
