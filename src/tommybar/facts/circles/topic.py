"""Look-up "circle": number of holes and pitch-circle diameter."""

from __future__ import annotations

from collections.abc import Mapping

from tommybar.facts.answer import Answer, Row
from tommybar.facts.circles.chords import chord
from tommybar.facts.circles.holes import CENTRE, hole_circle
from tommybar.facts.keyed import number, whole
from tommybar.refusals import Refusal

SOURCE = "geometry: x = D/2 cos a, y = D/2 sin a, chord = D sin(180/n) (first principles)"


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """Holes on a circle: ``circle 6 33``, options ``start`` [deg] and ``convention``.

    Parameters
    ----------
    keys : tuple[str, ...]
        Number of holes [-] and pitch-circle diameter [mm]
    options : Mapping[str, str]
        "start" (angle of hole 1 [deg]) and "convention" ("centre" or "corner")

    Returns
    -------
    Answer
        Coordinates [mm], angles [deg] and the chord between neighbours [mm]

    Raises
    ------
    Refusal
        If a key is missing or is no number.

    Examples
    --------
    >>> answer(("6", "33"), {}).data["chord_mm"]
    16.5

    References
    ----------
    source: first principles.
    """
    if len(keys) != 2:
        raise Refusal(
            f"The look-up circle has {len(keys)} figures; it needs 2: holes and pitch circle.",
            "For example: circle 6 33.",
        )
    count = whole(keys[0], "number of holes")
    diameter = number(keys[1], "pitch-circle diameter")
    start = number(options.get("start", "0"), "start angle")
    convention = options.get("convention", CENTRE)
    holes = hole_circle(count, diameter, start, convention)
    rows = [
        row
        for hole in holes
        for row in (
            Row(f"hole {hole.n} x", hole.x, "mm"),
            Row(f"hole {hole.n} y", hole.y, "mm"),
            Row(f"hole {hole.n} angle", hole.angle, "deg", 4),
        )
    ]
    between = round(chord(count, diameter), 9) if count > 1 else 0.0
    rows.append(Row("chord between neighbours", between, "mm"))
    return Answer(
        topic="circle",
        key=" ".join(keys),
        title=f"{count} holes on a circle of {diameter:g} mm",
        rows=tuple(rows),
        source=SOURCE,
        data={
            "count": count,
            "pitch_circle_diameter_mm": diameter,
            "start_angle_deg": start,
            "convention": convention,
            "holes": [
                {
                    "n": hole.n,
                    "x_mm": round(hole.x, 6),
                    "y_mm": round(hole.y, 6),
                    "angle_deg": round(hole.angle, 6),
                }
                for hole in holes
            ],
            "chord_mm": between,
            "widest_mm": round(chord(count, diameter, count // 2), 9) if count > 1 else 0.0,
            "source": SOURCE,
        },
    )
