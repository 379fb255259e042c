"""The thread series: which sizes each has, read from the data files."""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from pathlib import Path

from tommybar.facts.drills import drill_size
from tommybar.facts.table import Table, read_table
from tommybar.facts.threads.profile import BA, ISO, UNIFIED, WHITWORTH
from tommybar.facts.threads.thread import INCH, Thread, worked_thread
from tommybar.refusals import Refusal, nearest

SERIES = (
    "ISO metric coarse",
    "ISO metric fine",
    "metric instrument",
    "UNC",
    "UNF",
    "UNEF",
    "BSW",
    "BSF",
    "BA",
    "ME",
    "Brass",
    "BSP",
)
_HERE = Path(__file__).parent


def inches(size: str) -> float:
    """Diameter that a size word of the inch series stands for.

    Parameters
    ----------
    size : str
        "#6", "1/4", "1 1/4" or "1"

    Returns
    -------
    float
        Diameter; of number sizes 0.060 + 0.013 n [in]

    Examples
    --------
    >>> inches("#6"), inches("1 1/4")
    (0.138, 1.25)

    References
    ----------
    .. [1] ASME B1.1 (number sizes, seen in a public reprint).
    """
    if size.startswith("#"):
        return round(0.060 + 0.013 * int(size[1:]), 4)
    return float(sum(Fraction(part) for part in size.split()))


def _metric_coarse() -> list[Thread]:
    table = read_table(_HERE / "iso_metric.toml")
    return [
        worked_thread(
            designation=row["size"],
            series="ISO metric coarse",
            major=row["major"],
            pitch=row["pitch"],
            inch=False,
            drill=row["drill"],
            drill_name=f"{row['drill']:g} mm",
            drill_rule="ISO 2306 table",
            threads_per_inch=None,
            profile=ISO,
            source=table.source,
        )
        for row in table.figures["coarse"]
    ]


def _metric_fine(series: str, key: str) -> list[Thread]:
    table = read_table(_HERE / "iso_metric.toml")
    stocked = table.figures["fine_drills"]
    found = []
    for row in table.figures[key]:
        for major in row["majors"]:
            name = f"M{major:g}x{row['pitch']:g}"
            drill = stocked.get(name, round(major - row["pitch"], 3))
            found.append(
                worked_thread(
                    designation=name,
                    series=series,
                    major=float(major),
                    pitch=row["pitch"],
                    inch=False,
                    drill=drill,
                    drill_name=f"{drill:g} mm",
                    drill_rule="ISO 2306 table" if name in stocked else "d - P, as ISO 2306 gives it",
                    threads_per_inch=None,
                    profile=ISO,
                    source=table.source,
                )
            )
    return sorted(found, key=lambda one: (one.major, -one.pitch))


def _unified(series: str) -> list[Thread]:
    table = read_table(_HERE / "unified.toml")
    found = []
    for row in table.figures[series]:
        drill = drill_size(row["drill"])
        found.append(
            worked_thread(
                designation=f"{row['size']}-{row['tpi']} {series}",
                series=series,
                major=inches(row["size"]) * INCH,
                pitch=INCH / row["tpi"],
                inch=True,
                drill=drill.diameter,
                drill_name=drill.name,
                drill_rule="handbook tap-drill table, about 75 % of the full thread",
                threads_per_inch=row["tpi"],
                profile=UNIFIED,
                source=table.source,
            )
        )
    return found


def _whitworth(table: Table, series: str, rule: str) -> list[Thread]:
    return [
        worked_thread(
            designation=f"{row['size']}-{row['tpi']} {series}"
            if series in ("ME", "Brass")
            else f"{row['size']} {series}",
            series=series,
            major=row.get("major", inches(row["size"]) * INCH),
            pitch=INCH / row["tpi"],
            inch="major" not in row,
            drill=row["drill"],
            drill_name=f"{row['drill']:g} mm",
            drill_rule=rule,
            threads_per_inch=row["tpi"],
            profile=WHITWORTH,
            source=table.source,
        )
        for row in table.figures[series]
    ]


def _ba() -> list[Thread]:
    table = read_table(_HERE / "ba.toml")
    return [
        worked_thread(
            designation=f"{row['size']} BA",
            series="BA",
            major=row["major"],
            pitch=row["pitch"],
            inch=False,
            drill=row["drill"],
            drill_name=f"{row['drill']:g} mm",
            drill_rule="trade table",
            threads_per_inch=None,
            profile=BA,
            source=table.source,
        )
        for row in table.figures["BA"]
    ]


@cache
def threads_of_series(series: str) -> tuple[Thread, ...]:
    """Every thread of one series, in the order of its table.

    Parameters
    ----------
    series : str
        "ISO metric coarse", "ISO metric fine", "metric instrument", "UNC",
        "UNF", "UNEF", "BSW", "BSF", "BA", "ME", "Brass" or "BSP"

    Returns
    -------
    tuple of Thread
        The threads, lengths in [mm]

    Raises
    ------
    Refusal
        If there is no series of that name.

    Examples
    --------
    >>> [one.designation for one in threads_of_series("BA")][:3]
    ['0 BA', '1 BA', '2 BA']

    References
    ----------
    .. [1] The source of each series stands in its data file and in
       ``Thread.source``.
    """
    if series not in SERIES:
        raise Refusal(
            f'There is no thread series "{series}"; the series are {", ".join(SERIES)}.',
            nearest(series, SERIES),
        )
    if series == "ISO metric coarse":
        found = _metric_coarse()
    elif series == "ISO metric fine":
        found = _metric_fine(series, "fine")
    elif series == "metric instrument":
        found = _metric_fine(series, "instrument")
    elif series == "BA":
        found = _ba()
    elif series in ("UNC", "UNF", "UNEF"):
        found = _unified(series)
    elif series in ("ME", "Brass"):
        found = _whitworth(read_table(_HERE / "model_engineer.toml"), series, "common practice, whole tenths")
    elif series == "BSP":
        found = _whitworth(read_table(_HERE / "pipe.toml"), series, "trade table, from memory")
    else:
        found = _whitworth(read_table(_HERE / "whitworth.toml"), series, "BS 1157 table")
    return tuple(found)
