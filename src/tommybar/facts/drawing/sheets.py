"""Drawing sheets: sizes, borders, line widths, lettering and scales of the ISO drawing standards."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path

from tommybar.facts.table import Source, Table, read_table
from tommybar.refusals import Refusal, nearest


@dataclass(frozen=True)
class Sheet:
    """One sheet size: short side first in every pair [mm]; fields of the grid along long and short side."""

    name: str
    trimmed: tuple[float, float]
    drawing_space: tuple[float, float]
    untrimmed: tuple[float, float]
    fields: tuple[int, int]


def sheet(name: str) -> Sheet:
    """Sizes of a drawing sheet.

    Parameters
    ----------
    name : str
        A0 to A4 [-]

    Returns
    -------
    Sheet
        Trimmed and untrimmed sheet, drawing space [mm]; fields of the grid [-]

    Raises
    ------
    Refusal
        If the sheet is not one of A0 to A4.

    Examples
    --------
    >>> sheet("A3").drawing_space, sheet("A4").trimmed
    ((277, 390), (210, 297))

    References
    ----------
    .. [1] ISO 5457:1999, Tables 1 and 2 (trimmed sizes seen, others from
       memory); the edition of 1980 had borders of 20 mm on A0 and A1.
    """
    sheets = _table().figures["sheets"]
    if name not in sheets:
        raise Refusal(f'The sheet is "{name}"; ISO 5457 has {", ".join(sheets)}.', nearest(name, sheets))
    row = {key: tuple(pair) for key, pair in sheets[name].items()}
    return Sheet(name, **row)


def frame_figure(name: str) -> float | tuple[float, ...]:
    """One figure of the frame round a drawing.

    Parameters
    ----------
    name : str
        For example "filing margin width" or "title block width" [-]

    Returns
    -------
    float or tuple of float
        The figure, or length and width of a mark [mm]

    Raises
    ------
    Refusal
        If the name is unknown; the nearest one is offered.

    Examples
    --------
    >>> frame_figure("frame line width"), frame_figure("trimming mark rectangles")
    (0.7, (10.0, 5.0))

    References
    ----------
    .. [1] ISO 5457:1999; ISO 7200:2004 (from memory).
    """
    frame = _table().figures["frame"]
    if name not in frame:
        raise Refusal(f'"{name}" is not a figure of the frame in ISO 5457.', nearest(name, frame))
    value = frame[name]
    return tuple(float(one) for one in value) if isinstance(value, list) else float(value)


def title_block_position() -> str:
    """Where the title block stands on sheets A0 to A4.

    Parameters
    ----------
    None

    Returns
    -------
    str
        The place in words [-]

    Examples
    --------
    >>> title_block_position()
    'lower right corner of the drawing space'

    References
    ----------
    .. [1] ISO 5457:1999, ISO 7200:2004 (from memory).
    """
    return str(_table().figures["words"]["title block position"])


def line_width(step: int) -> float:
    """Line width of a step of the series.

    Parameters
    ----------
    step : int
        Step 1 (thinnest) to 9 [-]

    Returns
    -------
    float
        Line width [mm]

    Raises
    ------
    Refusal
        If the step is outside the series.

    Examples
    --------
    >>> line_width(3), line_width(6)
    (0.25, 0.7)

    References
    ----------
    .. [1] ISO 128-2:2020 (from memory); each step is about sqrt(2) wider.
    """
    widths = _table().figures["lines"]["widths"]
    if not 1 <= step <= len(widths):
        raise Refusal(f"The step is {step}; ISO 128-2 has steps 1 to {len(widths)}.", "Take 3 for 0.25 mm.")
    return float(widths[step - 1])


def line_use(line_type: str) -> str:
    """What a line type is used for.

    Parameters
    ----------
    line_type : str
        Number and name, for example "01.2 continuous wide"; the number alone
        is enough [-]

    Returns
    -------
    str
        Its use [-]

    Raises
    ------
    Refusal
        If the type is unknown; the nearest one is offered.

    Examples
    --------
    >>> line_use("04.1")
    'centre lines'

    References
    ----------
    .. [1] ISO 128-2:2020, formerly ISO 128-24 (from memory).
    """
    uses = _table().figures["lines"]["uses"]
    for name, use in uses.items():
        if name == line_type or name.split()[0] == line_type:
            return str(use)
    raise Refusal(f'"{line_type}" is not a line type that is carried here.', nearest(line_type, uses))


def wide_to_narrow() -> tuple[int, int]:
    """Ratio of wide to narrow lines on one drawing.

    Parameters
    ----------
    None

    Returns
    -------
    tuple of int
        Wide, narrow [-]

    Examples
    --------
    >>> wide_to_narrow()
    (2, 1)

    References
    ----------
    .. [1] ISO 128-2:2020 (from memory).
    """
    wide, narrow = _table().figures["lines"]["wide_to_narrow"]
    return int(wide), int(narrow)


def lettering_heights() -> tuple[float, ...]:
    """Nominal heights of lettering.

    Parameters
    ----------
    None

    Returns
    -------
    tuple of float
        Heights, smallest first; type B lines are a tenth of it [mm]

    Examples
    --------
    >>> lettering_heights()[:3]
    (1.8, 2.5, 3.5)

    References
    ----------
    .. [1] ISO 3098-1:2015 (from memory).
    """
    return tuple(_table().figures["lettering"]["heights"])


def scales() -> tuple[str, ...]:
    """Scales for drawings, largest first.

    Parameters
    ----------
    None

    Returns
    -------
    tuple of str
        Scales as they are written in the title block [-]

    Examples
    --------
    >>> scales()[4:7]
    ('2:1', '1:1', '1:2')

    References
    ----------
    .. [1] ISO 5455:1979 (from memory).
    """
    found = _table().figures["scales"]
    return (*found["enlarging"], found["full_size"], *found["reducing"])


def source() -> Source:
    """Where the figures of this module come from.

    Parameters
    ----------
    None

    Returns
    -------
    Source
        Titles, years and how they were checked [-]

    Examples
    --------
    >>> source().checked[:11]
    'from memory'

    References
    ----------
    .. [1] The [source] head of sheets.toml.
    """
    return _table().source


@cache
def _table() -> Table:
    return read_table(Path(__file__).with_name("sheets.toml"))
