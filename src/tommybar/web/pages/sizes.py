"""Sizes: what every named size becomes in this shop, why, what binds, and what may be held."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from starlette.responses import Response

from tommybar.pack.units import Reader
from tommybar.planning import Plan
from tommybar.refusals import Complaint, Refusal
from tommybar.resize.table import Bind, SizeRow
from tommybar.web.ask import Ask, answer, go_to
from tommybar.web.files import Choices
from tommybar.web.pages.opened import Head, figure_words, head_of, name_of, plan_of
from tommybar.web.plans import design_of, pins_of, scale_of

if TYPE_CHECKING:
    from tommybar.design import Design

STOCKS = (
    ("ask", "bought or asked for where the rack has nothing"),
    ("buy", "bought where it gives a larger scale"),
    ("rack", "from the rack only"),
)


@dataclass(frozen=True)
class Row:
    """One size."""

    name: str
    old: str
    exact: str
    new: str
    unit: str
    follows: str
    changed: bool
    why: str
    choices: tuple[str, ...]
    pin: str  # as typed
    may_pin: bool
    second: str
    wrong: str  # what is wrong with the pin


@dataclass(frozen=True)
class Limit:
    """A limit that was looked at."""

    what: str
    part: str
    figure: str
    bound: str
    scale: str
    binds: bool


@dataclass(frozen=True)
class SizesPage:
    """The table and its form."""

    head: Head
    rows: tuple[Row, ...]
    limits: tuple[Limit, ...]
    scale: str  # of the plan
    typed_scale: str
    wrong_scale: str
    stock: str
    stocks: tuple[tuple[str, str], ...]
    second: str  # scale of the second choice
    unit: str
    complaints: tuple[Complaint, ...]
    undoable: int
    redoable: int


def sizes(ask: Ask) -> Response:
    """The page; when no plan comes of what is held, the form stays so that it can be let go."""
    name = name_of(ask)
    choices = ask.desk.files.choices(name)
    design = design_of(ask.desk.files.text("designs", name))
    try:
        plan = plan_of(ask)
    except Refusal as refusal:
        return _as_drawn(ask, design, choices, refusal)
    return _shown(ask, plan, choices)


def _as_drawn(ask: Ask, design: Design, choices: Choices, refusal: Refusal) -> Response:
    """The sizes as drawn, with what stands against the plan."""
    reader = ask.reader
    rows = []
    for one in design.named:
        drawn = SizeRow(
            one.name, one.value, one.value, one.value, one.unit, one.follows or "worked out", one.because
        )
        rows.append(_row(drawn, None, choices.pins.get(one.name, ""), "", reader))
    page = SizesPage(
        head_of(ask, "sizes"),
        tuple(rows),
        (),
        "1",
        choices.scale,
        "",
        choices.stock,
        STOCKS,
        "",
        reader.unit,
        refusal.complaints,
        ask.desk.files.undoable("choices", name_of(ask)),
        ask.desk.files.redoable("choices", name_of(ask)),
    )
    return answer(ask, "sizes.html", page, "designs", 400)


def _shown(
    ask: Ask,
    plan: Plan,
    choices: Choices,
    wrong_pins: dict[str, str] | None = None,
    wrong_scale: str = "",
) -> Response:
    reader = ask.reader
    wrong_pins = wrong_pins or {}
    second = {one.name: one for one in plan.second.rows} if plan.second else {}
    page = SizesPage(
        head_of(ask, "sizes", plan),
        tuple(
            _row(
                one,
                second.get(one.name),
                choices.pins.get(one.name, ""),
                wrong_pins.get(one.name, ""),
                reader,
            )
            for one in plan.sizes
        ),
        tuple(_limit(one, reader) for one in plan.binds),
        f"{plan.scale:g}",
        choices.scale,
        wrong_scale,
        choices.stock,
        STOCKS,
        f"{plan.second.scale:g}" if plan.second else "",
        reader.unit,
        tuple(Complaint(words, place=name) for name, words in wrong_pins.items()),
        ask.desk.files.undoable("choices", name_of(ask)),
        ask.desk.files.redoable("choices", name_of(ask)),
    )
    return answer(ask, "sizes.html", page, "designs", 400 if wrong_pins or wrong_scale else 200)


def _row(one: SizeRow, second: SizeRow | None, pin: str, wrong: str, reader: Reader) -> Row:
    old, new = (figure_words(value, one.unit, reader) for value in (one.old, one.new))
    return Row(
        one.name,
        old,
        figure_words(one.exact, one.unit, reader),
        new,
        reader.unit if one.unit == "mm" else "",
        one.follows,
        old != new,
        one.why,
        one.choices,
        pin,
        one.follows != "worked out",
        figure_words(second.new, one.unit, reader) if second else "",
        wrong,
    )


def _limit(one: Bind, reader: Reader) -> Limit:
    sign = "at least " if one.least else "up to "
    return Limit(
        one.what,
        one.part,
        reader.length(one.figure) if one.figure or one.bound else "",
        f"{sign}{reader.length(one.bound)}" if one.figure or one.bound else "",
        f"{one.scale:.4g}",
        one.binds,
    )


def hold(ask: Ask) -> Response:
    """Keep pins, scale and where metal may come from; what is wrong is said beside its field."""
    name = name_of(ask)
    now = ask.desk.files.choices(name)
    design = design_of(ask.desk.files.text("designs", name))
    pins = {
        key.removeprefix("pin:"): ask.typed(key).strip()
        for key in ask.form
        if key.startswith("pin:") and ask.typed(key).strip()
    }
    wrong: dict[str, str] = {}
    for size, words in pins.items():
        try:
            values = pins_of({size: words}, design)
            design.sized(values)
        except Refusal as refusal:
            first = refusal.complaints[0]
            wrong[size] = f"{first.what} {first.remedy}".strip()
    wrong_scale = ""
    try:
        scale_of(ask.typed("scale"))
    except Refusal as refusal:
        wrong_scale = str(refusal)
    choices = Choices(now.shop, ask.typed("scale").strip(), pins, _stock(ask.typed("stock")))
    if wrong or wrong_scale:
        plan = ask.desk.plans.of(name, f"/designs/{name}/sizes", ask.reader.unit)
        return _shown(ask, plan, choices, wrong, wrong_scale)
    ask.desk.files.choose(name, choices)
    return go_to(f"/designs/{name}/sizes", "saved")


def _stock(typed: str) -> Literal["rack", "buy", "ask"]:
    if typed == "rack":
        return "rack"
    return "buy" if typed == "buy" else "ask"


def take_scale(ask: Ask) -> Response:
    """Take the second choice."""
    name = name_of(ask)
    now = ask.desk.files.choices(name)
    scale_of(ask.typed("scale"))
    ask.desk.files.choose(name, Choices(now.shop, ask.typed("scale"), now.pins, now.stock))
    return go_to(f"/designs/{name}/sizes", "saved")


def undo(ask: Ask) -> Response:
    """Put the earlier choices back."""
    name = name_of(ask)
    return go_to(f"/designs/{name}/sizes", "undone" if ask.desk.files.undo("choices", name) else "none")
