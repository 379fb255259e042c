"""As-built against as-drawn: what the thing really measures, and what of it becomes the next revision."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

from tommybar.bench.inputs import Inputs, design_of, inputs_of, plan_with
from tommybar.bench.places import Standing, place_of
from tommybar.bench.splice import value_at, with_key, with_value
from tommybar.bench.stored import Build
from tommybar.design import Design, design_from_text
from tommybar.design.model import SizedDesign
from tommybar.design.yaml_file import Place
from tommybar.made.dims import dims_of, lengths_of
from tommybar.made.record import Measured
from tommybar.made.words import limits_words, size_words
from tommybar.planning import Plan
from tommybar.refusals import Refusal

NEAR = 0.005  # a reading nearer than this to its figure is as drawn [mm]
FREE = ("scale", "nothing", "")  # classes of named sizes whose figure the designer may choose as he likes

Verdict = Literal["within", "over", "under", "as drawn", "larger", "smaller"]


@dataclass(frozen=True)
class Difference:
    """One measured size beside the drawing [mm]."""

    size: str
    drawn: float
    low: float | None
    high: float | None
    built: float
    instrument: str
    by: str
    on: str
    verdict: Verdict
    words: str
    can_accept: bool
    why_not: str
    place: Place = ()
    also: tuple[str, ...] = ()  # what else changes when it is accepted

    @property
    def apart(self) -> float:
        """Built less drawn [mm]."""
        return round(self.built - self.drawn, 4)


@dataclass(frozen=True)
class Accepted:
    """The next revision of a design file."""

    text: str
    revision: str
    words: tuple[str, ...]  # one for each size that was taken over


def differences(build: Build, plan: Plan | None = None) -> tuple[Difference, ...]:
    """Every measured size beside its drawing, in the order in which they were measured."""
    inputs = inputs_of(build)
    plan = plan or plan_with(inputs)
    sized = drawn_sizes(inputs.design, plan)
    as_filed = _figures(inputs.design.sized())
    known = _figures(sized)
    found = {}
    for one in inputs.made.measured:
        if one.size in known:
            found[one.size] = _difference(one, known, as_filed, sized, inputs)
    return tuple(found.values())


def drawn_sizes(design: Design, plan: Plan) -> SizedDesign:
    """The design at the sizes of a plan, before any measured size gave it new limits."""
    free = {size.name for size in design.named if not size.expression}
    return design.sized({row.name: row.new for row in plan.sizes if row.name in free})


def _figures(sized: SizedDesign) -> dict[str, tuple[float, float | None, float | None]]:
    lengths: dict[str, tuple[float, float | None, float | None]] = {
        name: (value, None, None) for name, value in lengths_of(sized).items()
    }
    return lengths | {name: (one.value, one.smallest, one.largest) for name, one in dims_of(sized).items()}


def _difference(
    one: Measured,
    known: Mapping[str, tuple[float, float | None, float | None]],
    as_filed: Mapping[str, tuple[float, float | None, float | None]],
    sized: SizedDesign,
    inputs: Inputs,
) -> Difference:
    drawn, low, high = known[one.size]
    verdict = _verdict(one.value, drawn, low, high)
    standing = place_of(inputs.design_text, one.size)
    why_not, also = _why_not(one, drawn, verdict, standing, as_filed, inputs)
    bound = limits_words(low, high, sized.units) if low is not None and high is not None else "no limits"
    words = (
        f"{one.size} is {size_words(one.value, sized.units)}, drawn {size_words(drawn, sized.units)}"
        f" ({bound}): {verdict}."
    )
    return Difference(
        one.size,
        drawn,
        low,
        high,
        one.value,
        one.instrument,
        one.by,
        one.on,
        verdict,
        words,
        not why_not,
        why_not,
        standing.place if standing else (),
        also,
    )


def _verdict(built: float, drawn: float, low: float | None, high: float | None) -> Verdict:
    if low is not None and high is not None:
        return "under" if built < low - 1e-9 else "over" if built > high + 1e-9 else "within"
    if abs(built - drawn) < NEAR:
        return "as drawn"
    return "larger" if built > drawn else "smaller"


def _why_not(
    one: Measured,
    drawn: float,
    verdict: Verdict,
    standing: Standing | None,
    as_filed: Mapping[str, tuple[float, float | None, float | None]],
    inputs: Inputs,
) -> tuple[str, tuple[str, ...]]:
    """Why a size cannot be taken over, or nothing and what changes with it."""
    if verdict in ("within", "as drawn"):
        return "It is as drawn; there is nothing to take over.", ()
    if verdict in ("over", "under"):
        return (
            "Its limits come from a fit or are its own; change those in the file if the new ones are meant.",
            (),
        )
    if standing is None or not standing.plain:
        what = f'"{standing.text}"' if standing else "an expression"
        return f"It is worked out from {what}; change the sizes in that.", ()
    filed = as_filed[one.size][0]
    if abs(filed - drawn) > 1e-6:
        return f"This build is of another size: the file says {filed:g} mm where {drawn:g} mm was made.", ()
    follows = _follows(standing, inputs.design)
    if follows not in FREE:
        return f"{standing.named} follows {follows}: its figure is that of what is owned or bought.", ()
    try:
        after = design_from_text(
            with_value(inputs.design_text, standing.place, _written(one.value, standing, inputs))
        )
        now = _figures(after.sized())
    except Refusal as refusal:
        return f"The design cannot be so: {refusal.complaints[0].what}", ()
    also = tuple(
        name for name, figures in now.items() if name != one.size and figures != as_filed.get(name, figures)
    )
    return "", also


def _follows(standing: Standing, design: Design) -> str:
    return next((size.follows for size in design.named if size.name == standing.named), "")


def _written(value: float, standing: Standing, inputs: Inputs) -> str:
    """A size [mm] as it is written where the old figure stands, in that figure's unit."""
    own = next((unit for unit in ("mm", "in") if standing.text.strip().endswith(unit)), "")
    inch = (own or inputs.design.units) == "in"
    figure = f"{value / 25.4:.5f}" if inch else f"{value:.4f}"
    return f"{figure.rstrip('0').rstrip('.')}{f' {own}' if own else ''}"


