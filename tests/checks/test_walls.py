"""Walls, webs, ligaments and metal round threads: each bound from both sides."""

from __future__ import annotations

import math

import pytest

from tommybar.shapes.features import (
    Bore,
    CircleHoles,
    CrossHole,
    Cylinder,
    Dim,
    Groove,
    PlateHole,
    Recess,
    TurnedShape,
)
from tommybar.shapes.radii import thinnest_wall

from .asking import disc, finds, found_in, part, passes, plate


def turned(**features: object) -> object:
    return part("wheel", disc(80.0, 20.0, **features))  # type: ignore[arg-type]


def test_the_thinnest_wall_is_found_under_a_groove_and_a_recess() -> None:
    """By hand: boss 26 over bore 10, a groove to 12 leaves 1.0, a hub of 14 leaves 2.0."""
    bore = Bore("bore", Dim(10.0), "A", 20.0, True)
    grooved = disc(26.0, 20.0, bores=(bore,), grooves=(Groove("neck", 5.0, 6.0, 12.0),))
    assert thinnest_wall(grooved, bore) == pytest.approx((1.0, 5.0), abs=1e-5)
    hub = disc(80.0, 20.0, bores=(bore,), recesses=(Recess("dish", "A", 14.0, 70.0, 8.0),))
    assert thinnest_wall(hub, bore)[0] == pytest.approx(2.0)


@pytest.mark.parametrize(("bore", "good"), [(76.9, True), (77.1, False)])
def test_a_bore_keeps_its_wall(bore: float, good: bool) -> None:
    """A ring bored 77 wants 77/16 = 4.81 of wall, where R/t is 8; a 10 mm bush 1.5."""
    thin = part("bush", disc(13.0 if good else 12.9, 10.0, 10.0))

    assert passes(thin) is good
    if not good:
        assert finds(610, thin).bound == "1.50 mm"
    assert finds(610, part("ring", disc(80.0, 10.0, bore))).bound == f"{bore / 16:.2f} mm"


def test_rim_and_web_of_a_recess() -> None:
    """A rim of 1 mm, a web of 1.5 mm, and a web that is thin for its width."""
    assert finds(611, turned(recesses=(Recess("dish", "A", 20.0, 78.0, 8.0),))).figure == "1.00 mm"  # type: ignore[arg-type]
    assert finds(612, turned(recesses=(Recess("dish", "A", 20.0, 70.0, 18.5),))).figure == "1.50 mm"  # type: ignore[arg-type]
    both = (Recess("dish", "A", 20.0, 70.0, 8.0), Recess("back", "B", 20.0, 70.0, 10.5))
    assert finds(612, turned(recesses=both)).figure == "1.50 mm"  # type: ignore[arg-type]
    note = finds(613, turned(recesses=(Recess("dish", "A", 20.0, 70.0, 16.0),)))  # type: ignore[arg-type]
    assert (note.severity, note.figure) == ("note", "4.0 mm")


def test_holes_on_a_circle() -> None:
    """Too near one another, the bore, the outside, a wall; tapped ones count from their middle."""

    def holes(dia: float, count: int, circle: float, thread: str = "") -> tuple[CircleHoles, ...]:
        return (CircleHoles("ease", Dim(dia), count, circle, 0.0, 0.0, 20.0, thread),)

    assert passes(turned(circle_holes=holes(8.0, 5, 50.0)))  # type: ignore[arg-type]
    assert finds(614, turned(circle_holes=holes(8.0, 18, 50.0)))  # type: ignore[arg-type]
    bored = disc(80.0, 20.0, 10.0, circle_holes=holes(8.0, 3, 20.0))
    assert finds(615, part("wheel", bored)).figure == "1.00 mm"
    assert finds(616, turned(circle_holes=holes(6.0, 3, 64.0, "M6"))).bound == "9.00 mm"  # type: ignore[arg-type]
    assert passes(turned(circle_holes=holes(6.0, 3, 62.0, "M6")))  # type: ignore[arg-type]
    assert finds(617, turned(circle_holes=holes(8.0, 3, 70.0))).figure == "1.00 mm"  # type: ignore[arg-type]
    dish = (Recess("dish", "A", 20.0, 60.0, 8.0),)
    assert finds(618, turned(recesses=dish, circle_holes=holes(19.5, 3, 40.0)))  # type: ignore[arg-type]
    assert (
        finds(624, part("wheel", disc(80.0, 20.0, 14.0, circle_holes=holes(8.0, 3, 20.0)))).severity == "stop"
    )


def test_the_wall_of_a_tube_is_what_it_is_bought_for() -> None:
    """The bore that the tube brings is not told of; a seat bored into it is, and asks for the plug."""
    bores = (Bore("inside", Dim(23.0), "A", 0.0, True), Bore("seat", Dim(23.4), "B", 5.0, False, "flat"))
    bell = TurnedShape(Dim(100.0), (Cylinder("tube", Dim(25.0), 0.0, 100.0),), bores=bores)
    told = {one.feature: one for one in found_in(part("bell", bell, blank_from="tube")) if one.number == 610}
    assert set(told) == {"seat"}
    assert (told["seat"].figure, "plug under the jaws" in told["seat"].remedy) == ("0.80 mm", True)
    bored = {one.feature for one in found_in(part("bell", bell)) if one.number == 610}
    assert bored == {"inside", "seat"}


