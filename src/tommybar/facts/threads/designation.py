"""From what people write for a thread to the thread itself."""

from __future__ import annotations

import re
from functools import cache, lru_cache

from tommybar.facts.threads.series import SERIES, threads_of_series
from tommybar.facts.threads.thread import Thread
from tommybar.refusals import Refusal, nearest


@cache
def _known() -> dict[str, Thread]:
    """Every spelling that names exactly one thread, in the plain form of :func:`_plain`."""
    found: dict[str, Thread] = {}
    for series in SERIES:
        for one in threads_of_series(series):
            found[_plain(one.designation)] = one
            if one.threads_per_inch is not None:
                size = one.designation.rsplit(" ", 1)[0].split("-")[0]
                found[_plain(f"{size}-{one.threads_per_inch:g} {series}")] = one
                if series in ("UNC", "UNF", "UNEF"):
                    found[_plain(f"{size} {series}")] = one
                    found.setdefault(_plain(f"{size}-{one.threads_per_inch:g}"), one)
                if series == "BSP":
                    found[_plain(f"G{size}")] = one
            elif series == "ISO metric coarse":
                found[_plain(f"{one.designation}x{one.pitch:g}")] = one
    return found


@lru_cache(maxsize=1024)
def _plain(words: str) -> str:
    """The designation without the freedoms that people take in writing it."""
    text = " ".join(words.strip().strip('"').upper().split())
    text = re.sub(r"\s*[X×*]\s*(?=\d)", "X", text)
    text = re.sub(r'(?<=\d)"', "", text)
    text = re.sub(r"\s*TPI\b", "", text)
    text = re.sub(r"^(?:NO\.?|NR\.?)\s*(?=\d)", "#", text)
    text = re.sub(r"^BA\s*(\d+)$", r"\1 BA", text)
    text = re.sub(r"\bBSPP\b", "BSP", text)
    text = re.sub(r"^G\s*(?=\d)", "G", text)
    if metric := re.fullmatch(r"M\s*(\d+(?:\.\d+)?|\.\d+)(?:X(\d+(?:\.\d+)?|\.\d+))?", text):
        pitch = f"X{float(metric[2]):g}" if metric[2] else ""
        return f"M{float(metric[1]):g}{pitch}"
    text = re.sub(r"(?<=\d)\s*[X-]\s*(?=\d)", "-", text)
    text = re.sub(r"(?<=\d)\s*(?=(?:UN|BS|BA\b|ME\b|BRASS\b))", " ", text)
    if re.fullmatch(r"\d{1,2}-\d+(?: UN.*)?", text) and not re.match(r"1-(?:8|12|20)\b", text):
        text = "#" + text  # "6-32" is the number size; "1-8" is one inch
    return text


def thread(designation: str) -> Thread:
    """The thread that goes by a designation.

    Parameters
    ----------
    designation : str
        "M6", "M6x0.75", "1/4-20 UNC", "#6-32", "3/8 BSW", "1/4 BSF",
        "2 BA", "1/4-40 ME", "G 1/8" or "1/8 BSP"; capitals, spaces and
        x for - are free

    Returns
    -------
    Thread
        Its diameters and pitch [mm], stress area [mm2], flank angle [deg]

    Raises
    ------
    Refusal
        If no series has it; the nearest designations are offered.

    Examples
    --------
    >>> one = thread("M6")
    >>> one.pitch, one.pitch_diameter, one.minor, round(one.stress_area, 1)
    (1.0, 5.35, 4.917, 20.1)
    >>> thread("1/4 x 20 unc").designation
    '1/4-20 UNC'

    References
    ----------
    .. [1] ISO 261, ISO 724, ISO 2306; ASME B1.1; BS 84; BS 93; ISO 228-1.
       Each thread carries the source of its series and how it was checked.
    """
    plain = _plain(designation)
    known = _known()
    if plain in known:
        return known[plain]
    raise Refusal(
        f'There is no thread "{designation}" in the tables ({", ".join(SERIES)}).',
        _nearest_threads(plain) or "Give it as M6, M6x0.75, 1/4-20 UNC, 3/8 BSW, 2 BA, 1/4-40 ME or G 1/8.",
    )


def _nearest_threads(plain: str) -> str:
    """The designations nearest to one that is not there, in words."""
    known = _known()
    if metric := re.fullmatch(r"M(\d+(?:\.\d+)?)(?:X(\d+(?:\.\d+)?))?", plain):
        major, pitch = float(metric[1]), float(metric[2] or 0)
        metrics = {one.designation: one for one in known.values() if one.designation.startswith("M")}.values()
        order = sorted(
            metrics,
            key=lambda one: (
                round(abs(one.major - major), 6),
                round(abs(one.pitch - pitch), 6) if pitch else -one.pitch,
                one.major,
            ),
        )
        return f"The nearest are {', '.join(one.designation for one in order[:3])}."
    head = re.split(r"[ -]", plain)[0]
    same = [one.designation for key, one in known.items() if re.split(r"[ -]", key)[0] == head]
    if same and re.search(r"\d", head):
        return f"Of that size there are {', '.join(dict.fromkeys(same))}."
    return nearest(plain, known)
