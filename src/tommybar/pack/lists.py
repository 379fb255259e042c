"""The lists as CSV: sizes, stock, buying, findings, tools, cards; figures in the reader's unit."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence

from tommybar.pack.front.sizes import written
from tommybar.pack.front.tools import tools_used
from tommybar.pack.units import Reader
from tommybar.planning import Plan


def csv_text(head: Sequence[str], rows: Sequence[Sequence[object]]) -> str:
    """Rows as CSV after RFC 4180, with plain line ends.

    Examples
    --------
    >>> csv_text(("a", "b"), [("x, y", 2)])
    'a,b\\n"x, y",2\\n'
    """
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(head)
    writer.writerows(rows)
    return out.getvalue()


def list_texts(plan: Plan, reader: Reader) -> dict[str, str]:
    """File name to text of every list."""
    u = reader.unit
    return {
        "sizes.csv": csv_text(
            ("size", f"old_{u}", f"exact_{u}", f"new_{u}", "unit", "follows", "why"),
            [
                (
                    row.name, written(row.old, row.unit, reader), written(row.exact, row.unit, reader),
                    written(row.new, row.unit, reader), u if row.unit == "mm" else row.unit, row.follows, row.why,
                )
                for row in plan.sizes
            ],
        ),
        "stock.csv": csv_text(
            ("bar", "material", "section", f"size_{u}", f"width_{u}", f"length_{u}", "part", "copy",
             f"from_{u}", f"to_{u}", "bought"),
            [
                (
                    bar.bar, bar.material, bar.section, reader.length(bar.size), reader.length(bar.width),
                    reader.length(bar.length), cut.part, cut.copy, reader.length(cut.start),
                    reader.length(cut.end), "yes" if bar.bought else "no",
                )
                for bar in plan.stock.bars
                for cut in bar.cuts
            ],
        ),
        "buy.csv": csv_text(
            ("ask_for", "material", "section", f"size_{u}", f"width_{u}", f"length_{u}", "mass_g", "for", "does_as_well"),
            [
                (
                    line.words, line.material, line.section, reader.length(line.size), reader.length(line.width),
                    reader.length(line.length), f"{line.mass:.0f}", " ".join(line.for_parts), "; ".join(line.accept),
                )
                for line in plan.stock.buy
            ]
            + [
                (f"{one.part.count} x {one.part.bought}", one.part.material, "bought", "", "", "", "", one.part.name, "")
                for one in plan.parts
                if one.part.kind == "bought"
            ],
        ),
        "findings.csv": csv_text(
            ("number", "severity", "part", "feature", "card", "step", "words", "figure", "bound", "remedy", "source"),
            [
                (
                    f.number, f.severity, f.part, f.feature, f.card or "", f.step or "", f.words, f.figure, f.bound,
                    f.remedy, f.source,
                )
                for f in plan.findings
            ],
        ),
        "tools.csv": csv_text(("tool", "used_on_card"), tools_used(plan)),
        "cards.csv": csv_text(
            ("part", "card", "of", "machine", "hold", f"sticks_out_{u}", "step", "do", "tool", "speed_rpm",
             "feed_mm_rev", "big", "big_kind", "measure", "minutes"),
            [
                (
                    card.part, card.number, card.of, card.machine, card.hold.device, reader.length(card.hold.sticks_out),
                    step.number, step.do, step.tool, f"{step.speed:g}", f"{step.feed:.3f}", step.big, step.big_kind,
                    " ".join(one.size for one in step.measure), f"{step.minutes:.1f}",
                )
                for one in plan.parts
                for card in one.cards
                for step in card.steps
            ],
        ),
    }  # fmt: skip
