"""One file of a pack by its name, made when it is asked for: the same bytes as in the whole pack."""

from __future__ import annotations

from collections.abc import Sequence
from fnmatch import fnmatchcase
from pathlib import PurePosixPath

from tommybar.assembly.placing import assembled
from tommybar.pack.assembled.sheet import framed
from tommybar.pack.dxf import dxf_text
from tommybar.pack.glb import assembly_glb, part_glb
from tommybar.pack.imprint import Angle, PaperName
from tommybar.pack.lists import list_texts
from tommybar.pack.machine.contents import page_contents
from tommybar.pack.machine.write import machine_page
from tommybar.pack.pdf import pdf_bytes
from tommybar.pack.plan_json import plan_json
from tommybar.pack.solid_files import assembly_text, step_lacks
from tommybar.pack.svg import svg_text
from tommybar.pack.template.sheet import template_sheets
from tommybar.pack.units import Reader
from tommybar.pack.write import assembly_pages, drawing_of, imprint_of, pack_sheets
from tommybar.planning import Plan
from tommybar.refusals import Refusal, nearest

WHOLE = ("pack.pdf", "machine.html", "plan.json")
TOGETHER = ("assembly.svg", "assembly.dxf", "assembly.step", "assembly.glb", "assembly.txt")
OF_A_PART = ("svg", "dxf", "step", "glb")


def file_names(plan: Plan, reader: Reader) -> dict[str, tuple[str, ...]]:
    """Names of the files that can be had one by one, by what they are of: everything, the assembly, each part."""
    found: dict[str, tuple[str, ...]] = {"everything": (*WHOLE, *list_texts(plan, reader))}
    if sum(part.count for part in plan.design.parts) > 1:
        found["assembly"] = TOGETHER
    for one in plan.parts:
        if one.part.shape is not None:
            name = one.part.name
            pages = template_sheets(one.part, imprint_of(plan, reader))
            templates = tuple(f"templates/{name}-{n}.svg" for n in range(1, len(pages) + 1))
            found[name] = (*(f"parts/{name}.{end}" for end in OF_A_PART), *templates)
    return found


def matching(names: Sequence[str], wanted: Sequence[str]) -> tuple[str, ...]:
    """The names that one of the patterns means; refused when a pattern means none.

    >>> matching(("pack.pdf", "parts/a.step", "parts/b.step"), ("parts/*.step",))
    ('parts/a.step', 'parts/b.step')
    """
    for one in wanted:
        if not any(fnmatchcase(name, one) for name in names):
            offer = nearest(one, names) or f"There are {', '.join(names[:6])} and more."
            raise Refusal(f'No file of the pack is called "{one[:80]}".', offer)
    return tuple(name for name in names if any(fnmatchcase(name, one) for one in wanted))


def one_file(plan: Plan, name: str, reader: Reader, paper: PaperName = "A4", angle: Angle = "first") -> bytes:
    """The file of that name; raises :class:`Refusal` when there is none, or why it cannot be made."""
    names = [one for group in file_names(plan, reader).values() for one in group]
    matching(names, (name,))
    made = (
        _of_a_part(plan, name, reader, paper, angle)
        if "/" in name
        else _whole(plan, name, reader, paper, angle)
    )
    return made if isinstance(made, bytes) else made.encode("utf-8")


def _of_a_part(plan: Plan, name: str, reader: Reader, paper: PaperName, angle: Angle) -> str | bytes:
    place, imprint = PurePosixPath(name), imprint_of(plan, reader, paper, angle)
    if place.parts[0] == "templates":
        part, _, page = place.stem.rpartition("-")
        return svg_text(template_sheets(plan.part(part).part, imprint)[int(page) - 1])
    one = plan.part(place.stem)
    if place.suffix == ".glb":
        return part_glb(one.part)
    if place.suffix == ".step":
        _needs_step()
        from tommybar.pack.step import part_step

        return part_step(one.part)
    sheet = drawing_of(one, plan, imprint)
    return svg_text(sheet) if place.suffix == ".svg" else dxf_text(sheet)


def _whole(plan: Plan, name: str, reader: Reader, paper: PaperName, angle: Angle) -> str | bytes:
    imprint = imprint_of(plan, reader, paper, angle)
    if name == "pack.pdf":
        return pdf_bytes(pack_sheets(plan, reader, paper, angle), f"{plan.title}, plan {plan.plan_id}")
    if name == "machine.html":
        return machine_page(page_contents(plan, reader))
    if name == "plan.json":
        return plan_json(plan)
    if name in ("assembly.svg", "assembly.dxf"):
        sheet = framed(assembly_pages(plan, imprint, {}), imprint, (1, 1))[0]
        return svg_text(sheet) if name.endswith("svg") else dxf_text(sheet)
    if name.startswith("assembly."):
        whole = assembled(plan.design)
        if name == "assembly.glb":
            return assembly_glb(plan.design, whole.placements)
        if name == "assembly.txt":
            lacks = step_lacks()
            return assembly_text(plan.design, whole, [lacks] if lacks else [])
        _needs_step()
        from tommybar.pack.step import assembly_step

        return assembly_step(plan.design, whole.placements)
    return list_texts(plan, reader)[name]


def _needs_step() -> None:
    if lacks := step_lacks():
        raise Refusal(lacks)
