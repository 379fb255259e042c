"""Press joints: the ring that really holds, and the bore as it stands while it is pressed."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.design.model import FitRelation, Part
from tommybar.facts.materials import material
from tommybar.making.joints import joint_cards, joints_of
from tommybar.mechanics.press_fit import press_fit
from tommybar.shapes.features import Bore, CircleHoles, Cylinder, Dim, TurnedShape


def test_the_hub_of_a_plate_is_the_least_metal_round_the_hole(demonstrator):
    """The pillar is 30 wide and 76 tall; the bore stands in the middle of the width: 2 x 15, not more."""
    (joint,) = joints_of(demonstrator, "bush")
    assert joint.hub_outside == pytest.approx(30.0)

    pillar = demonstrator.part("pillar")
    holes = tuple(replace(h, y=10.0) if h.name == "bore" else h for h in pillar.shape.holes)
    aside = replace(pillar, shape=replace(pillar.shape, holes=holes))
    design = replace(
        demonstrator, parts=tuple(aside if p.name == "pillar" else p for p in demonstrator.parts)
    )
    (joint,) = joints_of(design, "bush")
    assert joint.hub_outside == pytest.approx(20.0)  # 10 from the nearer edge


def test_the_hub_of_a_turned_part_is_the_land_round_the_hole(demonstrator):
    """A flange of 60 x 10 with a nose of 14: the hole of 12 through the flange alone is held by 60, or by its own holes."""
    bush = demonstrator.part("bush")
    lands = (Cylinder("flange", Dim(60.0), 0.0, 10.0), Cylinder("nose", Dim(14.0), 10.0, 30.0))
    seat = Bore("seat", Dim(12.0, "hub.seat", "H7", 12.0, 12.018), "A", 10.0, False)
    shape = TurnedShape(Dim(30.0), lands, bores=(seat,))
    fit = FitRelation("hub.seat", "bush.body", "H7/p6", "press")

    def ring(shape):
        hub = Part("hub", "turned", "mild steel", 1, shape)
        return joints_of(replace(demonstrator, parts=(bush, hub), fits=(fit,)), "bush")[0].hub_outside

    assert ring(shape) == pytest.approx(60.0)
    drilled = replace(shape, circle_holes=(CircleHoles("h", Dim(5.0), 4, 40.0, 0.0, 0.0, 10.0),))
    assert ring(drilled) == pytest.approx(35.0)  # 40 less 5


def test_the_force_is_that_of_the_bore_before_it_is_reamed(demonstrator, shop_r):
    """8 H7 waits at 7.8 while it is pressed: a thicker wall presses harder."""
    (joint,) = joints_of(demonstrator, "bush")
    part = demonstrator.part("bush")
    (card,), _ = joint_cards(part, (joint,), shop_r, {}, 2)
    bronze, steel = material(part.material), material(joint.hub_material)

    def force(bore):
        ring = (joint.hub_outside, steel.modulus, steel.poisson, bronze.modulus, bronze.poisson, bore)
        return press_fit(12.0, joint.most, 10.0, *ring).force

    assert force(7.8) > force(8.0)
    assert f"up to {force(7.8) / 1000:.1f} kN" in card.steps[0].dial[0]
