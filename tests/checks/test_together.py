"""The assembly as it stands: each fault planted in a small mechanism."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.checks import check_together
from tommybar.design.joints import SweepRelation
from tommybar.design.model import FitRelation, Part, SizedDesign
from tommybar.findings import Finding
from tommybar.shapes.features import Bore, Cylinder, Dim, TurnedShape


def turned(name: str, *steps: tuple[float, float], bore: float = 0.0, count: int = 1) -> Part:
    """A turned part of lands (diameter, length), with a bore right through."""
    lands, z = [], 0.0
    for n, (dia, long) in enumerate(steps, start=1):
        lands.append(Cylinder(f"l{n}", Dim(dia), z, z + long))
        z += long
    bores = (Bore("bore", Dim(bore), "A", z, True),) if bore else ()
    return Part(name, "turned", "mild steel", count, TurnedShape(Dim(z), tuple(lands), bores=bores))


def pair(*fits: FitRelation, parts: tuple[Part, ...], **more: object) -> SizedDesign:
    """A design of parts and fits."""
    return SizedDesign("test", "A", "mm", (), parts, fits=fits, **more)  # type: ignore[arg-type]


def numbered(design: SizedDesign, number: int) -> list[Finding]:
    """Its findings of that number."""
    found = [one for one in check_together(design) if one.number == number]
    assert all(one.figure and one.bound and one.remedy and one.source for one in found)
    return found


WHEEL = turned("wheel", (40.0, 8.0), bore=10.0)
SHAFT = turned("shaft", (16.0, 5.0), (10.0, 30.0))
ON = FitRelation("wheel.bore", "shaft.l2", "H7/g6")


def test_a_wheel_against_its_shoulder_is_quiet() -> None:
    """Nothing stands in anything, everything is placed, all comes apart."""
    assert check_together(pair(ON, parts=(WHEEL, SHAFT))) == ()


def test_a_piece_without_a_relation_is_told() -> None:
    """A knob that nothing joins is a note, and a stop is not made of it."""
    knob = turned("knob", (9.0, 5.0))
    (one,) = numbered(pair(ON, parts=(WHEEL, SHAFT, knob)), 650)
    assert (one.severity, one.part) == ("note", "knob")


def test_metal_in_metal_is_a_stop_with_its_size() -> None:
    """A land of 10.6 in a bore of 10 shares a ring of 0.3 round 8 mm: 0.3 x pi x 10.3 x 8 = 77.7 mm3 by hand."""
    thick = turned("shaft", (16.0, 5.0), (10.6, 30.0))
    (one,) = numbered(pair(ON, parts=(WHEEL, thick)), 653)
    assert one.severity == "stop"
    assert float(one.words.split(": ")[1].split(" ")[0]) == pytest.approx(77.7, rel=0.01)
    assert one.figure == "0.29 mm thick"  # 2 V / S = 2 x 77.7 / (2 x 8 pi 10.3 + 2 x 0.3 pi 10.3)


@pytest.mark.parametrize(("wanted", "number"), [(0.0, 0), (4.0, 655)])
def test_a_gap_is_held_to_what_is_wanted(wanted: float, number: int) -> None:
    """Wheel of 40 beside a shaft's collar: the fixed ring lies 3 off its face."""
    ring = turned("ring", (60.0, 4.0), bore=10.0)
    shaft = turned("shaft", (16.0, 5.0), (10.0, 8.0), (14.0, 3.0), (10.0, 4.0))
    sweep = SweepRelation(("wheel", "shaft"), "shaft.l2", (), wanted)
    on = FitRelation("ring.bore", "shaft.l4", "H7/g6")
    found = check_together(pair(ON, on, parts=(WHEEL, shaft, ring), sweeps=(sweep,)))
    near = [one for one in found if one.number == 655]
    assert [one.number for one in near] == ([number] if number else [])
    if near:
        assert near[0].figure in ("2.99 mm", "3.00 mm")


def test_a_wheel_between_two_collars_cannot_be_put_on() -> None:
    """Shoulders of 16 on both sides of a land of 10: a wheel bored 10 has no free way."""
    shut = turned("shaft", (16.0, 5.0), (10.0, 8.0), (16.0, 5.0))
    (one,) = numbered(pair(ON, parts=(WHEEL, shut)), 656)
    assert one.severity == "stop"
    assert "wheel" in one.words.lower()
    assert "shaft" in one.words.lower()


def test_a_pressed_collar_shuts_a_wheel_in() -> None:
    """The collar goes on last and stays: the wheel does not come off again."""
    collar = turned("collar", (16.0, 5.0), bore=8.0)
    shaft = turned("shaft", (16.0, 5.0), (10.0, 8.1), (8.0, 5.0))
    design = pair(ON, FitRelation("collar.bore", "shaft.l3", "H7/p6", "press"), parts=(WHEEL, shaft, collar))
    assert [one.severity for one in numbered(design, 657)] == ["caution"]
    assert [one.figure for one in numbered(design, 658)] == ["pressed"]
    loose = replace(design, fits=(ON, FitRelation("collar.bore", "shaft.l3", "H7/g6")))
    assert numbered(loose, 657) == numbered(loose, 658) == []


def test_what_is_not_settled_is_a_caution() -> None:
    """A wheel that nothing holds along a plain rod: the ring it meets there is told, and forbids nothing."""
    rod = turned("rod", (10.0, 40.0))
    ring = turned("ring", (20.0, 30.0), bore=10.0)
    fits = (ON, FitRelation("ring.bore", "rod.l1", "H7/g6"))
    fits = (replace(ON, shaft="rod.l1"), fits[1])
    design = pair(*fits, parts=(WHEEL, rod, ring))
    assert {one.number for one in check_together(design)} <= {650, 651}  # beside each other on the rod
    thick = turned("rod", (10.6, 40.0))
    (one, other) = numbered(pair(*fits, parts=(WHEEL, thick, ring)), 653)
    assert {one.severity, other.severity} == {"caution"}
    assert "no relation says just where" in one.words


def test_a_solid_that_cannot_be_made_is_told_and_the_rest_stands(monkeypatch: pytest.MonkeyPatch) -> None:
    """A fault of the mesh kernel in one check leaves the others."""
    from tommybar.checks import interference, together
    from tommybar.refusals import OwnFault

    def breaks(*_: object) -> tuple[Finding, ...]:
        raise OwnFault("The mesh kernel says no.")

    breaks.__module__ = interference.__name__
    monkeypatch.setattr(together, "CHECKS", (breaks, *together.CHECKS[2:]))
    together.look_together.cache_clear()
    (one,) = check_together(pair(ON, parts=(WHEEL, SHAFT)))
    together.look_together.cache_clear()
    assert one.number == 659
    assert "not looked at for interference" in one.words
