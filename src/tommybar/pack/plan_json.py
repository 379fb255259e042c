"""A plan as plain data for JSON: every figure's key ends in its unit."""

from __future__ import annotations

import json
from typing import Any

from tommybar.findings import Finding
from tommybar.making.cards import Blank, Card, Hold, HolePlace, Measure, RunoutForecast, Step
from tommybar.nest.cutlist import BuyLine, CutList, SawnBar
from tommybar.planning import PartPlan, Plan
from tommybar.resize.table import Bind, Resized, SizeRow


def plan_json(plan: Plan) -> str:
    """The plan as one JSON object."""
    return json.dumps(plan_data(plan), ensure_ascii=False, indent=2)


def plan_data(plan: Plan) -> dict[str, Any]:
    """The plan as plain data. Cuts of the dry run are left out; its figures are there."""
    return {
        "plan_id": plan.plan_id,
        "version": plan.version,
        "design": plan.title,
        "revision": plan.revision,
        "shop": plan.shop.name,
        "shop_assumed": list(plan.shop.assumed),
        "scale": plan.scale,
        "sizes": {row.name: size_data(row) for row in plan.sizes},
        "binds": [bind_data(one) for one in plan.binds],
        "second": resized_data(plan.second) if plan.second else None,
        "stock": stock_data(plan),
        "order": [one.part.name for one in plan.parts],
        "parts": {one.part.name: part_data(one, plan.findings) for one in plan.parts},
        "figures": [
            {
                "what": one.what,
                "part": one.part,
                "value": _rounded(one.value),
                "unit": one.unit,
                "how": one.how,
                "source": one.source,
            }
            for one in plan.figures
        ],
        "findings": [one.as_dict() for one in plan.findings],
        "rounds": plan.rounds,
    }


def resized_data(found: Resized) -> dict[str, Any]:
    """One scale with its sizes and what binds it."""
    return {
        "scale": found.scale,
        "sizes": {row.name: size_data(row) for row in found.rows},
        "binds": [bind_data(one) for one in found.limits],
        "findings": [one.as_dict() for one in found.findings],
    }


def size_data(row: SizeRow) -> dict[str, Any]:
    """A row of the size table; its figures are in ``unit``."""
    return {
        "old": _rounded(row.old),
        "exact": _rounded(row.exact),
        "new": _rounded(row.new),
        "unit": row.unit,
        "follows": row.follows,
        "why": row.why,
        "choices": list(row.choices),
    }


def bind_data(one: Bind) -> dict[str, Any]:
    """A limit on the scale."""
    return {
        "what": one.what,
        "part": one.part,
        "figure_mm": _rounded(one.figure),
        "bound_mm": _rounded(one.bound),
        "at_scale": _rounded(one.scale),
        "binds": one.binds,
        "least": one.least,
    }


def stock_data(plan: Plan) -> dict[str, Any]:
    """Blanks, cuts on each bar, and what must be bought."""
    stock: CutList = plan.stock
    return {
        "blanks": [_blank(one.blank) for one in plan.parts if one.blank],
        "cuts": [_bar(one) for one in stock.bars],
        "buy": [_buy(one) for one in stock.buy],
        "bound": stock.bound_words,
    }


def part_data(one: PartPlan, findings: tuple[Finding, ...]) -> dict[str, Any]:
    """A part with its cards; each card carries the findings that belong to it."""
    part, run = one.part, one.run
    found: dict[str, Any] = {
        "kind": part.kind,
        "material": part.material,
        "bought": part.bought,
        "count": part.count,
        "mass_g": _rounded(one.mass),
        "changed": one.changed,
        "cards": [_card(card, findings) for card in one.cards],
    }
    if run is not None:
        found["dry_run"] = {
            "blank_mm3": _rounded(run.blank_volume),
            "removed_mm3": _rounded(run.removed_volume),
            "parted_off_mm3": _rounded(sum(card.separated_volume for card in run.cards)),
            "left_mm3": _rounded(run.left_volume),
            "surplus_mm3": _rounded(run.surplus_volume),
            "missing_mm3": _rounded(run.missing_volume),
            "smallest_gap_mm": [_rounded(card.smallest_gap) for card in run.cards],
        }
    return found


def _card(card: Card, findings: tuple[Finding, ...]) -> dict[str, Any]:
    return {
        "number": card.number,
        "of": card.of,
        "machine": card.machine,
        "title": card.title,
        "free_end": card.free_end,
        "hold": _hold(card.hold),
        "sticks_out_mm": _rounded(card.hold.sticks_out),
        "before_starting": list(card.before_starting),
        "drawer": list(card.drawer),
        "steps": [_step(one) for one in card.steps],
        "places": [_place(one) for one in card.places],
        "chord_checks": list(card.chord_checks),
        "runout": [_runout(one) for one in card.runout],
        "time_min": _rounded(card.minutes),
        "after": card.after,
        "goes_wrong": list(card.goes_wrong),
        "why": card.why,
        "findings": [one.as_dict() for one in findings if (one.part, one.card) == (card.part, card.number)],
    }


