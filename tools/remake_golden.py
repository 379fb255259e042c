"""Write tests/golden/*.svg anew; read the change as a diff before it is committed."""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
GOLDEN = ROOT / "tests" / "golden"


def golden_texts() -> dict[str, str]:
    """File name to what it should hold."""
    if str(ROOT) not in sys.path:
        sys.path.insert(0, str(ROOT))
    from tests.pack.handmade import BUSH, DESIGN, IMPRINT

    from tommybar.pack.drawing import part_drawing
    from tommybar.pack.svg import svg_text

    return {"bush.svg": svg_text(part_drawing(BUSH, DESIGN, IMPRINT))}


def main() -> None:
    """Remake every golden file."""
    for name, text in golden_texts().items():
        (GOLDEN / name).write_text(text, encoding="utf-8")
        print(f"{name}: {len(text)} characters")


if __name__ == "__main__":
    main()
