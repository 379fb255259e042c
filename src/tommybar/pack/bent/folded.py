"""The bent strip seen from its edge: outside lengths of its legs, inside radii and angles of its bends."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tommybar.pack.plates.figures import Figure, Lean, Round
from tommybar.pack.plates.spans import Side, Span
from tommybar.pack.plates.told import NOWHERE, Told
from tommybar.pack.printed import PrintedDimension
from tommybar.pack.sheet import Point
from tommybar.pack.units import Reader
from tommybar.shapes.developed import bend_allowance
from tommybar.shapes.features import SheetShape


@dataclass(frozen=True)
class Leg:
    """A flat stretch: from where to where its under face runs, and which way it is headed [mm, deg]."""

    start: Point
    end: Point
    heading: float


@dataclass(frozen=True)
class Fold:
    """A bend: the centre of its radius and the angles between which its inside arc lies [mm, deg]."""

    name: str
    centre: Point
    radius: float
    start: float
    end: float
    angle: float


def folded(shape: SheetShape) -> tuple[list[Leg], list[Fold]]:
    """Legs and bends in their order, the first leg along x with its under face on y = 0."""
    thick = shape.thickness.value
    x = y = heading = at = 0.0
    legs: list[Leg] = []
    folds: list[Fold] = []
    for bend in sorted(shape.bends, key=lambda one: one.at):
        x, y = _along(legs, x, y, heading, bend.at - at)
        up = bend.angle > 0
        out = bend.radius + thick if up else bend.radius  # of the under face about the centre
        side = 1.0 if up else -1.0
        normal = math.radians(heading + side * 90.0)
        centre = (x + out * math.cos(normal), y + out * math.sin(normal))
        first = heading - side * 90.0  # from the centre to where the bend begins
        last = first + bend.angle
        folds.append(Fold(bend.name, centre, bend.radius, min(first, last), max(first, last), bend.angle))
        heading += bend.angle
        x = centre[0] + out * math.cos(math.radians(last))
        y = centre[1] + out * math.sin(math.radians(last))
        at = bend.at + bend_allowance(bend.angle, bend.radius, thick, shape.neutral)
    _along(legs, x, y, heading, shape.length.value - at)
    return legs, folds


def _along(legs: list[Leg], x: float, y: float, heading: float, long: float) -> Point:
    end = (x + long * math.cos(math.radians(heading)), y + long * math.sin(math.radians(heading)))
    legs.append(Leg((x, y), end, heading))
    return end


def folded_figures(shape: SheetShape, reader: Reader) -> tuple[list[Figure], list[PrintedDimension]]:
    """Figures of the bent strip.

    Inside radii always; outside lengths of legs when every bend is square, so
    that all of them lie level or upright; angles that are not square.
    """
    legs, folds = folded(shape)
    figures: list[Figure] = []
    printed: list[PrintedDimension] = []

    def say(told: Told) -> str:
        row = told.row("", NOWHERE)
        printed.extend(row.printed)
        return row.words

    for fold in folds:
        told = Told(fold.name, reader)
        told.length("radius", "radius", fold.radius, "R")
        figures.append(Round(fold.centre, fold.radius, fold.start, fold.end, say(told)))
    if all(abs(abs(fold.angle) - 90.0) < 1e-9 for fold in folds):
        xs = [p[0] for leg in legs for p in (leg.start, leg.end)]
        ys = [p[1] for leg in legs for p in (leg.start, leg.end)]
        for n, outside in enumerate(shape.legs):
            told = Told("legs", reader)
            told.length("length", f"leg_{n + 1}", outside)
            figures.append(
                _outside(shape, legs, folds, n, outside, say(told), (min(xs), max(xs), min(ys), max(ys)))
            )
        return figures, printed
    for fold in folds:
        if abs(abs(fold.angle) - 90.0) > 1e-9:
            told = Told(fold.name, reader)
            told.angle("angle", abs(fold.angle))
            figures.append(_between(fold, shape.thickness.value, say(told)))
    return figures, printed


def _outside(
    shape: SheetShape, legs: list[Leg], folds: list[Fold], n: int, value: float, words: str,
    extent: tuple[float, float, float, float],
) -> Span:  # fmt: skip
    """The outside length of a leg, to the outer face of the leg that a bend leads to."""
    leg, thick = legs[n], shape.thickness.value
    c, s = round(math.cos(math.radians(leg.heading))), round(math.sin(math.radians(leg.heading)))
    before = folds[n - 1].radius + thick if n else 0.0
    behind = folds[n].radius + thick if n < len(folds) else 0.0
    a = (leg.start[0] - before * c, leg.start[1] - before * s)
    b = (leg.end[0] + behind * c, leg.end[1] + behind * s)
    low_x, high_x, low_y, high_y = extent
    side: Side
    if s == 0:
        side = "below" if leg.start[1] <= (low_y + high_y) / 2 else "above"
    else:
        side = "left" if leg.start[0] <= (low_x + high_x) / 2 else "right"
    return Span(side, a, b, value, words)


def _between(fold: Fold, thick: float, words: str) -> Lean:
    """How far a bend turns, between the radii to its two ends, told outside of the bend."""
    return Lean(
        fold.centre, fold.start, fold.end, abs(fold.angle), words, fold.radius + thick
    )  # the turn of the metal is the angle between these radii
