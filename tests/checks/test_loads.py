"""Bending and bearing pressure of a stud with a drum on it; every figure by hand."""

from __future__ import annotations

import pytest

from tommybar.design.joints import Duty
from tommybar.design.model import FitRelation, Part
from tommybar.shapes.bent import WireShape
from tommybar.shapes.features import Cylinder, Dim, TurnedShape

from .asking import disc, figures_of, finds, found_in, part


def stud(journal: float, long: float, screw: str = "") -> Part:
    """Thread or foot, collar of 5, journal."""
    foot = Cylinder("foot", Dim(8.0), 0.0, 19.0, thread=screw) if screw else None
    start = 19.0 if screw else 0.0
    lands = (
        Cylinder("collar", Dim(16.0), start, start + 5),
        Cylinder("journal", Dim(journal), start + 5, start + 5 + long),
    )
    whole = (foot, *lands) if foot else lands
    return Part("stud", "turned", "mild steel", 1, TurnedShape(Dim(start + 5 + long), whole))


def load(newton: float) -> tuple[Duty, ...]:
    """So much on the journal."""
    return (Duty("load", ("stud.journal",), newton),)


@pytest.mark.parametrize(
    ("journal", "long", "stress"), [(10.0, 20.2, 6.2), (6.0, 13.7, 19.4)], ids=["large", "small"]
)
def test_bending_at_the_collar(journal: float, long: float, stress: float) -> None:
    """60 N x 10.1 x 32 / (pi 10^3) = 6.2 MPa; 60 x 6.85 x 32 / (pi 6^3) = 19.4 MPa."""
    got = figures_of(stud(journal, long), duties=load(60.0))
    assert got["bending stress", "stud"].value == pytest.approx(stress, abs=0.05)


def test_the_root_of_the_thread_is_the_weakest() -> None:
    """M8, core 6.466: 60 x 15.1 x 32 / (pi 6.466^3) = 34.1 MPa, over the 6.2 of the journal."""
    got = figures_of(stud(10.0, 20.2, "M8"), duties=load(60.0))["bending stress", "stud"]
    assert got.value == pytest.approx(34.1, abs=0.1)
    assert "at foot" in got.how


def test_too_much_load_is_told() -> None:
    """Half the yield of the metal is the bound; ten times the load is ten times the stress."""
    assert not [one for one in found_in(stud(10.0, 20.2), duties=load(60.0)) if one.number == 665]
    told = finds(665, stud(10.0, 20.2), duties=load(6000.0))
    assert told.figure == "617 MPa"
    assert told.feature == "journal"


def test_bearing_pressure() -> None:
    """60 N on 6 by 13.5 is 0.74 MPa; 600 N are 7.4 of 5."""
    drum = part("drum", disc(68.0, 13.5, 6.0), "aluminium 6082")
    fit = (FitRelation("drum.bore", "stud.journal", "H7/f7"),)
    got = figures_of(stud(6.0, 13.7), drum, duties=load(60.0), fits=fit)
    assert got["bearing pressure", "stud"].value == pytest.approx(0.74, abs=0.005)
    assert finds(666, stud(6.0, 13.7), drum, duties=load(600.0), fits=fit).figure == "7.4 MPa"


@pytest.mark.parametrize("on", ["stud", "arm"])
def test_a_load_that_is_not_judged_is_told(on: str) -> None:
    """A load on a whole part, or on wire, is passed over by no check in silence."""
    arm = Part("arm", "wire", "mild steel", 1, WireShape(Dim(6.0), (60.0, 40.0), ((12.0, 60.0),)))
    duty = (Duty("load", (on,), 5.0),)

    assert finds(695, stud(10.0, 20.2), arm, duties=duty).figure == "5 N"
    assert not [one for one in found_in(stud(10.0, 20.2), arm, duties=load(5.0)) if one.number == 695]
