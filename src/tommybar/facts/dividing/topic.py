"""Look-up "divide": divisions on a dividing head or a rotary table."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from tommybar.facts.answer import Answer, Row
from tommybar.facts.dividing.compound import compound_indexings
from tommybar.facts.dividing.head import (
    Indexing,
    degrees_a_turn,
    index_angle,
    index_divisions,
    plain_indexings,
)
from tommybar.facts.dividing.places import CrankPlace, crank_places
from tommybar.facts.dividing.plates import Plates, plate_set, plates_of
from tommybar.facts.dividing.table import table_settings
from tommybar.facts.keyed import number, whole
from tommybar.facts.table import read_table
from tommybar.refusals import Refusal

RULE = "turns = ratio / divisions (first principles; worked examples of Army ordnance course OD1644 seen)"


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """Crank turns and holes: ``divide 7``, or ``divide "35 deg"``.

    Parameters
    ----------
    keys : tuple[str, ...]
        Number of divisions [-], or an angle marked "deg" [deg]
    options : Mapping[str, str]
        "ratio" (40 when not given), "plates" ("15-20,21-33"; a usual set of
        three when not given), "vernier" (resolution [arc second] of a rotary
        table: then degrees, minutes and seconds of every division)

    Returns
    -------
    Answer
        turns, holes, plate [-] and errors [deg]

    Raises
    ------
    Refusal
        If a key is missing or outside its range.

    Examples
    --------
    >>> found = answer(("7",), {"ratio": "40", "plates": "15-20,21-33"}).data
    >>> found["turns"], found["holes"], found["plate"], found["error_deg"]
    (5, 15, 21, 0.0)

    References
    ----------
    source: turns = ratio / divisions, first principles.
    """
    if len(keys) != 1:
        raise Refusal(
            f"The look-up divide has {len(keys)} figures; it needs 1: the divisions or an angle.",
            'For example: divide 7 --ratio 40, or divide "35 deg".',
        )
    ratio = whole(options.get("ratio", "40"), "ratio")
    if "vernier" in options:
        return _by_table(keys[0], ratio, number(options["vernier"], "vernier"))
    plates, plate_words = _plates(options)
    if keys[0].strip().casefold().endswith("deg"):
        angle = number(keys[0], "angle")
        found = index_angle(angle, ratio, plates)
        others: tuple[Indexing, ...] = ()
        compound: list[dict[str, object]] = []
        places: tuple[CrankPlace, ...] = ()
        title = f"{angle:g} deg on {ratio}:1"
    else:
        divisions = whole(keys[0], "number of divisions")
        found = index_divisions(divisions, ratio, plates)
        others = plain_indexings(divisions, ratio, plates)[1:]
        places = () if found.exact else crank_places(divisions, ratio, plates)
        ways = () if found.exact else compound_indexings(divisions, ratio, plates, most=3)
        compound = [
            {"words": way.words, "error_deg": way.error, "closing_error_deg": way.closing_error}
            for way in ways
        ]
        title = f"{divisions} divisions on {ratio}:1"
    rows = [
        Row("crank", text=found.words),
        Row("error of a step", found.error, "deg", 5),
        Row("error gathered in the last gap", found.closing_error, "deg", 4),
    ]
    worst = max((abs(place.error) for place in places), default=abs(found.error))
    if places:
        rows.append(Row(f"worst error, each set from the first on {places[0].plate}", worst, "deg", 4))
    rows += [Row("or", text=other.words) for other in others]
    rows += [Row("compound", text=f"{way['words']} ({way['error_deg']:.2g} deg a step)") for way in compound]
    cautions = (
        ()
        if found.exact
        else ("Not exact: a repeated step gathers error, so set each division from the first.",)
    )
    return Answer(
        topic="divide",
        key=keys[0],
        title=title,
        rows=tuple(rows),
        source=f"{RULE}; {plate_words}",
        data={
            "ratio": ratio,
            "crank_turn_deg": degrees_a_turn(ratio),
            "turns": found.turns,
            "holes": found.holes,
            "plate": found.plate,
            "error_deg": found.error,
            "closing_error_deg": found.closing_error,
            "worst_error_deg": worst,
            "exact": found.exact,
            "others": [{"turns": way.turns, "holes": way.holes, "plate": way.plate} for way in others],
            "compound": compound,
            "places": [
                {
                    "n": place.n,
                    "turns": place.turns,
                    "holes": place.holes,
                    "plate": place.plate,
                    "error_deg": place.error,
                }
                for place in places
            ],
            "source": f"{RULE}; {plate_words}",
        },
        cautions=cautions,
    )


def _plates(options: Mapping[str, str]) -> tuple[Plates, str]:
    if "plates" in options:
        return plates_of(options["plates"]), "plates as given"
    source = read_table(Path(__file__).parent / "plates.toml").source
    return plate_set("three plates"), f"three usual plates: {source}"


def _by_table(key: str, ratio: int, resolution: float) -> Answer:
    divisions = whole(key, "number of divisions")
    settings = table_settings(divisions, ratio, resolution)
    worst = max(abs(setting.error) for setting in settings)
    rows = [
        Row(f"division {one.n}", text=f"{one.degrees} deg {one.minutes}' {one.seconds:g}\"")
        for one in settings
    ]
    source = "degrees, minutes and seconds, each division from nought (first principles)"
    return Answer(
        topic="divide",
        key=key,
        title=f"{divisions} divisions on a {ratio}:1 rotary table, vernier {resolution:g} arc seconds",
        rows=(*rows, Row("worst error", worst, "deg", 5)),
        source=source,
        data={
            "ratio": ratio,
            "settings": [
                {
                    "n": one.n,
                    "angle_deg": one.angle,
                    "degrees": one.degrees,
                    "minutes": one.minutes,
                    "seconds": one.seconds,
                    "turns": one.turns,
                    "error_deg": one.error,
                }
                for one in settings
            ],
            "error_deg": worst,
            "source": source,
        },
    )
