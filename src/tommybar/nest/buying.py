"""New bars for what the rack cannot serve: fewest lengths, each as short as it may be."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from math import ceil

from tommybar.findings import Finding
from tommybar.making.cards import Blank
from tommybar.nest.bound import best_patterns, least_bars
from tommybar.nest.cutlist import BuyLine, Cut, SawnBar
from tommybar.nest.lengths import fewest_bars
from tommybar.nest.rack import SHELVED, Piece, serves
from tommybar.nest.slip import Wanted, buy_line, known_material, section_words
from tommybar.resize.choice import words as figure_words
from tommybar.shop.model import Bar, Shop


def bought(
    left: Sequence[Piece], shop: Shop, stock: str
) -> tuple[list[SawnBar], list[BuyLine], list[Finding], list[str]]:
    """Bars to be bought, packed in as few lengths as can be, with their lines, findings and bound."""
    bars: list[SawnBar] = []
    lines: list[BuyLine] = []
    findings: list[Finding] = []
    words: list[str] = []
    for (material, section, size, width), group in sorted(_by_section(left).items()):
        seller = _sold(group[0].blank, shop.obtainable)
        lengths = [piece.blank.length for piece in group]
        longest = (
            seller.length if seller and seller.length > 0 else sum(lengths) + shop.saw_kerf * len(lengths)
        )
        too_long = [piece for piece in group if piece.blank.length > longest]
        if seller and too_long:
            findings.append(_too_long(too_long[0], seller))
            longest = max(lengths)
        sold = (seller.section, seller.size, width) if seller else (section, size, width)
        if seller is None:
            findings.append(_not_in_list(group[0].blank, shop, stock))
        packed, said = _packed(lengths, longest, shop.saw_kerf)
        words.append(said)
        new = [
            _new_bar(material, sold, [group[place] for place in on_bar], shop.saw_kerf) for on_bar in packed
        ]
        bars.extend(new)
        for length, count in sorted(Counter(bar.length for bar in new).items(), reverse=True):
            parts = tuple(dict.fromkeys(cut.part for bar in new if bar.length == length for cut in bar.cuts))
            line = buy_line(Wanted(material, *sold, length, count, parts), shop, stock)
            lines.append(line)
            findings.append(_to_get(line, stock))
    return bars, lines, findings, words


def _by_section(left: Sequence[Piece]) -> dict[tuple[str, str, float, float], list[Piece]]:
    groups: dict[tuple[str, str, float, float], list[Piece]] = {}
    for piece in left:
        known = known_material(piece.blank.material)
        name = known.name if known else piece.blank.material
        groups.setdefault((name, piece.blank.section, piece.blank.size, piece.blank.width), []).append(piece)
    return groups


def _sold(blank: Blank, obtainable: Sequence[Bar]) -> Bar | None:
    """The smallest section sold that serves the blank, or None."""
    able = [
        bar
        for bar in obtainable
        if serves(bar, blank) and (bar.section not in SHELVED or bar.width >= blank.width)
    ]
    return min(able, key=lambda bar: (bar.size, bar.width, bar.name), default=None)


def _packed(lengths: list[float], longest: float, kerf: float) -> tuple[tuple[tuple[int, ...], ...], str]:
    packed = fewest_bars(lengths, longest, kerf)
    bound = least_bars(lengths, longest, kerf)
    if len(packed) > bound:
        proved = best_patterns(lengths, longest, kerf)
        if proved is not None:
            bound, better = proved
            if better and len(better) < len(packed):
                packed = better
    if len(packed) == 1:
        return packed, ""
    if len(packed) <= bound:
        return packed, f"{len(packed)} bars are bought, and no plan needs fewer."
    return packed, (
        f"{len(packed)} bars are bought; no plan needs fewer than {bound} "
        f"(within {100 * (len(packed) / bound - 1):.1f} % of the best possible)."
    )


def _new_bar(material: str, sold: tuple[str, float, float], pieces: Sequence[Piece], kerf: float) -> SawnBar:
    section, size, width = sold
    cuts, at = [], 0.0
    for piece in pieces:
        cuts.append(Cut(piece.blank.part, piece.copy, round(at, 3), round(at + piece.blank.length, 3)))
        at += piece.blank.length + kerf
    length = float(ceil(round(at - kerf, 6)))
    return SawnBar(
        f"buy: {section_words(section, size, width)} {material}",
        material,
        section,
        size,
        width,
        length,
        tuple(cuts),
        kerf,
        max(0.0, round(length - at, 3)),
        True,
    )


def _to_get(line: BuyLine, stock: str) -> Finding:
    return Finding(
        201,
        "note",
        line.words,
        part=line.for_parts[0],
        figure=f"{section_words(line.section, line.size, line.width)} x {figure_words(line.length)} mm",
        bound="not left on the rack",
        remedy="Ask around for an offcut first." if stock == "ask" else "It stands on the request slip.",
    )


def _not_in_list(blank: Blank, shop: Shop, stock: str) -> Finding:
    what = section_words(blank.section, blank.size, blank.width)
    return Finding(
        203,
        "caution" if stock == "buy" else "note",
        f"No {blank.material} of {what} or more stands in the list of what can be bought for {shop.name}.",
        part=blank.part,
        figure=what,
        bound="obtainable sections of the shop file",
        remedy="Ask around, or add the section to the shop file once a seller is found.",
    )


def _too_long(piece: Piece, seller: Bar) -> Finding:
    return Finding(
        205,
        "stop",
        f"The blank of {piece.blank.part} is longer than the longest length sold.",
        part=piece.blank.part,
        figure=f"{figure_words(piece.blank.length)} mm",
        bound=f"{figure_words(seller.length)} mm, {seller.name}",
        remedy="Find a seller of longer lengths, or make the part from two.",
    )
