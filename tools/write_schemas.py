"""Write the JSON Schema of the design file into docs/schema, for editors that complete and check."""

from __future__ import annotations

import json
from pathlib import Path

from tommybar.design import design_schema

FOLDER = Path(__file__).resolve().parents[1] / "docs" / "schema"


def schemas() -> dict[str, str]:
    """Each schema file with its text."""
    return {"design.json": json.dumps(design_schema(), indent=1, ensure_ascii=False) + "\n"}


if __name__ == "__main__":
    FOLDER.mkdir(parents=True, exist_ok=True)
    for name, text in schemas().items():
        (FOLDER / name).write_text(text, encoding="utf-8")
        print(FOLDER / name)