def test_metal_round_threads() -> None:
    """Half a diameter round a tapped bore and beside a tapped cross hole."""
    tapped = (Bore("bore", Dim(6.0), "A", 10.0, True, thread="M6"),)
    assert finds(620, part("nut", disc(11.9, 10.0, bores=tapped))).bound == "3.00 mm"
    assert passes(part("nut", disc(12.0, 10.0, bores=tapped)))

    def grub(z: float) -> object:
        hole = CrossHole("grub", Dim(4.0), z, thread="M4", into="bore")
        return part("wheel", disc(30.0, 20.0, 10.0, cross_holes=(hole,)))

    assert passes(grub(4.0))  # type: ignore[arg-type]
    assert finds(621, grub(3.9)).figure == "1.90 mm"  # type: ignore[arg-type]


def test_cross_holes_and_the_bore_they_meet() -> None:
    """Meant: nothing. Not meant: 623. Meant and not met: 622."""

    def crossed(into: str, depth: float) -> object:
        hole = CrossHole("oil", Dim(3.0), 15.0, into=into)
        bores = (Bore("bore", Dim(10.0), "A", depth, False),)
        return part("bush", disc(30.0, 20.0, bores=bores, cross_holes=(hole,)))

    assert passes(crossed("bore", 18.0))  # type: ignore[arg-type]
    assert finds(623, crossed("", 18.0)).severity == "caution"  # type: ignore[arg-type]
    assert finds(622, crossed("bore", 8.0)).severity == "stop"  # type: ignore[arg-type]
    assert finds(694, crossed("", 8.0)).figure == "15 mm deep"  # type: ignore[arg-type]


@pytest.mark.parametrize("said", [{"walls": 2}, {"depth": 10.0}])
def test_a_cross_hole_in_solid_metal_says_how_far_it_goes(said) -> None:
    """Right through and so deep are said; nothing said would end at the axis."""
    hole = CrossHole("oil", Dim(3.0), 15.0, **said)

    assert passes(part("pin", disc(30.0, 30.0, cross_holes=(hole,))))


@pytest.mark.parametrize(
    ("deep", "number", "figure"),
    [
        (4.0, None, ""),  # 10 - 4 - 0.300 x 3 = 5.1 mm from the axis, 1.1 mm before a bore of 8
        (4.8, 619, "0.30 mm"),  # 10 - 4.8 - 0.9 - 4
        (5.3, 623, ""),  # 10 - 5.3 - 0.9 = 3.8 mm: through
    ],
)
def test_a_blind_cross_hole_stops_short_of_the_bore_or_breaks_in(deep, number, figure) -> None:
    """The point of 118 degrees is 0.300 of the drill's diameter long."""
    body = TurnedShape(
        Dim(30.0),
        (Cylinder("body", Dim(20.0), 0.0, 30.0),),
        bores=(Bore("bore", Dim(8.0), "A", 0.0, True, "drill"),),
        cross_holes=(CrossHole("pin", Dim(3.0), 15.0, depth=deep),),
    )
    found = [one for one in found_in(part("sleeve", body)) if one.number in (619, 623)]
    assert [one.number for one in found] == ([number] if number else [])
    if figure:
        assert found[0].figure == figure


def test_holes_in_plates() -> None:
    """To an edge, between holes, near the far side, and running into one another inside."""

    def hole(
        name: str, face: str, x: float, y: float, dia: float, depth: float | None = None, thread: str = ""
    ) -> PlateHole:
        return PlateHole(name, face, x, y, Dim(dia), depth, thread)  # type: ignore[arg-type]

    assert passes(part("base", plate(hole("a", "top", 10, 10, 6), hole("b", "top", 30, 10, 6))))
    assert finds(617, part("base", plate(hole("a", "top", 4, 10, 6)))).figure == "1.00 mm"
    assert finds(616, part("base", plate(hole("a", "top", 7, 20, 5, None, "M5")))).bound == "7.50 mm"
    assert finds(614, part("base", plate(hole("a", "top", 10, 10, 6), hole("b", "top", 17, 10, 6))))
    assert finds(625, part("base", plate(hole("a", "top", 20, 20, 5, 6.0, "M5"))))
    meeting = plate(hole("a", "top", 20, 10, 6), hole("b", "front", 20, 5, 4, 15.0))
    assert finds(626, part("base", meeting)).figure == "-5.00 mm"
    # from every side a blind hole that ends 1 mm short of the through hole's wall, and one that meets it
    for face, x, y, gap in (
        ("front", 20, 5, 10 - 3),
        ("back", 40, 5, 30 - 3),
        ("left", 30, 5, 20 - 3),
        ("right", 10, 5, 40 - 3),
    ):
        tip = 4 / 2 / math.tan(math.radians(59))
        short = plate(hole("a", "top", 20, 10, 6), hole("b", face, x, y, 4, gap - tip - 3.0))
        assert finds(614, part("base", short)).figure == "1.00 mm"
    apart = plate(hole("a", "top", 20, 30, 6), hole("b", "front", 20, 5, 4, 15.0))
    assert not [one for one in found_in(part("base", apart)) if one.number in (614, 626)]


def test_a_boss_is_judged_by_its_own_land() -> None:
    """A tapped hole in a short boss, although the rim beside it is long."""
    shape = TurnedShape(
        Dim(24.0),
        (Cylinder("rim", Dim(80.0), 0.0, 18.0), Cylinder("boss", Dim(26.0), 18.0, 24.0)),
        bores=(Bore("bore", Dim(10.0), "A", 24.0, True),),
        cross_holes=(CrossHole("grub", Dim(4.0), 21.0, thread="M4", into="bore"),),
    )

    assert "along boss" in finds(621, part("wheel", shape)).words
