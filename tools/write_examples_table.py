"""Write the tables of docs/examples.md: which example shows which relation and which feature."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import yaml

from tommybar.design.joints import BENCH_KINDS
from tommybar.design.written_plates import WrittenPlate
from tommybar.design.written_relations import KEYS
from tommybar.design.written_turned import WrittenTurned

ROOT = Path(__file__).resolve().parents[1]
PLACE = ROOT / "docs" / "examples.md"
HEADING = "## Which example shows what\n"
KINDS = ("turned", "plate", "block", "sheet", "ring", "spring", "wire", "bought")
FORMS = ("cone", "point", "dome", "ball", "cove", "fillet", "ogee", "crown", "eccentric", "thread", "knurl")


def examples() -> list[Path]:
    """The folders of the example designs."""
    return sorted(file.parent for file in (ROOT / "examples").glob("*/design.yaml"))


def written(folder: Path) -> dict[str, Any]:
    """A design as its file has it."""
    given: dict[str, Any] = yaml.safe_load((folder / "design.yaml").read_text(encoding="utf-8"))
    return given


def relations_of(folder: Path) -> set[str]:
    """The keys of the relations that a design writes."""
    return {next(key for key in KEYS if key in one) for one in written(folder).get("relations") or []}


def features_of(folder: Path) -> set[str]:
    """Kinds of parts, lists of features, forms of lands and work at the bench that a design writes."""
    found: set[str] = set()
    for part in written(folder)["parts"].values():
        for kind in KINDS:
            shape = part.get(kind)
            if shape is None:
                continue
            found.add(kind)
            if isinstance(shape, dict):
                found |= {name for name in shape if name in vocabulary()}
            if kind == "turned":
                found |= {form for land in shape["outside"] for form in FORMS if form in land}
        found |= {one["work"] for one in part.get("bench", ())}
    return found


def vocabulary() -> set[str]:
    """Every kind of part, list of features, form of a land and work at the bench that a file may have."""
    lists = {
        name
        for of in (WrittenTurned, WrittenPlate)
        for name, field in of.model_fields.items()
        if "tuple[" in str(field.annotation)
    }
    return {*KINDS, *FORMS, *BENCH_KINDS, *lists, "bends", "outline"}


def rows(of: Any) -> dict[str, list[str]]:
    """What is shown, and by which examples, in order."""
    shown: dict[str, list[str]] = {}
    for folder in examples():
        for one in sorted(of(folder)):
            shown.setdefault(one, []).append(folder.name)
    return dict(sorted(shown.items()))


def tables() -> str:
    """The two tables as they stand in the manual."""
    text = HEADING
    for what, of in (("relation", relations_of), ("feature", features_of)):
        text += f"\n| {what} | stands in |\n|---|---|\n"
        text += "".join(
            f"| `{name}` | {', '.join(f'`{one}`' for one in where)} |\n" for name, where in rows(of).items()
        )
    missing = sorted(vocabulary() - set(rows(features_of)))
    return text + f"\nIn no example yet: {', '.join(f'`{one}`' for one in missing)}.\n"


def main() -> None:
    text = PLACE.read_text(encoding="utf-8").partition(HEADING)[0].rstrip("\n")
    PLACE.write_text(f"{text}\n\n{tables()}", encoding="utf-8")
    print(f"{len(rows(relations_of))} relations and {len(rows(features_of))} features in {PLACE.name}")


if __name__ == "__main__":
    main()