def _hold(hold: Hold) -> dict[str, Any]:
    return {
        "device": hold.device,
        "jaws": hold.jaws,
        "surface": hold.surface,
        "diameter_mm": _rounded(hold.dia),
        "length_mm": _rounded(hold.length),
        "runout_mm": _rounded(hold.runout),
        "stop": hold.stop,
        "why": hold.why,
        "rejected": [{"holding": one.holding, "reason": one.reason} for one in hold.rejected],
    }


def _step(step: Step) -> dict[str, Any]:
    return {
        "number": step.number,
        "key": step.key,
        "do": step.do,
        "feature": step.feature,
        "tool": step.tool,
        "tool_kind": step.tool_kind,
        "tool_size_mm": _rounded(step.tool_size),
        "speed_rpm": _rounded(step.speed),
        "cutting_speed_m_min": _rounded(step.cutting_speed),
        "feed_mm_rev": _rounded(step.feed),
        "big": step.big,
        "big_kind": step.big_kind,
        "passes": [
            {"to_mm": _rounded(one.to), "infeed_mm": _rounded(one.infeed), "dial": one.dial, "last": one.last}
            for one in step.passes
        ],
        "dial": list(step.dial),
        "time_min": _rounded(step.minutes),
        "why": step.why,
        "cautions": list(step.cautions),
        "measure": [_measure(one) for one in step.measure],
    }


def _measure(one: Measure) -> dict[str, Any]:
    dim = one.dim
    return {
        "size": one.size,
        "nominal_mm": _rounded(dim.value),
        "zone": dim.zone,
        "smallest_mm": None if dim.smallest is None else _rounded(dim.smallest),
        "largest_mm": None if dim.largest is None else _rounded(dim.largest),
        "because": dim.because,
        "instrument": one.instrument,
        "gives_to": list(one.gives_to),
    }


def _place(one: HolePlace) -> dict[str, Any]:
    return {
        "n": one.n,
        "what": one.what,
        "x_mm": _rounded(one.x),
        "y_mm": _rounded(one.y),
        "dial_x": one.dial_x,
        "dial_y": one.dial_y,
        "overshoot": one.overshoot,
    }


def _runout(one: RunoutForecast) -> dict[str, Any]:
    return {
        "of": one.of,
        "to": one.to,
        "within_mm": _rounded(one.within),
        "expected_mm": _rounded(one.expected),
        "worst_mm": _rounded(one.worst),
        "how": one.how,
    }


def _blank(blank: Blank) -> dict[str, Any]:
    return {
        "part": blank.part,
        "material": blank.material,
        "section": blank.section,
        "size_mm": _rounded(blank.size),
        "width_mm": _rounded(blank.width),
        "length_mm": _rounded(blank.length),
        "finished_length_mm": _rounded(blank.finished_length),
        "allowances": [{"what": what, "length_mm": _rounded(figure)} for what, figure in blank.allowances],
        "count": blank.count,
        "mass_g": _rounded(blank.mass),
        "why": blank.why,
    }


def _bar(bar: SawnBar) -> dict[str, Any]:
    return {
        "bar": bar.bar,
        "material": bar.material,
        "section": bar.section,
        "size_mm": _rounded(bar.size),
        "width_mm": _rounded(bar.width),
        "length_mm": _rounded(bar.length),
        "kerf_mm": _rounded(bar.kerf),
        "left_mm": _rounded(bar.left),
        "bought": bar.bought,
        "cuts": [
            {
                "part": cut.part,
                "copy": cut.copy,
                "start_mm": _rounded(cut.start),
                "end_mm": _rounded(cut.end),
                "edge_mm": _rounded(cut.edge),
                "far_edge_mm": _rounded(cut.far_edge),
            }
            for cut in bar.cuts
        ],
    }


def _buy(line: BuyLine) -> dict[str, Any]:
    return {
        "words": line.words,
        "section": line.section,
        "size_mm": _rounded(line.size),
        "width_mm": _rounded(line.width),
        "length_mm": _rounded(line.length),
        "material": line.material,
        "count": line.count,
        "mass_g": _rounded(line.mass),
        "for_parts": list(line.for_parts),
        "accept": list(line.accept),
    }


def _rounded(value: float | str) -> float | str:
    """A figure without the last digits of binary arithmetic.

    >>> _rounded(43.900000000000006), _rounded("M4")
    (43.9, 'M4')
    """
    return value if isinstance(value, str) else round(float(value), 6) + 0.0
