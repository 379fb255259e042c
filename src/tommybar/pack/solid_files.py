"""The files of a pack that hold solids: STEP and GLB of each part and of the assembly, and how it goes together."""

from __future__ import annotations

from collections.abc import Callable

from tommybar.assembly.order import order_of
from tommybar.assembly.placing import Assembly, assembled
from tommybar.design.model import Part, SizedDesign
from tommybar.pack.glb import assembly_glb, part_glb
from tommybar.refusals import Refusal


def solid_files(design: SizedDesign, tell: Callable[[str], None]) -> dict[str, str | bytes]:
    """The files by name; what cannot be made is left out and said in ``assembly.txt``.

    STEP needs the solid kernel, which is an extra; without it the other files
    are still made.
    """
    files: dict[str, str | bytes] = {}
    lacks: list[str] = []
    missing = step_lacks()
    if missing:
        lacks.append(missing)
    together = assembled(design)
    tell("solids")
    for part in design.parts:
        if part.shape is None:
            continue
        _add(files, lacks, f"parts/{part.name}.glb", part, part_glb)
        if not missing:
            from tommybar.pack.step import part_step

            _add(files, lacks, f"parts/{part.name}.step", part, part_step)
    if len(together.placements) > 1:
        tell("assembly")
        _together(files, lacks, design, together, bool(missing))
    files["assembly.txt"] = assembly_text(design, together, lacks)
    return files


def step_lacks() -> str:
    """Why no STEP can be written, in words with what to do; empty when it can."""
    from tommybar.shapes.solids.kernel import needs_the_kernel

    try:
        needs_the_kernel()
    except Refusal as refusal:
        return str(refusal)
    return ""


def _add(
    files: dict[str, str | bytes], lacks: list[str], name: str, part: Part, write: Callable[[Part], bytes]
) -> None:
    try:
        files[name] = write(part)
    except Refusal as refusal:
        lacks.append(f"{name} is not written: {refusal}")


def _together(
    files: dict[str, str | bytes], lacks: list[str], design: SizedDesign, whole: Assembly, no_step: bool
) -> None:
    try:
        files["assembly.glb"] = assembly_glb(design, whole.placements)
        if not no_step:
            from tommybar.pack.step import assembly_step

            files["assembly.step"] = assembly_step(design, whole.placements)
    except Refusal as refusal:
        lacks.append(f"The assembly is not written: {refusal}")


def assembly_text(design: SizedDesign, whole: Assembly, lacks: list[str]) -> str:
    """Where each piece stands, how it goes together, and what is not told of it, as plain words."""
    lines = [f"{design.title}, revision {design.revision}: what the files of solids show", ""]
    for one in sorted(whole.placements, key=lambda placed: placed.order):
        x, y, z = one.frame[3], one.frame[7], one.frame[11]
        spot = ", ".join(f"{v:.3f}" for v in (x, y, z))
        words = f"{one.order}. {_name(one.part, one.instance, design)}: origin at {spot} mm; {one.held}"
        lines.append(f"{words} ({one.open})" if one.open else words)
    order = order_of(design, whole)
    if order.steps:
        lines += ["", "In the order of assembly:", *(f"{one.number}. {one.words}" for one in order.steps)]
    if order.stuck:
        names = ", ".join(_name(*piece, design) for piece in order.stuck)
        lines += ["", f"No straight way brings together: {names}."]
    if order.trapped:
        names = "; ".join(" with ".join(_name(*one, design) for one in group) for group in order.trapped)
        lines += ["", f"Once joined for good these do not come apart: {names}."]
    if whole.unplaced:
        lines += ["", "Not shown:"]
        lines += [f"- {_name(one.part, one.instance, design)}: {one.reason}" for one in whole.unplaced]
    if whole.said:
        lines += ["", "Taken for granted:", *(f"- {words}" for words in whole.said)]
    if lacks:
        lines += ["", "Not written:", *(f"- {words}" for words in lacks)]
    return "\n".join(lines) + "\n"


def _name(part: str, instance: int, design: SizedDesign) -> str:
    name = part.replace("_", " ")
    return name if design.part(part).count == 1 else f"{name} {instance}"
