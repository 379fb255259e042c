"""``resize``: sizes for a scale and a shop; and the second choice, where holes and threads land better."""

from __future__ import annotations

from collections.abc import Mapping

from tommybar.design import Design
from tommybar.design.model import SizedDesign
from tommybar.findings import in_order
from tommybar.refusals import Complaint, Refusal
from tommybar.resize.binds import binds_of, deciding_keys
from tommybar.resize.conflict import smallest_conflict
from tommybar.resize.rows import rows_of
from tommybar.resize.scales import SMALLEST, Heeded, Scales, refuse_nonsense
from tommybar.resize.screw_threads import shortfall
from tommybar.resize.search import Tried
from tommybar.resize.table import Bind, Price, Resized
from tommybar.resize.told import broken_finding, changed_at_full_size, conflict_finding, held_finding, notes
from tommybar.shop.model import Shop

SECOND_FROM = 0.75  # a second choice is looked for down to this share of the first scale
WORTHWHILE = 0.5  # and told when it has at most this share of the snapping of the first


def resize(
    design: Design,
    shop: Shop,
    scale: float | None = None,
    pins: Mapping[str, float | str] | None = None,
    stock: str = "ask",
    extra: tuple[Bind, ...] = (),
) -> Resized:
    """Sizes of a design for a shop.

    Without ``scale`` the largest scale up to 1 is taken at which every limit
    of the shop, every must-line and every wall holds; with it (or with a pin
    on the size that drives the design) that scale stands and what does not
    hold is a finding. ``pins`` hold single sizes [mm, deg or designation] and
    are never changed. ``stock`` is "rack", "buy" or "ask"; ``extra`` are
    limits that the plan hands back. Equal input gives equal output.
    """
    pins = dict(pins or {})
    refuse_nonsense(design, scale, pins, stock)
    fixed = scale if scale is not None else _driven(design, pins)
    return _resized(Scales(design, shop, stock, pins, extra), fixed)


def second_choice(
    design: Design,
    shop: Shop,
    scale: float | None = None,
    pins: Mapping[str, float | str] | None = None,
    stock: str = "ask",
    extra: tuple[Bind, ...] = (),
) -> Resized | None:
    """A smaller scale at which reamed holes and threads land with less snapping, or None.

    Looked for down to 0.75 of the first choice, and told only when half of the
    snapping or less is left; of scales that land equally well the largest is
    taken. ``scale`` is the first choice when it is known.
    """
    pins = dict(pins or {})
    refuse_nonsense(design, scale, pins, stock)
    scales = Scales(design, shop, stock, pins, extra)
    first = scales.largest(1.0)[0] if scale is None else scales.best_at(scale)
    if first is None:
        return None
    best, least = None, WORTHWHILE * _snapping(scales, first) - 1e-9
    if least <= 0:
        return None  # every hole and thread lands exactly already
    for one in scales.grid(first.scale, max(SMALLEST, SECOND_FROM * first.scale)):
        tried = scales.at(one)
        if one < first.scale and tried.good and _snapping(scales, tried) < least:
            best, least = tried, _snapping(scales, tried) - 1e-9
    return _resized(scales, best.scale) if best else None


def price_of(
    bind: Bind,
    design: Design,
    shop: Shop,
    pins: Mapping[str, float | str] | None = None,
    stock: str = "ask",
    extra: tuple[Bind, ...] = (),
) -> Price:
    """What one limit costs: everything is chosen again as if it were not there."""
    scales = Scales(design, shop, stock, dict(pins or {}), extra)
    first, _, _ = scales.largest(1.0)
    if first is None:
        raise Refusal(
            "Nothing fits at any scale; a price needs an answer to compare with.", "See what conflicts."
        )
    ignored = frozenset(
        (kind, bind.what, bind.part) for kind in ("limit", "must", "wall", "relation", "between")
    )
    second, _, _ = scales.largest(1.0, Heeded(left_out=ignored))
    without = second.scale if second else first.scale
    of = f" of {bind.part}" if bind.part else ""
    if without > first.scale + 1e-9:
        words = f"Without {bind.what}{of} the scale would be {without:.2f} instead of {first.scale:.2f}."
    else:
        words = f"Without {bind.what}{of} the scale would still be {first.scale:.2f}."
    return Price(bind, first.scale, without, words)


def _driven(design: Design, pins: Mapping[str, float | str]) -> float | None:
    """The scale that a pin on the driving size means."""
    for size in design.named:
        pinned = pins.get(size.name)
        if size.drives and isinstance(pinned, float | int) and isinstance(size.value, float):
            return pinned / size.value
    return None


def _resized(scales: Scales, fixed: float | None) -> Resized:
    wanted = 1.0 if fixed is None else fixed
    findings = []
    found, sure = None, True
    if fixed is None:
        found, _, sure = scales.largest(wanted)
    tried = found or scales.best_at(wanted)
    drawn = _drawn(scales, tried)
    binds = binds_of(scales, tried, deciding_keys(scales, tried, wanted) if found else frozenset())
    if fixed is None and found is None and sure:
        findings.append(conflict_finding(smallest_conflict(scales, wanted), wanted, SMALLEST))
    findings += [broken_finding(one, binds) for one in tried.broken]
    held = held_finding(tried, binds, wanted)
    findings += ([held] if held else []) + changed_at_full_size(tried)
    findings += notes(tried, scales.looks.at(tried.values), scales.looks.not_met_as_drawn, sure)
    return Resized(
        tried.scale,
        rows_of(scales, tried),
        binds,
        drawn,
        in_order(findings),
        scales.looks.count,
        sure and tried.exhausted,
    )


def _drawn(scales: Scales, tried: Tried) -> SizedDesign:
    """The design at the sizes picked; a refusal that names the scale when it cannot be made of metal."""
    try:
        return scales.looks.sized(tried.values)
    except Refusal as refusal:
        head = Complaint(
            f"At scale {tried.scale:.2f} this shop's sizes give parts that cannot be made of metal:",
            "Take a larger scale, or pin the sizes that are named here.",
        )
        raise Refusal((head, *refusal.complaints)) from None


def _snapping(scales: Scales, tried: Tried) -> float:
    """How far reamed holes depart from the scale, and how much threads fall short of it."""
    total = 0.0
    for name, size in scales.offers.sizes.items():
        value = tried.picks[name].value
        if size.follows == "reamer" and isinstance(value, float) and isinstance(size.value, float):
            total += abs(value / (size.value * tried.scale) - 1)
        elif size.follows == "thread" and isinstance(value, str) and isinstance(size.value, str):
            total += shortfall(size.value, value, tried.scale)
    return total
