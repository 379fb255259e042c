"""The command ``check``: every fault of the files, and what can be found without a shop."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Annotated, Any

import typer

from tommybar.findings import Finding, in_order
from tommybar.refusals import Complaint, Refusal


def check(
    files: Annotated[list[Path], typer.Argument(metavar="FILE...", help="Design, shop and made files.")],
) -> None:
    """Check files: each fault as file:line:col, the figure it had, its bound and what to do.

    A design is worked out as drawn, so what cannot be cut from metal is told
    too; every part is drawn and built again from the printed figures alone,
    so what is missing on a sheet or stands there twice is told. Ends with 1 when a file has a fault.
    """
    wrong: list[Complaint] = []
    findings: list[Finding] = []
    for path in files:
        try:
            words, found = _checked(path)
        except Refusal as refusal:
            wrong += refusal.complaints
        else:
            typer.echo(f"{path}: {words}")
            findings += found
    if findings:
        from tommybar.cli.plan_table import finding_lines

        typer.echo("\n".join(finding_lines(in_order(findings))))
    if wrong:
        raise Refusal(wrong)
    if any(one.severity == "stop" for one in findings):
        raise typer.Exit(2)


def _checked(path: Path) -> tuple[str, list[Finding]]:
    """Good words about a file and its findings; raises a refusal with its faults."""
    from tommybar.design.yaml_file import read_yaml

    data = read_yaml(path).data
    kinds: dict[str, Callable[[Path], tuple[str, list[Finding]]]] = {
        "design": _design,
        "shop": _shop,
        "made": _made,
    }
    for key, read in kinds.items():
        if isinstance(data, dict) and key in data:
            return read(path)
    what = "It is no design, shop or made file: it has none of the keys design, shop, made."
    raise Refusal([Complaint(what, "Make one with: tommybar new", str(path), 1, 1)])


def _design(path: Path) -> tuple[str, list[Finding]]:
    from tommybar.checks import check_together
    from tommybar.design.loaded import load_design
    from tommybar.pack.audit.telling import drawn_and_audited
    from tommybar.pack.units import Reader

    design = load_design(path)
    sized = design.sized()
    parts = _count(len(sized.parts), "part")
    sizes = _count(len(design.named), "named size")
    drawings, amiss = drawn_and_audited(sized, design.title, Reader())
    words = f'design "{design.title}", {parts}, {sizes}, no fault'
    return f"{words}; {drawings}" if drawings else words, [
        *shopless_findings(design),
        *check_together(sized),
        *kept_findings(design),
        *amiss,
    ]


def shopless_findings(design: Any) -> list[Finding]:
    """What the checks find in the design as drawn whatever the shop: the same in every example shop."""
    from tommybar.checks import check_all
    from tommybar.shop import example_shops, load_shop

    sized = design.sized()
    found = [check_all(sized, load_shop(place))[0] for place in example_shops().values()]
    return [one for one in found[0] if all(one in other for other in found)] if found else []


def kept_findings(design: Any) -> list[Finding]:
    """The note about bare lengths in features, which a resize does not touch."""
    kept = design.kept()
    if not kept:
        return []
    listed = ", ".join(f"{place} {value:g} mm" for place, value in kept)
    return [
        Finding(
            110,
            "note",
            f"{_count(len(kept), 'length')} in features {'is' if len(kept) == 1 else 'are'} "
            f"no named size and {'is' if len(kept) == 1 else 'are'} kept at every scale: {listed}.",
            figure=_count(len(kept), "length"),
            remedy="Name those that should follow the scale.",
        )
    ]


def _shop(path: Path) -> tuple[str, list[Finding]]:
    from tommybar.shop.loading import load_shop

    shop = load_shop(path)
    words = f'shop "{shop.name}", {_count(len(shop.rack), "piece")} on the rack, no fault'
    if shop.assumed:
        words += f"; assumed from an example shop: {', '.join(shop.assumed)}"
    return words, []


def _made(path: Path) -> tuple[str, list[Finding]]:
    from tommybar.made.loading import load_made

    made = load_made(path)
    return f"made file, {_count(len(made.measured), 'measured size')}, no fault", []


def _count(number: int, word: str) -> str:
    """
    >>> _count(1, "part"), _count(2, "part")
    ('1 part', '2 parts')
    """
    return f"{number} {word}" if number == 1 else f"{number} {word}s"
