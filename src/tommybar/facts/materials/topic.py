"""Look-up "material": figures of a material, a pair that rubs, or what an offcut may be."""

from __future__ import annotations

from collections.abc import Mapping

from tommybar.facts.answer import Answer, Row
from tommybar.facts.keyed import number
from tommybar.facts.materials.catalogue import material
from tommybar.facts.materials.likeness import likely_materials
from tommybar.facts.materials.pairs import may_run_together
from tommybar.refusals import Refusal


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """A material: ``material CW614N``; a pair: ``material brass --on "silver steel"``.

    Parameters
    ----------
    keys : tuple[str, ...]
        Name or designation [-]; none when a density is asked about
    options : Mapping[str, str]
        "on" (what it is to run on), or "density" of an offcut [g/cm3] with
        "within" [%] and "magnet" ("yes" or "no")

    Returns
    -------
    Answer
        Density [g/cm3], modulus and strengths [MPa], expansion [1e-6/K] ...

    Raises
    ------
    Refusal
        If the name is not known or nothing was asked.

    Examples
    --------
    >>> found = answer(("CW614N",), {}).data
    >>> found["name"], found["density_g_cm3"]
    ('free-cutting brass', 8.47)

    References
    ----------
    source: facts/materials, each figure group with its own source.
    """
    name = " ".join(keys).strip()
    if "density" in options:
        return _likely(options)
    if not name:
        raise Refusal(
            "The look-up material has no name; it needs one.", 'For example: material "mild steel".'
        )
    if "on" in options:
        return _pair(name, options["on"])
    found = material(name)
    data: dict[str, object] = {
        "name": found.name,
        "designations": list(found.designations),
        "family": found.family,
        "density_g_cm3": found.density,
        "modulus_mpa": found.modulus,
        "poisson": found.poisson,
        "shear_modulus_mpa": found.shear_modulus,
        "yield_strength_mpa": found.yield_strength,
        "tensile_strength_mpa": found.tensile_strength,
        "compressive_strength_mpa": found.compressive_strength,
        "hardness_hb": list(found.hardness),
        "expansion_um_m_k": found.expansion,
        "heat_capacity_j_kg_k": found.heat_capacity,
        "conductivity_w_m_k": found.conductivity,
        "melting_c": list(found.melting),
        "machinability_percent": found.machinability,
        "machinability_base": found.machinability_base,
        "kc11_mpa": found.kc11,
        "mc": found.mc,
        "cutting_group": found.cutting_group,
        "magnetic": found.magnetic,
        "tell": found.tell,
        "look_alikes": list(found.look_alikes),
        "hazards": list(found.hazards),
        "tempers": [
            {
                "name": temper.name,
                "kind": temper.kind,
                "yield_mpa": list(temper.yield_strength),
                "tensile_mpa": list(temper.tensile_strength),
                "source": temper.source,
            }
            for temper in found.tempers
        ],
        "source": found.source,
    }
    rows = [
        Row("density", found.density, "g/cm3", 3),
        Row("modulus of elasticity", found.modulus, "MPa", 0),
        Row("Poisson's ratio", found.poisson, "", 2),
        Row("yield or 0.2 % proof", found.yield_strength, "MPa", 0),
        Row("tensile strength", found.tensile_strength, "MPa", 0),
        Row("expansion", found.expansion, "1e-6/K", 1),
        Row("heat capacity", found.heat_capacity, "J/kg K", 0),
        Row("heat conductivity", found.conductivity, "W/m K", 1),
        Row("melts", text=_melts(found.melting)),
        Row("specific cutting force kc1.1", found.kc11, "MPa", 0),
        Row("exponent mc", found.mc, "", 2),
        Row("magnet", text=found.magnetic),
        Row("how to tell", text=found.tell),
        Row("also called", text=", ".join(found.designations)),
        Row("look-alikes", text=", ".join(found.look_alikes) or "none"),
    ]
    if found.machinability:
        words = f"{found.machinability:g} % of {found.machinability_base}"
        rows.insert(9, Row("machinability", text=words))
    return Answer("material", name, found.name, tuple(rows), found.source, data, found.cautions)


def _pair(name: str, other: str) -> Answer:
    found = may_run_together(name, other)
    names = material(name).name, material(other).name
    rows = (Row("verdict", text=found.verdict), Row("because", text=found.reason))
    data = {"pair": list(names), "verdict": found.verdict, "reason": found.reason, "source": found.source}
    return Answer("material", f"{name} on {other}", " on ".join(names), rows, found.source, data)


def _likely(options: Mapping[str, str]) -> Answer:
    density = number(options["density"], "density")
    within = number(options.get("within", "2"), "band")
    said = options.get("magnet", "")
    if said not in ("", "yes", "no"):
        raise Refusal(f'The magnet is "{said}"; it says yes or no.', "Leave it out when not tried.")
    found = likely_materials(density, within, {"yes": True, "no": False}.get(said))
    source = "densities of facts/materials"
    rows = tuple(Row(one.name, one.density, "g/cm3", 3) for one in found)
    data = {
        "density_g_cm3": density,
        "likely": [
            {"name": one.name, "density_g_cm3": one.density, "off_percent": one.off, "tell": one.tell}
            for one in found
        ],
        "source": source,
    }
    hazards = sorted(
        {hazard for one in found for hazard in one.hazards if hazard in ("beryllium", "magnesium fire")}
    )
    cautions = tuple(f"It may be {hazard}: make sure before cutting." for hazard in hazards)
    title = f"What {density:g} g/cm3 may be" if found else f"Nothing in the table is near {density:g} g/cm3"
    return Answer("material", options["density"], title, rows, source, data, cautions)


def _melts(melting: tuple[float, float]) -> str:
    low, high = melting
    return f"{low:g} to {high:g} C" if high else "does not melt: it chars"
