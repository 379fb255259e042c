"""Look-up "adhesive": a class of adhesive, or a solder."""

from __future__ import annotations

from collections.abc import Mapping

from tommybar.facts.adhesives.bonding import Adhesive, adhesive, adhesive_names
from tommybar.facts.adhesives.joints import axial_holding_force, holding_torque
from tommybar.facts.adhesives.solders import Solder, solder, solder_names
from tommybar.facts.answer import Answer, Row
from tommybar.facts.keyed import number
from tommybar.facts.spans import span_rows
from tommybar.refusals import Refusal, nearest


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """An adhesive or a solder: ``adhesive cyanoacrylate``, ``adhesive "silver solder"``.

    Parameters
    ----------
    keys : tuple[str, ...]
        Name of the class or of the solder [-]
    options : Mapping[str, str]
        "diameter" and "length" of a sleeve joint [mm]: adds what it holds

    Returns
    -------
    Answer
        Gaps [mm], strengths [MPa], temperatures [C], times [s], [h]

    Raises
    ------
    Refusal
        If there is no such adhesive or solder.

    Examples
    --------
    >>> answer(("shellac",), {}).data["release_c"]
    [65.0, 85.0]

    References
    ----------
    source: facts/adhesives/bonding.toml and solders.toml.
    """
    name = " ".join(keys).strip()
    found: Adhesive | Solder
    try:
        found = adhesive(name)
    except Refusal:
        try:
            found = solder(name)
        except Refusal:
            known = (*adhesive_names(), *solder_names())
            raise Refusal(
                f'The adhesive or solder is "{name}"; the tables have {", ".join(known)}.',
                nearest(name, known),
            ) from None
    rows = [*span_rows("gap", *found.gap, "mm", 2), *span_rows("shear strength", *found.shear, "MPa", 0)]
    data: dict[str, object] = {
        "name": found.name,
        "other_names": list(found.other_names),
        "gap_mm": list(found.gap),
        "shear_mpa": list(found.shear),
    }
    if isinstance(found, Adhesive):
        rows += [
            *span_rows("largest gap", *found.largest, "mm", 2),
            *span_rows("service", *found.service, "C", 0),
            *span_rows("lets go at", *found.release, "C", 0),
            *span_rows("can be handled after", *found.fixture, "s", 0),
            *span_rows("full strength after", *found.cure, "h", 1),
            Row("solvent", text=found.solvent),
        ]
        data |= {
            "largest_gap_mm": list(found.largest),
            "service_c": list(found.service),
            "special_limit_c": found.special_limit,
            "glass_transition_c": list(found.glass),
            "release_c": list(found.release),
            "fixture_s": list(found.fixture),
            "cure_h": list(found.cure),
            "roughness_um": list(found.roughness),
            "solvent": found.solvent,
        }
    else:
        rows += [
            *span_rows("melts", *found.melting, "C", 0),
            Row("service up to", found.service, "C", 0),
            Row("flux", text=found.flux),
        ]
        data |= {"melting_c": list(found.melting), "service_c": found.service, "flux": found.flux}
    if "diameter" in options and "length" in options:
        diameter, length = number(options["diameter"], "diameter"), number(options["length"], "length")
        force = axial_holding_force(diameter, length, found.shear[0])
        torque = holding_torque(diameter, length, found.shear[0])
        rows += [Row("holds along, low strength", force, "N", 0), Row("holds in torque", torque, "N m", 2)]
        data |= {"holding_force_n": force, "holding_torque_nm": torque}
    data |= {"cautions": list(found.cautions), "source": found.source}
    return Answer("adhesive", name, found.name, tuple(rows), found.source, data, found.cautions)
