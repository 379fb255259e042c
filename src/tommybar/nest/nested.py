"""``nest``: blanks onto the rack and onto what can be bought or asked for."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from tommybar.findings import Finding, in_order
from tommybar.making.cards import Blank
from tommybar.nest.bound import least_unserved
from tommybar.nest.buying import bought
from tommybar.nest.cutlist import BuyLine, CutList, SawnBar
from tommybar.nest.rack import MOST_OVER, SHELVED, Piece, Stand, exact, lay, serves, stands_of
from tommybar.nest.slip import section_words
from tommybar.refusals import Refusal
from tommybar.resize.choice import words as figure_words
from tommybar.resize.limits import same_material
from tommybar.shop.model import Bar, Shop

MODES = ("rack", "buy", "ask")


def nest(blanks: Sequence[Blank], shop: Shop, stock: str = "ask") -> tuple[CutList, tuple[Finding, ...]]:
    """Lay the blanks on the rack's pieces first, then write down what must be bought.

    ``stock`` is "rack" (nothing is bought: what finds no room is a stop),
    "buy" or "ask" (it becomes a line of the request slip). Blank lengths are
    taken as they are: the stub that the chuck holds is part of the blank's own
    allowance. Least new metal comes first, then the least length of bars
    begun. The same blanks and shop always give the same list.
    """
    if stock not in MODES:
        raise Refusal(f'The stock mode is "{stock}"; it must be one of {", ".join(MODES)}.')
    for blank in blanks:
        if blank.length <= 0 or blank.size <= 0:
            raise Refusal(
                f"The blank of {blank.part} is {blank.size:g} x {blank.length:g} mm; both must be above 0.",
                "Work out the blank again.",
            )
    pieces = [Piece(blank, copy) for blank in blanks for copy in range(1, blank.count + 1)]
    stands = stands_of(shop.rack)
    left = lay(pieces, stands, shop.saw_kerf)
    findings = [finding for stand in stands if stand.cuts for finding in _about_rack_bar(stand, pieces)]
    bars = [_sawn(stand, shop.saw_kerf) for stand in stands if stand.cuts]
    words: list[str] = []
    buy: list[BuyLine] = []
    if not left:
        words.append("Everything comes from the rack: no plan can buy less.")
    elif stock == "rack":
        findings.extend(_not_on_rack(left, shop))
        words.append(_rack_words(pieces, left, stands, shop.saw_kerf))
    else:
        words.append(_rack_words(pieces, left, stands, shop.saw_kerf))
        new, lines, said, bar_words = bought(left, shop, stock)
        bars.extend(new)
        buy.extend(lines)
        findings.extend(said)
        words.extend(bar_words)
    return CutList(tuple(bars), tuple(buy), " ".join(one for one in words if one)), in_order(findings)


def _sawn(stand: Stand, kerf: float) -> SawnBar:
    bar = stand.bar
    left = max(0.0, round(bar.length - stand.free_from, 3))
    return SawnBar(
        stand.name,
        bar.material,
        bar.section,
        bar.size,
        bar.width,
        bar.length,
        tuple(stand.cuts),
        kerf,
        left,
        False,
    )


def _about_rack_bar(stand: Stand, pieces: Sequence[Piece]) -> list[Finding]:
    found = []
    parts = tuple(dict.fromkeys(cut.part for cut in stand.cuts))
    if not stand.bar.certain:
        found.append(
            Finding(
                202,
                "caution",
                f"{stand.name} is taken for {stand.bar.material}, but that is a guess.",
                part=parts[0],
                figure=f"{stand.bar.material}, not known for certain",
                bound=", ".join(parts),
                remedy="Weigh and measure it for its density, try a magnet and a file, before the first cut.",
            )
        )
    for part in parts:
        blank = next(one.blank for one in pieces if one.blank.part == part)
        if not exact(stand.bar, blank) and stand.bar.section not in SHELVED:
            found.append(
                Finding(
                    204,
                    "note",
                    f"{part} is sawn from a section larger than its blank: it is owned, "
                    "and nothing new is bought for it.",
                    part=part,
                    figure=section_words(stand.bar.section, stand.bar.size, stand.bar.width),
                    bound=section_words(blank.section, blank.size, blank.width),
                    remedy="Turn or mill it down; check that the first grip still holds it.",
                )
            )
    return found


def _not_on_rack(left: Sequence[Piece], shop: Shop) -> list[Finding]:
    found = []
    for blank, count in Counter(piece.blank for piece in left).items():
        what = section_words(blank.section, blank.size, blank.width)
        found.append(
            Finding(
                200,
                "stop",
                f"The rack has no {blank.material} for {blank.part}: {count} x {what}, "
                f"{figure_words(blank.length)} mm long, finds no room.",
                part=blank.part,
                figure=f"{what} x {figure_words(blank.length)} mm",
                bound=_nearest_on_rack(blank, shop.rack),
                remedy="Buy or ask for it (stock: buy, stock: ask), or resize to what lies on the rack.",
            )
        )
    return found


def _nearest_on_rack(blank: Blank, rack: Sequence[Bar]) -> str:
    """The most promising piece of that material, in words."""
    alike = [bar for bar in rack if same_material(bar.material, blank.material)]
    if not alike:
        return f"no {blank.material} on the rack of the shop"
    fitting = [bar for bar in alike if serves(bar, blank)]
    if fitting:
        best = max(fitting, key=lambda bar: (bar.length, -bar.size))
        return f"{best.name}: {figure_words(best.length)} mm long, less what is sawn from it already"
    best = max(alike, key=lambda bar: (bar.section == blank.section, bar.size, bar.length))
    return f"largest on the rack: {section_words(best.section, best.size, best.width)} ({best.name})"


def _rack_words(pieces: Sequence[Piece], left: Sequence[Piece], stands: Sequence[Stand], kerf: float) -> str:
    """How near the best possible the use of the rack is."""
    missing = sum(piece.blank.length for piece in left)
    kinds = list(Counter(piece.blank for piece in pieces).items())
    able = [[_could(stand, blank) for stand in stands] for blank, _ in kinds]
    if not any(any(row) for row in able):
        return "Nothing on the rack can serve these blanks."
    straight = [stand.bar.section not in SHELVED for stand in stands]
    if not all(straight):
        # A plate is taken to serve everything it could serve at all: the bound only gets lower by it.
        free = [any(one and not line for one, line in zip(row, straight, strict=True)) for row in able]
        kinds = [kind for kind, one in zip(kinds, free, strict=True) if not one]
        able = [row for row, one in zip(able, free, strict=True) if not one]
    if not kinds:
        return ""
    hopeless = sum(
        blank.length * count
        for (blank, count), row in zip(kinds, able, strict=True)
        if not any(one and stand.bar.length >= blank.length for one, stand in zip(row, stands, strict=True))
    )
    if missing <= hopeless + 0.1:
        return f"The rack leaves {figure_words(missing)} mm of blanks unserved, and no plan can leave less."
    least = least_unserved(
        [(blank.length, count) for blank, count in kinds], [stand.bar.length for stand in stands], able, kerf
    )
    if missing <= least + 0.1:
        return f"The rack leaves {figure_words(missing)} mm of blanks unserved, and no plan can leave less."
    over = f", within {100 * (missing / least - 1):.1f} % of the best possible" if least > 0 else ""
    return (
        f"The rack leaves {figure_words(missing)} mm of blanks unserved; "
        f"no plan can leave less than {figure_words(least)} mm{over}."
    )


def _could(stand: Stand, blank: Blank) -> bool:
    if not serves(stand.bar, blank):
        return False
    return exact(stand.bar, blank) or stand.bar.size / blank.size <= MOST_OVER
