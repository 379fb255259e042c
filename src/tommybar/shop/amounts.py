"""Figures of a shop file that are more than one figure: lists, ranges, pairs, shares."""

from __future__ import annotations

import re
from typing import Annotated, Any, TypeVar

from pydantic import AfterValidator, BeforeValidator, ValidationInfo

from tommybar.design.figures import Number, Speed, figure
from tommybar.facts.drills import drill_size
from tommybar.refusals import Refusal

Item = TypeVar("Item")
MOST_IN_A_RANGE = 400
LONGEST = 5000.0  # [mm]; a figure above it is a slip of the unit


def _share(value: float) -> float:
    if not 0 < value <= 1:
        raise Refusal(f"The share is {value:g}; it must be above 0 and up to 1.", "Write 75 % as 0.75.")
    return value


def _divisions(value: float) -> float:
    if not 0 <= value <= 1000:
        raise Refusal(f"The slack is {value:g} divisions; it must be from 0 to 1000.", "Count them again.")
    return value


def at_least_one(given: tuple[Item, ...]) -> tuple[Item, ...]:
    """Refuse an empty list: a key that is left out is filled up, an empty one says there is none."""
    if not given:
        raise Refusal("The list is empty; at least one entry is wanted.", "Add one, or take the key out.")
    return given


Share = Annotated[Number, AfterValidator(_share)]
"""A share of one, above 0."""
Divisions = Annotated[Number, AfterValidator(_divisions)]
"""Divisions of a dial."""
Speeds = Annotated[
    tuple[Speed, ...], AfterValidator(at_least_one), AfterValidator(lambda given: tuple(sorted(set(given))))
]
"""A machine's speeds, rising [rev/min]."""


def unit_given(info: ValidationInfo) -> str:
    """The file's unit, from the validation context."""
    return str((info.context or {}).get("unit", "mm"))


def _workshop_length(value: float) -> float:
    if not 0 < value <= LONGEST:
        raise Refusal(
            f"The figure is {value:g} mm; it must be above 0 and up to {LONGEST:g} mm.", "Check its unit."
        )
    return value


_RANGE = re.compile(r"^\s*(.+?)(?:\s+to\s+|\s*-\s*)(.+?)\s+by\s+(.+?)\s*$")
_NAMED_RANGE = re.compile(r"^\s*#\s*(\d+)\s*(?:to|-)\s*#?\s*(\d+)\s*$")


def range_of_lengths(text: str, unit: str) -> tuple[float, ...]:
    """The lengths of "1-6 by 0.1" or "1/16 to 1/2 by 1/64 in" [mm], both ends among them."""
    found = _RANGE.match(text)
    if not found:
        raise Refusal(f'"{text}" is no range.', 'Write it as "1-6 by 0.1" or "1/16 to 1/2 by 1/64".')
    first, last, by = (figure(part, unit) for part in found.groups())
    if by <= 0 or last < first:
        raise Refusal(
            f'The range "{text}" goes from {first:g} to {last:g} mm by {by:g} mm; it must rise.',
            "Write the smaller end first and a rise above 0.",
        )
    count = (last - first) / by
    if count > MOST_IN_A_RANGE:
        raise Refusal(
            f'The range "{text}" has {count:.0f} sizes; up to {MOST_IN_A_RANGE} are read.', "Check the rise."
        )
    if abs(count - round(count)) > 1e-6:
        raise Refusal(
            f'The range "{text}" does not end on {last:g} mm: {by:g} mm goes {count:.4g} times.',
            "Mend the end or the rise.",
        )
    return tuple(round(first + index * by, 6) for index in range(round(count) + 1))


def _length_list(given: Any, info: ValidationInfo) -> tuple[float, ...]:
    """Lengths out of one figure, one range, or a list of either; rising, doubles once."""
    unit = unit_given(info)
    items = given if isinstance(given, list) else [given]
    found: set[float] = set()
    for item in items:
        found.update(_lengths_of_item(item, unit))
    return tuple(sorted(_workshop_length(value) for value in found))


def _lengths_of_item(item: Any, unit: str) -> tuple[float, ...]:
    if isinstance(item, str):
        if numbered := _NAMED_RANGE.match(item):
            low, high = sorted(int(number) for number in numbered.groups())
            return tuple(round(drill_size(f"#{number}").diameter, 4) for number in range(low, high + 1))
        if re.search(r"\bby\b", item):
            return range_of_lengths(item, unit)
        if re.fullmatch(r"#\d+|[A-Z]", item.strip()):
            return (round(drill_size(item.strip()).diameter, 4),)
    return (round(figure(item, unit), 6),)


Lengths = Annotated[
    tuple[float, ...],
    BeforeValidator(_length_list, json_schema_input_type=float | str | list[float | str]),
    AfterValidator(at_least_one),
]


def _pair_list(given: Any, info: ValidationInfo) -> tuple[tuple[float, float], ...]:
    """Pairs out of "30 x 10" or a list of them [mm]."""
    pairs = []
    for item in given if isinstance(given, list) else [given]:
        parts = re.split(r"\s+x\s+", item.strip()) if isinstance(item, str) else []
        if len(parts) != 2:
            raise Refusal(f'"{item}" is no pair of figures.', "Write width by thickness: 30 x 10.")
        one, other = (figure(part, unit_given(info)) for part in parts)
        pairs.append((_workshop_length(one), _workshop_length(other)))
    return tuple(pairs)


Pairs = Annotated[
    tuple[tuple[float, float], ...],
    BeforeValidator(_pair_list, json_schema_input_type=str | list[str]),
    AfterValidator(at_least_one),
]
