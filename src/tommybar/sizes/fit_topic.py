"""Look-up "fit": a hole and a shaft, by classes, by a trade word, or by a class of ANSI B4.1."""

from __future__ import annotations

import re
from collections.abc import Mapping

from tommybar.facts.answer import Answer, Row
from tommybar.facts.fits import ansi_b4_1, iso286, preferred
from tommybar.facts.keyed import number
from tommybar.refusals import Refusal
from tommybar.sizes.fits import Fit, fit_between
from tommybar.sizes.limits_text import fit_from_text
from tommybar.sizes.limits_topic import limit_data, limit_rows
from tommybar.sizes.retarget import mate_limits

_INCH_CLASS = re.compile(r"(?P<size>.*?)\s*(?P<name>(?:RC|LC|LT|LN|FN)\s?\d{1,2})", re.IGNORECASE)


def answer(keys: tuple[str, ...], options: Mapping[str, str]) -> Answer:
    """Fit of a hole and a shaft: ``fit "8 H7/g6"``, ``fit 8 sliding``, ``fit 0.5 RC4``.

    Parameters
    ----------
    keys : tuple of str
        Nominal size [mm] and pair or trade word; for classes of ANSI B4.1 the
        size is in inches [in]
    options : Mapping
        "hole" or "shaft": the measured size of the member already made; the
        limits of its mate are added [mm]

    Returns
    -------
    Answer
        Limits of both members [um, mm], least and greatest clearance [um]

    Raises
    ------
    Refusal
        If the text cannot be read or lies outside the table.

    Examples
    --------
    >>> answer(("8 H7/g6",), {}).data["min_clearance_um"]
    5.0

    References
    ----------
    source: ISO 286-1:2010 and ANSI/ASME B4.1-1967, as in facts/fits.
    """
    text = " ".join(keys).strip()
    if not text:
        raise Refusal(
            "No fit is given.",
            'For example: fit "8 H7/g6", fit 8 sliding or fit 0.5 RC4 (inches). Words: '
            + ", ".join(fit.word for fit in preferred.preferred_fits())
            + ".",
        )
    inch = _INCH_CLASS.fullmatch(text)
    if inch:
        return _inch_answer(text, inch["size"], inch["name"], options)
    fit = fit_from_text(text)
    pair = f"{fit.hole.zone}/{fit.shaft.zone}"
    known = next(
        (one for one in preferred.preferred_fits() if pair in (one.hole_based, one.shaft_based)), None
    )
    words = (Row("in the trade", text=f"{known.word}: {known.feel}"),) if known else ()
    told = {"word": known.word, "feel": known.feel, "use": known.use} if known else {}
    return _answer(text, fit.text, fit, str(iso286.source()), words, told, options)


def _inch_answer(text: str, size: str, name: str, options: Mapping[str, str]) -> Answer:
    nominal_in = number(size.removesuffix('"').removesuffix("in") or "none", "nominal size")
    inch = ansi_b4_1.inch_fit(nominal_in, name)
    told: dict[str, object] = {
        "nominal_in": nominal_in,
        "word": inch.words,
        "hole_thou": [0.0, inch.hole_upper_thou],
        "shaft_thou": [inch.shaft_lower_thou, inch.shaft_upper_thou],
        "min_clearance_thou": inch.min_clearance_thou,
        "max_clearance_thou": inch.max_clearance_thou,
    }
    words = (
        Row("in the trade", text=inch.words),
        Row("hole", text=f"+{inch.hole_upper_thou:g} / 0 thou"),
        Row("shaft", text=f"{inch.shaft_upper_thou:+g} / {inch.shaft_lower_thou:+g} thou"),
    )
    fit = fit_between(inch.hole, inch.shaft)
    title = f"{nominal_in:g} in {inch.name}"
    return _answer(text, title, fit, str(ansi_b4_1.source()), words, told, options)


def _answer(
    text: str,
    title: str,
    fit: Fit,
    source: str,
    words: tuple[Row, ...],
    told: Mapping[str, object],
    options: Mapping[str, str],
) -> Answer:
    mates, mate_data = _mate(fit, options)
    least, greatest = round(fit.min_clearance_um, 6), round(fit.max_clearance_um, 6)
    return Answer(
        topic="fit",
        key=text,
        title=title,
        rows=(
            *limit_rows("hole", fit.hole),
            *limit_rows("shaft", fit.shaft),
            Row("least clearance", least, "um", 1),
            Row("greatest clearance", greatest, "um", 1),
            Row("kind", text=fit.kind),
            *words,
            *mates,
        ),
        source=source,
        data={
            "nominal_mm": round(fit.hole.nominal, 6),
            "hole": {"zone": fit.hole.zone, **limit_data(fit.hole)},
            "shaft": {"zone": fit.shaft.zone, **limit_data(fit.shaft)},
            "min_clearance_um": least,
            "max_clearance_um": greatest,
            "kind": fit.kind,
            **told,
            **mate_data,
        },
    )


def _mate(fit: Fit, options: Mapping[str, str]) -> tuple[tuple[Row, ...], dict[str, object]]:
    if "hole" in options and "shaft" in options:
        raise Refusal("Both the hole and the shaft are given as made.", "Give only the one that is made.")
    if "hole" in options:
        smallest, largest = mate_limits(number(options["hole"], "measured hole"), fit, "hole")
        mate = "shaft"
    elif "shaft" in options:
        smallest, largest = mate_limits(number(options["shaft"], "measured shaft"), fit, "shaft")
        mate = "hole"
    else:
        return (), {}
    rows = (
        Row(f"{mate} to be made now, smallest", smallest, "mm", 4),
        Row(f"{mate} to be made now, largest", largest, "mm", 4),
    )
    return rows, {"mate": mate, "mate_smallest_mm": round(smallest, 6), "mate_largest_mm": round(largest, 6)}