def accept(build: Build, taken: Iterable[Difference]) -> Accepted:
    """The design file of a build with these sizes taken over, as its next revision; comments stay.

    Raises :class:`Refusal` when one of them cannot be taken over, or when the
    sizes together make a design that cannot be.
    """
    inputs = inputs_of(build)
    text, words = inputs.design_text, []
    for one in taken:
        standing = place_of(text, one.size)
        if not one.can_accept or standing is None:
            raise Refusal(f"{one.size} cannot be taken over: {one.why_not}", "Leave it out.")
        new = _written(one.built, standing, inputs)
        where = standing.named or one.size
        words.append(f"{where}: {value_at(text, standing.place)} becomes {new}, as {one.size} was built.")
        text = with_value(text, standing.place, new)
    if not words:
        raise Refusal("No size is named that could be taken over.", "Choose at least one.")
    revision = next_revision(design_of(inputs.design_text).revision)
    text = with_key(text, (), "revision", revision, quoted=not revision.isalpha())
    design_from_text(text)
    return Accepted(text, revision, tuple(words))


def next_revision(revision: str) -> str:
    """The revision after this one.

    >>> [next_revision(one) for one in ("A", "Z", "AZ", "3", "1.9", "", "b")]
    ['B', 'AA', 'BA', '4', '1.10', 'A', 'c']
    """
    if not revision:
        return "A"
    head, last = revision[:-1], revision[-1]
    if last.isdigit():
        digits = len(revision) - len(revision.rstrip("0123456789"))
        return f"{revision[: len(revision) - digits]}{int(revision[-digits:]) + 1}"
    if last in "zZ":
        first = "a" if last == "z" else "A"
        return f"{next_revision(head) if head else first}{first}"
    return f"{head}{chr(ord(last) + 1)}" if last.isascii() and last.isalpha() else f"{revision}-A"
