"""Look-up "drawing": sheets, edges, finish and preferred numbers by their first word."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from tommybar.facts.answer import Answer, Row
from tommybar.facts.drawing import edges, finish, preferred_numbers, sheets
from tommybar.facts.keyed import number
from tommybar.refusals import Refusal, nearest


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """Facts of the drawing office: ``drawing sheet A3``, ``drawing finish reaming``.

    Parameters
    ----------
    keys : tuple of str
        "sheet", "edge", "finish" or "preferred", then its key [-]
    options : Mapping
        None is used

    Returns
    -------
    Answer
        Sizes [mm], roughness Ra [um] or numbers [-]

    Raises
    ------
    Refusal
        If the first word or the key is unknown; the nearest is offered.

    Examples
    --------
    >>> answer(("sheet", "A3"), {}).data["drawing_space_mm"]
    [277, 390]

    References
    ----------
    source: as in facts/drawing (sheets, edges, finish, preferred numbers).
    """
    words = " ".join(keys).split()
    if len(words) < 2 or words[0] not in _KINDS:
        first = words[0] if words else ""
        raise Refusal(
            f'"{first}" is not a fact of the drawing office with its key.',
            nearest(first, _KINDS)
            or "For example: drawing sheet A3, edge -0.3, finish reaming, preferred 37.",
        )
    return _KINDS[words[0]](" ".join(words[1:]))


def _sheet(key: str) -> Answer:
    found = sheets.sheet(key.upper())
    pairs = {
        "trimmed": found.trimmed,
        "drawing space": found.drawing_space,
        "untrimmed": found.untrimmed,
    }
    return Answer(
        topic="drawing",
        key=f"sheet {found.name}",
        title=f"Sheet {found.name}",
        rows=tuple(
            Row(f"{words}, {side}", pair[place], "mm", 0)
            for words, pair in pairs.items()
            for place, side in enumerate(("short side", "long side"))
        ),
        source=str(sheets.source()),
        data={
            **{f"{words.replace(' ', '_')}_mm": list(pair) for words, pair in pairs.items()},
            "fields": list(found.fields),
        },
    )


def _edge(key: str) -> Answer:
    found = edges.edge_of_size(number(key, "edge size"))
    return Answer(
        topic="drawing",
        key=f"edge {found.text}",
        title=f"Edge {found.text}",
        rows=(
            Row("recommended size", found.size_mm, "mm", 2),
            Row("outside edge", text=found.external),
            Row("inside edge", text=found.internal),
        ),
        source=str(edges.source()),
        data={"size_mm": found.size_mm, "external": found.external, "internal": found.internal},
    )


def _finish(key: str) -> Answer:
    fine, coarse = finish.usual_roughness(key)
    return Answer(
        topic="drawing",
        key=f"finish {key}",
        title=f"Roughness that {key} usually leaves",
        rows=(Row("Ra from", fine, "um", 2), Row("Ra to", coarse, "um", 2)),
        source=str(finish.source()),
        data={"ra_um": [fine, coarse]},
    )


def _preferred(key: str) -> Answer:
    wanted = number(key, "figure")
    near = {name: preferred_numbers.nearest_preferred(wanted, name) for name in preferred_numbers.SERIES}
    return Answer(
        topic="drawing",
        key=f"preferred {key}",
        title=f"Preferred numbers nearest to {wanted:g}",
        rows=tuple(Row(name, text=f"{value:g}") for name, value in near.items()),
        source=str(preferred_numbers.source()),
        data=dict(near),
    )


_KINDS: dict[str, Callable[[str], Answer]] = {
    "sheet": _sheet,
    "edge": _edge,
    "finish": _finish,
    "preferred": _preferred,
}
