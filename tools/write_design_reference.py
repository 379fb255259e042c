"""Write docs/design-reference.md: every key of the design file, from its schema."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from tommybar.design import design_schema

PLACE = Path(__file__).resolve().parents[1] / "docs" / "design-reference.md"
HEADINGS = {
    "WrittenSize": "A named size",
    "WrittenMust": "A must-line",
    "WrittenPart": "A part",
    "WrittenTurned": "turned",
    "WrittenLand": "A land: an entry of outside",
    "WrittenGroove": "A groove",
    "WrittenBore": "A bore",
    "WrittenBoreTaper": "A conical bore: an entry of tapers",
    "WrittenBoreGroove": "A groove in a bore",
    "WrittenCup": "A cup or countersink",
    "WrittenCentre": "A centre hole",
    "WrittenRecess": "A recess",
    "WrittenFaceGroove": "A groove in a face",
    "WrittenCircle": "Holes on a circle: an entry of holes of a turned part",
    "WrittenCross": "A cross hole",
    "WrittenCone": "A taper: cone of a land",
    "WrittenPoint": "A point",
    "WrittenDome": "A dome",
    "WrittenBall": "A ball",
    "WrittenCurve": "A cove or a fillet land",
    "WrittenOgee": "An ogee",
    "WrittenCrown": "A crown",
    "WrittenThrow": "An eccentric land",
    "WrittenKnurl": "A knurl",
    "WrittenFlats": "Flats",
    "WrittenHeadSlot": "A head slot",
    "WrittenCrossSlot": "A cross slot",
    "WrittenKeyway": "A keyway",
    "WrittenBoreKeyway": "A keyway in a bore",
    "WrittenSlit": "A slit",
    "WrittenEngraving": "A scale: an entry of engravings",
    "WrittenPlate": "plate",
    "WrittenPlateHole": "A hole of a plate",
    "WrittenRow": "A row of holes",
    "WrittenGrid": "A grid of holes",
    "WrittenRound": "A circle of holes of a plate",
    "WrittenOutline": "An outline",
    "WrittenBoss": "A boss of an outline",
    "WrittenSlot": "A slot of a plate",
    "WrittenPocket": "A pocket of a plate",
    "WrittenStep": "A step of a plate",
    "WrittenVee": "A vee of a plate",
    "WrittenDovetail": "A dovetail of a plate",
    "WrittenPlateEdge": "An edge of a plate",
    "WrittenPlateSlit": "A slit of a plate",
    "WrittenPlateEngraving": "Engraving on a plate",
    "WrittenRays": "Lines that radiate: an entry of rays",
    "WrittenBlock": "block",
    "WrittenSheet": "sheet",
    "WrittenBend": "A bend of sheet",
    "WrittenRing": "ring",
    "WrittenSpring": "spring",
    "WrittenWire": "wire",
    "WrittenWireBend": "A bend of wire",
    "WrittenBought": "A bought part with its own figures",
    "WrittenBench": "Work at the bench",
    "WrittenNeed": "A run-out need",
    "WrittenFit": "A fit",
    "WrittenLoop": "A loop of lengths",
    "WrittenScrew": "A screw",
    "WrittenPattern": "A pattern that must coincide",
    "WrittenRunout": "A run-out between parts",
    "WrittenSquare": "Square or parallel",
    "WrittenClocking": "An angle between features",
    "WrittenThread": "A thread in a thread",
    "WrittenPress": "A press joint",
    "WrittenBond": "A bonded joint",
    "WrittenSolder": "A soldered joint",
    "WrittenPin": "A pin or key",
    "WrittenContact": "A contact",
    "WrittenBelt": "A belt",
    "WrittenPivot": "A pivot",
    "WrittenSweep": "A clearance of what moves",
    "WrittenAlike": "Made alike",
    "WrittenSeat": "The seat of a bought part",
    "WrittenStands": "Where a piece stands",
    "WrittenFlush": "Kept flush",
    "WrittenPurpose": "A purpose",
}


def reference() -> str:
    """The whole page."""
    schema = design_schema()
    parts = [
        "# The keys of the design file",
        "Made from the schema by `tools/write_design_reference.py`; do not edit it here."
        " What the keys are for is told in [The design file](design-files.md).",
        "## The file",
        _table(schema),
    ]
    for name, heading in HEADINGS.items():
        definition = schema["$defs"][name]
        parts += [f"## {heading}", _plain(definition.get("description", "")), _table(definition)]
    return "\n\n".join(part for part in parts if part) + "\n"


def _table(definition: dict[str, Any]) -> str:
    wanted = set(definition.get("required", ()))
    rows = ["| key | what it holds | | |", "|---|---|---|---|"]
    for key, one in definition["properties"].items():
        need = "must be there" if key in wanted else _left_out(one)
        rows.append(f"| `{key}` | {_kind(one)} | {need} | {_plain(one.get('description', ''))} |")
    return "\n".join(rows)


def _left_out(one: dict[str, Any]) -> str:
    default = one.get("default")
    if isinstance(default, bool):
        return f"left out: {str(default).lower()}"
    return f"left out: {default}" if isinstance(default, str) and default else ""


def _kind(one: dict[str, Any]) -> str:
    if "$ref" in one:
        return HEADINGS[one["$ref"].rpartition("/")[2]].partition(":")[0].lower()
    if "const" in one:
        return str(one["const"])
    if "enum" in one:
        return " or ".join(f"`{value}`" for value in one["enum"] if value != "")
    options = one.get("anyOf") or one.get("oneOf")
    if options:
        kinds = list(dict.fromkeys(_kind(option) for option in options))
        return "figure or expression" if set(kinds) == {"number", "text"} else " or ".join(kinds)
    if one.get("type") == "array":
        if "prefixItems" in one:
            return f"list of {len(one['prefixItems'])}: {_kind(one['prefixItems'][0])}"
        return f"list: {_kind(one['items'])}"
    if one.get("type") == "object":
        more = one.get("additionalProperties")
        return f"names, each {_kind(more)}" if isinstance(more, dict) else "keys"
    return {"string": "text", "boolean": "`true` or `false`"}.get(one.get("type", ""), one.get("type", ""))


def _plain(words: str) -> str:
    return " ".join(words.replace("``", "`").replace("|", "or").split())


if __name__ == "__main__":
    PLACE.write_text(reference(), encoding="utf-8")
    print(PLACE)
