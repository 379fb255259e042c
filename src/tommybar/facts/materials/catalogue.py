"""Finding a material by any of its names."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from tommybar.facts.lines import read_lines
from tommybar.facts.materials.record import CuttingGroup, Material, Temper
from tommybar.facts.table import read_table
from tommybar.refusals import Refusal, nearest

_HERE = Path(__file__).parent


def material(name: str) -> Material:
    """Figures of the material that bears a name.

    Any trade name, EN, BS or UNS designation will do; case, blanks and dashes
    do not matter.

    Parameters
    ----------
    name : str
        Trade name or designation, e.g. "mild steel", "CW614N", "C36000" [-]

    Returns
    -------
    Material
        Its record: density [g/cm3], modulus and strengths [MPa], expansion
        [1e-6/K] and what else stands in :class:`Material`.

    Raises
    ------
    Refusal
        If no material bears that name; the nearest name is offered.

    Notes
    -----
    Typical room-temperature figures: density to 1.5 %, modulus to 5 %,
    strengths to 20 % unless a minimum is named. Not for parts on which a life
    depends.

    Examples
    --------
    >>> material("C36000").name
    'free-cutting brass'
    >>> material("mild steel").density
    7.86

    References
    ----------
    The record's ``source`` names title, table and how each was checked.
    """
    found = _by_key().get(_key(name))
    if found is None:
        known = [one for record in _records() for one in (record.name, *record.designations)]
        offer = nearest(name, known) or "Ask for one of: " + ", ".join(material_names()) + "."
        raise Refusal(
            f'The material is "{name}"; the table facts/materials knows {len(_records())} and not that.',
            offer,
        )
    return found


def material_names(family: str = "") -> tuple[str, ...]:
    """Names of the materials in the table.

    Parameters
    ----------
    family : str
        Only this family, e.g. "brass"; all when empty [-]

    Returns
    -------
    tuple[str, ...]
        Names in the order of the table [-]

    Raises
    ------
    Refusal
        If there is no such family.

    Examples
    --------
    >>> material_names("titanium")
    ('titanium grade 2', 'titanium grade 5')

    References
    ----------
    The order and the families are ours; source of the figures: :func:`material`.
    """
    families = {record.family for record in _records()}
    if family and family not in families:
        raise Refusal(
            f'The family is "{family}"; the families of facts/materials are {", ".join(sorted(families))}.',
            nearest(family, families),
        )
    return tuple(record.name for record in _records() if family in ("", record.family))


def cutting_group(number: str) -> CuttingGroup:
    """Specific cutting force of one group of materials.

    Parameters
    ----------
    number : str
        Number of the VDI 3323 group, e.g. "14", or "plastic", "laminate",
        "magnesium" [-]

    Returns
    -------
    CuttingGroup
        kc11 [MPa] and mc [-] of the group.

    Raises
    ------
    Refusal
        If there is no such group in the table.

    Examples
    --------
    Grey cast iron at a chip of 0.1159 mm needs 1769.6 MPa:

    >>> group = cutting_group("15")
    >>> round(group.kc11 * 0.115911**-group.mc, 1)
    1769.6

    References
    ----------
    VDI 3323 material groups, as reprinted in trade catalogues (seen in part).
    """
    groups = _groups()
    if number not in groups:
        raise Refusal(
            f'The cutting group is "{number}"; the table of VDI 3323 groups here has {", ".join(groups)}.',
            "Take the group of the material: material(name).cutting_group.",
        )
    return groups[number]


@cache
def _records() -> tuple[Material, ...]:
    _, lines = read_lines(_HERE / "figures.toml")
    return tuple(_record(line) for line in lines)


@cache
def _by_key() -> Mapping[str, Material]:
    found: dict[str, Material] = {}
    for record in _records():
        for name in record.designations:
            found.setdefault(_key(name), record)
    found.update({_key(record.name): record for record in _records()})
    return found


@cache
def _sources() -> Mapping[str, str]:
    _, lines = read_lines(_HERE / "sources.toml")
    return {line["key"]: f"{line['title']} ({line['checked']})" for line in lines}


@cache
def _groups() -> Mapping[str, CuttingGroup]:
    source, lines = read_lines(_HERE / "cutting_groups.toml")
    return {
        line["group"]: CuttingGroup(
            number=line["group"],
            stuff=line["stuff"],
            kc11=float(line["kc11_mpa"]),
            mc=line["mc"],
            source=f"{source.title}, {source.table} ({line['checked']})",
        )
        for line in lines
    }


def _tempers(name: str) -> tuple[Temper, ...]:
    _, lines = read_lines(_HERE / "conditions.toml")
    return tuple(
        Temper(
            name=line["condition"],
            kind=line["kind"],
            yield_strength=(float(line["yield_low_mpa"]), float(line["yield_high_mpa"])),
            tensile_strength=(float(line["tensile_low_mpa"]), float(line["tensile_high_mpa"])),
            source=f"{_sources()[line['source']].rpartition(' (')[0]} ({line['checked']})",
        )
        for line in lines
        if line["material"] == name
    )


def _record(line: Mapping[str, Any]) -> Material:
    name = line["name"]
    words = read_table(_HERE / "names.toml").figures[name]
    hazards = read_table(_HERE / "hazards.toml").figures
    details = read_table(_HERE / "details.toml").figures
    group = cutting_group(line["cutting_group"])
    low, high = details["hardness_hb"].get(name, (0, 0))
    cited = dict.fromkeys(_sources()[line[key]] for key in ("physical", "strength", "machining"))
    return Material(
        name=name,
        designations=tuple(words["designations"]),
        family=line["family"],
        density=float(line["density_g_cm3"]),
        modulus=1000.0 * line["modulus_gpa"],
        poisson=line["poisson"],
        yield_strength=float(line["yield_mpa"]),
        tensile_strength=float(line["tensile_mpa"]),
        compressive_strength=float(details["compressive_mpa"].get(name, 0)),
        expansion=float(line["expansion_e6_k"]),
        heat_capacity=float(line["heat_capacity_j_kgk"]),
        conductivity=float(line["conductivity_w_mk"]),
        melting=(float(line["solidus_c"]), float(line["liquidus_c"])),
        machinability=float(line["machinability"]),
        machinability_base=line["machinability_base"],
        kc11=group.kc11,
        mc=group.mc,
        cutting_group=group.number,
        cutting_family=line["cutting_family"],
        magnetic=line["magnetic"],
        tell=words["tell"],
        look_alikes=tuple(words["look_alikes"]),
        hazards=tuple(words["hazards"]),
        cautions=tuple(hazards[word] for word in words["hazards"]),
        hardness=(float(low), float(high)),
        tempers=_tempers(name),
        composition=tuple(tuple(part) for part in details["composition"].get(name, ())),
        hardening=tuple(map(float, details["hardening_c"].get(name, (0, 0)))),
        water_absorption=float(details["water_percent"].get(name, 0)),
        source="; ".join((*cited, group.source)),
    )


def _key(name: str) -> str:
    return "".join(letter for letter in name.casefold() if letter not in " -_/.")
