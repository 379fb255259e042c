"""Try the machine: short trials whose outcome is written into the shop's file."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from starlette.responses import Response

from tommybar.design.figures import figure
from tommybar.design.yaml_file import Place, yaml_from_text
from tommybar.refusals import Complaint, Refusal
from tommybar.shop.calibration import dial_by_one_cut, reamer_cuts, runout_of, slack_of
from tommybar.shop.model import Shop
from tommybar.web.ask import Ask, answer
from tommybar.web.pages.designs import title_of
from tommybar.web.plans import shop_of
from tommybar.web.splice import put, spliced

SLIDES = ("cross_slide", "top_slide", "carriage", "tailstock")


@dataclass(frozen=True)
class Trial:
    """One trial with its fields: name, words, choices, what was typed."""

    kind: str
    title: str
    how: tuple[str, ...]
    fields: tuple[tuple[str, str, tuple[str, ...], str], ...]
    wrong: str
    found: str


@dataclass(frozen=True)
class CalibratePage:
    """All trials of a shop."""

    name: str
    title: str
    trials: tuple[Trial, ...]
    units: str
    undoable: int
    redoable: int
    complaints: tuple[Complaint, ...]


def calibrate(ask: Ask) -> Response:
    """The page."""
    return _shown(ask, "", "")


def _shown(ask: Ask, wrong: str, found: str) -> Response:
    name = str(ask.path["name"])
    text = ask.desk.files.text("shops", name)
    shop = shop_of(text)
    kind = ask.typed("kind")
    page = CalibratePage(
        name,
        title_of(text, name),
        tuple(
            Trial(
                one,
                title,
                how,
                tuple(
                    (field, words, choices, ask.typed(field) if one == kind else "")
                    for field, words, choices in fields
                ),
                wrong if one == kind else "",
                found if one == kind else "",
            )
            for one, title, how, fields in _trials(shop)
        ),
        shop.unit,
        ask.desk.files.undoable("shops", name),
        ask.desk.files.redoable("shops", name),
        (),
    )
    return answer(ask, "calibrate.html", page, "shop", 400 if wrong else 200)


def _trials(
    shop: Shop,
) -> tuple[tuple[str, str, tuple[str, ...], tuple[tuple[str, str, tuple[str, ...]], ...]], ...]:
    return (
        (
            "dial",
            "Does the cross-slide read diameter? One cut tells",
            (
                "Chuck any bar. Take a light cut over 10 mm and measure the diameter.",
                "Without turning back, feed in by a number of whole divisions, cut again, measure again.",
            ),
            (
                ("marked", "one division is numbered", ()),
                ("divisions", "divisions fed in", ()),
                ("before", "diameter before", ()),
                ("after", "diameter after", ()),
            ),
        ),
        (
            "slack",
            "Slack of a slide",
            (
                "Indicator against the slide. Turn one way until it moves, set the dial to 0.",
                "Turn back until the indicator just moves and read the divisions. Three times, at different places.",
            ),
            (("slide", "slide", SLIDES), ("readings", "divisions, with commas", ())),
        ),
        (
            "runout",
            "Run-out of a chuck",
            (
                "A ground bar in the jaws, indicator one diameter from them; turn by hand, full reading.",
                "Open, turn the bar, close, read again: three grips.",
            ),
            (
                ("jaws", "jaws", tuple(one.name for one in shop.jaws)),
                ("readings", "readings, with commas", ()),
            ),
        ),
        (
            "reamer",
            "What a reamer really cuts",
            (
                "Ream two or three holes in scrap of the material you work most, with the oil you use.",
                "Measure each.",
            ),
            (
                ("reamer", "reamer", tuple(f"{one.size:g}" for one in shop.reamers)),
                ("readings", "holes, with commas", ()),
            ),
        ),
    )


def try_it(ask: Ask) -> Response:
    """Work a trial out and write it down."""
    name = str(ask.path["name"])
    text = ask.desk.files.text("shops", name)
    trials: dict[str, Callable[[Ask, str, Shop], tuple[str, str]]] = {
        "dial": _dial,
        "slack": _slack,
        "runout": _runout,
        "reamer": _reamer,
    }
    try:
        trial = trials.get(ask.typed("kind"))
        if trial is None:
            raise Refusal("The form does not say what was tried.", "Load the page again.")
        shop = shop_of(text)
        new, words = trial(ask, text, shop)
        shop_of(new)
    except Refusal as refusal:
        return _shown(ask, str(refusal), "")
    ask.desk.files.save("shops", name, new)
    return _shown(ask, "", words)


def _length(ask: Ask, field: str, shop: Shop) -> float:
    return figure(ask.typed(field), shop.unit)


def _readings(ask: Ask, shop: Shop | None = None) -> list[float]:
    typed = [one.strip() for one in ask.typed("readings").split(",") if one.strip()]
    return [figure(one, shop.unit) if shop else figure(one, "mm", "number") for one in typed]


def _in_file(value: float, shop: Shop) -> str:
    return f"{value:.4f}".rstrip("0").rstrip(".") + (" mm" if shop.unit == "in" else "")


def _dial(ask: Ask, text: str, shop: Shop) -> tuple[str, str]:
    marked = _length(ask, "marked", shop)
    divisions = figure(ask.typed("divisions"), "mm", "number")
    found = dial_by_one_cut(marked, divisions, _length(ask, "before", shop), _length(ask, "after", shop))
    place = ("lathe", "cross_slide")
    text = put(text, (*place, "division"), _in_file(marked, shop))
    return put(text, (*place, "reads"), found.reads), found.words


def _slack(ask: Ask, text: str, shop: Shop) -> tuple[str, str]:
    slide, slack = ask.typed("slide"), slack_of(_readings(ask))
    if slide not in SLIDES:
        raise Refusal(f'"{slide[:40]}" is no slide.', f"There are {', '.join(SLIDES)}.")
    words = (
        f"The {slide.replace('_', ' ')} is taken up over {slack:g} divisions, the largest of your readings."
    )
    return put(text, ("lathe", slide, "slack"), f"{slack:g}"), words


def _runout(ask: Ask, text: str, shop: Shop) -> tuple[str, str]:
    jaws, runout = ask.typed("jaws"), runout_of(_readings(ask, shop))
    index = _index(text, "jaws", lambda one: isinstance(one, dict) and one.get("name") == jaws)
    words = f"{jaws}: {runout:g} mm full indicator reading is reckoned with, the largest of your readings."
    return put(text, ("jaws", index, "runout"), _in_file(runout, shop)), words


def _reamer(ask: Ask, text: str, shop: Shop) -> tuple[str, str]:
    size = next((one.size for one in shop.reamers if f"{one.size:g}" == ask.typed("reamer")), None)
    if size is None:
        raise Refusal(
            f'There is no reamer "{ask.typed("reamer")[:20]}" in this shop.', "Choose one of the list."
        )
    cuts = reamer_cuts(size, _readings(ask, shop))

    def same(one: object) -> bool:
        written = one.get("size") if isinstance(one, dict) else one
        return abs(figure(str(written), shop.unit) - size) < 1e-6

    index = _index(text, "reamers", same)
    place: Place = ("reamers", index)
    entry = yaml_from_text(text).data["reamers"][index]
    words = f"The reamer {size:g} cuts {cuts:g} mm; mates are made to that."
    if isinstance(entry, dict):
        return put(text, (*place, "cuts"), _in_file(cuts, shop)), words
    return spliced(text, place, f"{{size: {entry}, cuts: {_in_file(cuts, shop)}}}"), words


def _index(text: str, table: str, same: Callable[[object], bool]) -> int:
    entries = yaml_from_text(text).data.get(table)
    for index, one in enumerate(entries if isinstance(entries, list) else []):
        if same(one):
            return index
    raise Refusal(
        f"The file of this shop does not list its {table} yet; they are taken from an example.",
        "Say them in the walk-through first.",
    )
