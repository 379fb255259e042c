"""Look-up "gears": change gears for a pitch on a lead screw."""

from __future__ import annotations

from collections.abc import Mapping

from tommybar.facts.answer import Answer, Row
from tommybar.facts.gears.lead import lead_of
from tommybar.facts.gears.quadrant import Quadrant
from tommybar.facts.gears.search import gear_set, gear_trains
from tommybar.facts.keyed import number, whole
from tommybar.refusals import Refusal

RULE = "pitch = lead screw x drivers / driven (first principles)"


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """Change gears: ``gears 1.25 --leadscrew "8 tpi"``.

    Parameters
    ----------
    keys : tuple[str, ...]
        Pitch wanted: figure in [mm], or "20 tpi"
    options : Mapping[str, str]
        "leadscrew" ("8 tpi", "3 mm"), "gears" (teeth owned, "20,25,30-50"; a
        usual set with a 127 when not given), "span" (first shaft to lead screw
        [mm]), "slot" ("40-110" [mm]), "module" [mm], "within" [ppm]

    Returns
    -------
    Answer
        train [-], pitch [mm], errors [ppm] and [um] over 100 mm

    Raises
    ------
    Refusal
        If a key is missing, or no train of the set is near enough.

    Examples
    --------
    >>> found = answer(("1.25",), {"leadscrew": "8 tpi"}).data
    >>> found["train"], found["pitch_mm"], found["error_ppm"]
    ('50/127', 1.25, 0.0)

    References
    ----------
    source: lead rule, first principles.
    """
    if len(keys) != 1 or "leadscrew" not in options:
        raise Refusal(
            f"The look-up gears has {len(keys)} figures; it needs 1 pitch, and the lead screw.",
            'For example: gears 1.25 --leadscrew "8 tpi".',
        )
    wanted, screw = lead_of(keys[0]), lead_of(options["leadscrew"])
    gears, set_words = _owned(options)
    within = number(options.get("within", "5000"), "bound of error")
    trains = gear_trains(wanted, screw, gears, _quadrant(options), 5, within)
    if not trains:
        raise Refusal(
            f"The pitch is {float(wanted):.4g} mm; no train of the {len(gears)} gears cuts it within "
            f"{within:g} ppm and can be put on.",
            "Add a 127 or a 63 to the set, use a die, or widen the bound.",
        )
    best = trains[0]
    rows = [
        Row("gears, driver/driven", text=best.words + (f", idler {best.idler}" if best.idler else "")),
        Row("pitch", best.pitch, "mm", 6),
        Row("error", best.error_ppm, "ppm", 1),
        Row("error over 100 mm", best.error_per_100, "um", 2),
    ]
    rows += [Row("or", text=f"{train.words} ({train.error_ppm:+.1f} ppm)") for train in trains[1:]]
    source = f"{RULE}; {set_words}"
    cautions = ("Check that the gears clear the shafts: span and slot of the quadrant were not given.",)
    return Answer(
        topic="gears",
        key=keys[0],
        title=f"{keys[0]} on a lead screw of {options['leadscrew']}",
        rows=tuple(rows),
        source=source,
        data={
            "train": best.words,
            "drivers": list(best.drivers),
            "driven": list(best.driven),
            "idler": best.idler,
            "wanted_mm": float(wanted),
            "pitch_mm": best.pitch,
            "error_ppm": best.error_ppm,
            "error_per_100_um": best.error_per_100,
            "others": [
                {"train": train.words, "pitch_mm": train.pitch, "error_ppm": train.error_ppm}
                for train in trains[1:]
            ],
            "source": source,
        },
        cautions=() if "span" in options else cautions,
    )


def _owned(options: Mapping[str, str]) -> tuple[tuple[int, ...], str]:
    if "gears" not in options:
        return gear_set("with 127"), "a usual set with a 127, assumed (common practice, no source)"
    teeth: list[int] = []
    for part in options["gears"].split(","):
        first, _, last = part.strip().partition("-")
        low = whole(first, "number of teeth")
        high = whole(last, "number of teeth") if last else low
        teeth += range(low, high + 1, 5) if last else (low,)
    return tuple(teeth), "gears as given"


def _quadrant(options: Mapping[str, str]) -> Quadrant:
    slot = options.get("slot", "0-0").split("-")
    return Quadrant(
        module=number(options.get("module", "1"), "module"),
        span=number(options.get("span", "0"), "span"),
        slot_from=number(slot[0], "near end of the slot"),
        slot_to=number(slot[-1], "far end of the slot"),
    )
