"""The floors of the house, and what a file of it imports, read from its text."""

from __future__ import annotations

import ast
from pathlib import Path

ROOT = Path(__file__).parents[2]
SRC = ROOT / "src" / "tommybar"
FLOORS = (
    "refusals",
    "findings",
    "facts",
    "sizes",
    "mechanics",
    "shapes",
    "design",
    "shop",
    "made",
    "assembly",
    "resize",
    "making",
    "dryrun",
    "checks",
    "nest",
    "planning",
    "alternatives",
    "pack",
    "bench",
    "web",
    "cli",
)


def module_name(path: Path, top: Path = SRC) -> str:
    """The dotted name of a file of the package, from tommybar down."""
    parts = ["tommybar", *path.relative_to(top).with_suffix("").parts]
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def modules() -> dict[str, Path]:
    """Every module of the package with its file."""
    return {module_name(path): path for path in sorted(SRC.rglob("*.py"))}


def imports_of(text: str, known: set[str]) -> set[str]:
    """Modules of ours that a text imports anywhere: at its top, in functions, for type checking."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "imports are written out from tommybar"
            for alias in node.names:
                whole = f"{node.module}.{alias.name}"
                found.add(whole if whole in known else str(node.module))
    return {one for one in found if one == "tommybar" or one.startswith("tommybar.")}


def floor_of(module: str) -> int:
    """The floor a module stands on; the version lies below all, the package itself above all."""
    parts = module.split(".")
    if len(parts) == 1:
        return len(FLOORS)
    return -1 if parts[1] == "version" else FLOORS.index(parts[1])


def graph() -> dict[str, set[str]]:
    """What each module imports of ours."""
    known = modules()
    return {name: imports_of(path.read_text(), set(known)) for name, path in known.items()}
