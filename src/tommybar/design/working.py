"""An expression made ready for working out: units are checked once, then it is plain arithmetic.

``ready(tree, dims, inch)`` finds what the expression is (a length, an angle, a
number ...) and gives a function from the values of the named sizes [house
units] to its value. A bare figure beside a length becomes a length in the
file's unit; a length times a length is not a length.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from tommybar.design.expressions import Call, Leaf, Name, Pair, Tree
from tommybar.design.quantities import (
    ANGLE,
    KIND_DIMS,
    LENGTH,
    MM_PER_INCH,
    NUMBER,
    Dims,
    Kind,
    dims_words,
    product,
)
from tommybar.design.tokens import wrong
from tommybar.refusals import nearest

Values = Mapping[str, float]
Worker = Callable[[Values], float]


@dataclass(frozen=True)
class Ready:
    """What an expression is, and how to work it out; ``dims`` None is still bare."""

    dims: Dims | None
    work: Worker
    column: int


@dataclass(frozen=True)
class Scope:
    """What the names are, and the file's unit of length [mm]. A name whose dims are text is a thread."""

    names: Mapping[str, Dims | str]
    per_unit: float = 1.0

    @classmethod
    def of(cls, unit: str, names: Mapping[str, Dims | str] | None = None) -> Scope:
        """The scope of a file in ``unit`` ("mm" or "in")."""
        return cls(names or {}, MM_PER_INCH if unit == "in" else 1.0)


def ready(tree: Tree, scope: Scope) -> Ready:
    """The expression with its units checked, or a refusal with the column."""
    if isinstance(tree, Leaf):
        value = tree.value
        return Ready(tree.dims, lambda _: value, tree.column)
    if isinstance(tree, Name):
        return _name(tree, scope)
    if isinstance(tree, Pair):
        left, right = ready(tree.left, scope), ready(tree.right, scope)
        if tree.sign in "+-":
            return _sum(tree, left, right, scope)
        return _product(tree, left, right)
    return _call(tree, [ready(one, scope) for one in tree.arguments], scope)


def worker(tree: Tree, scope: Scope, kind: Kind) -> Worker:
    """A function that works the expression out as a ``kind`` [house unit]; checks that it is one.

    >>> from tommybar.design.expressions import parse
    >>> worker(parse("2 * a + 1"), Scope.of("in", {"a": LENGTH}), "length")({"a": 10.0})
    45.4
    """
    found = ready(tree, scope)
    if found.dims not in (None, KIND_DIMS[kind]):
        want = "a plain number" if kind in ("number", "count") else dims_words(KIND_DIMS[kind])
        raise wrong(1, f"This is {dims_words(found.dims)}; {want} is wanted here.", "Check the units.")
    work = as_dims(found, KIND_DIMS[kind], scope).work

    def finite(values: Values) -> float:
        value = work(values)
        if not math.isfinite(value):
            raise wrong(
                1, "The result is not a finite figure.", "Check for divisions and very large figures."
            )
        return value

    return finite


def as_dims(one: Ready, dims: Dims, scope: Scope) -> Ready:
    """A bare expression turned into one with dimensions; others are left as they are."""
    if one.dims is not None:
        return one
    if dims == LENGTH and scope.per_unit != 1.0:
        work, scale = one.work, scope.per_unit
        return Ready(dims, lambda values: work(values) * scale, one.column)
    if len(dims) > 1 or any(power != 1 for _, power in dims):
        raise wrong(
            one.column, f"A figure without unit stands beside {dims_words(dims)}.", "Give it its unit."
        )
    return Ready(dims, one.work, one.column)


def _name(tree: Name, scope: Scope) -> Ready:
    if not scope.names:
        raise wrong(
            tree.column,
            f'"{tree.name}" is no figure, and no size has that name.',
            "Write a figure, with its unit if it is not the file's: 12.5 or 3/8 in.",
        )
    if tree.name not in scope.names:
        remedy = nearest(tree.name, scope.names) or "Add it to sizes."
        raise wrong(tree.column, f'No size is named "{tree.name}".', remedy)
    dims = scope.names[tree.name]
    if isinstance(dims, str):
        raise wrong(tree.column, f'The size "{tree.name}" is {dims}; arithmetic wants a figure.')
    name = tree.name
    return Ready(dims, lambda values: values[name], tree.column)


def alike(parts: list[Ready], column: int, scope: Scope, deed: str) -> list[Ready]:
    """All with the same dimensions, bare ones following the others; a refusal when they differ."""
    known = next((one.dims for one in parts if one.dims is not None), None)
    if known is None:
        return parts
    for one in parts:
        if one.dims not in (None, known):
            what = f"{dims_words(known)} and {dims_words(one.dims)} cannot be {deed}."
            raise wrong(column, what[0].upper() + what[1:], "Check the units.")
    return [as_dims(one, known, scope) for one in parts]


def _sum(tree: Pair, left: Ready, right: Ready, scope: Scope) -> Ready:
    one, other = alike([left, right], tree.column, scope, "added" if tree.sign == "+" else "subtracted")
    a, b = one.work, other.work
    if tree.sign == "+":
        return Ready(one.dims, lambda values: a(values) + b(values), left.column)
    return Ready(one.dims, lambda values: a(values) - b(values), left.column)


def _product(tree: Pair, left: Ready, right: Ready) -> Ready:
    sign = 1 if tree.sign == "*" else -1
    dims: Dims | None = None
    if left.dims is not None or right.dims is not None:
        dims = product(left.dims or NUMBER, right.dims or NUMBER, sign)
    a, b, column = left.work, right.work, tree.column
    if sign == 1:
        return Ready(dims, lambda values: a(values) * b(values), left.column)

    def quotient(values: Values) -> float:
        under = b(values)
        if under == 0:
            raise wrong(column, "This divides by nought.", "Check the sizes below the stroke.")
        return a(values) / under

    return Ready(dims, quotient, left.column)


def _call(tree: Call, parts: list[Ready], scope: Scope) -> Ready:
    name, column = tree.function, tree.column
    if name in ("min", "max"):
        parts = alike(parts, column, scope, "compared")
        works, choose = [one.work for one in parts], min if name == "min" else max
        return Ready(parts[0].dims, lambda values: choose(work(values) for work in works), column)
    if name == "round":
        return _round(column, parts, scope)
    if name == "sqrt":
        return _root(column, parts[0])
    if name in ("sin", "cos", "tan"):
        angle = parts[0]
        if angle.dims not in (None, ANGLE):
            raise wrong(column, f"{name} wants an angle; this is {dims_words(angle.dims)}.")
        given, of_angle = angle.work, getattr(math, name)
        return Ready(NUMBER, lambda values: of_angle(math.radians(given(values))), column)
    return _arc(column, name, parts[0])


def _round(column: int, parts: list[Ready], scope: Scope) -> Ready:
    parts = alike(parts, column, scope, "rounded to each other")
    given = parts[0].work
    if len(parts) == 2:
        step = parts[1].work
    else:
        whole = scope.per_unit if parts[0].dims == LENGTH else 1.0

        def step(_: Values) -> float:
            return whole

    def rounded(values: Values) -> float:
        size = step(values)
        if size <= 0:
            raise wrong(column, f"The step of rounding is {size:g}; it must be above 0.")
        steps = given(values) / size
        # halves go up; the small term lets 0.3 / 0.1 count as three steps
        return math.floor(steps + 0.5 + 1e-9) * size if math.isfinite(steps) else math.inf

    return Ready(parts[0].dims, rounded, column)


def _root(column: int, part: Ready) -> Ready:
    dims = part.dims or NUMBER
    if any(power % 2 for _, power in dims):
        raise wrong(column, f"The square root of {dims_words(dims)} has no meaning.", "Check the units.")
    work = part.work

    def root(values: Values) -> float:
        value = work(values)
        if value < 0:
            raise wrong(column, f"The square root of {value:g} is asked for; it must not be below 0.")
        return math.sqrt(value)

    return Ready(tuple((name, power // 2) for name, power in dims), root, column)


def _arc(column: int, name: str, part: Ready) -> Ready:
    if part.dims not in (None, NUMBER):
        raise wrong(column, f"{name} wants a ratio; this is {dims_words(part.dims)}.")
    work, of_ratio = part.work, getattr(math, name)

    def arc(values: Values) -> float:
        ratio = work(values)
        if name != "atan" and not -1 <= ratio <= 1:
            raise wrong(column, f"{name} of {ratio:g} is asked for; it must lie between -1 and 1.")
        return math.degrees(of_ratio(ratio))

    return Ready(ANGLE, arc, column)
