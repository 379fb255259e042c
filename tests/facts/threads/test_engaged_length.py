"""How much thread a metal wants: against the shear areas of the profile, and against the bounds of the table."""

from __future__ import annotations

import pytest

from tommybar.facts.materials import material
from tommybar.facts.threads import thread
from tommybar.facts.threads.engaged_length import engaged_length
from tommybar.mechanics.thread_strength import strip_load

CLASS_8_8 = 800.0  # tensile strength of the screw, ISO 898-1 [MPa]
METALS = [
    "mild steel",
    "medium carbon steel",
    "silver steel",
    "stainless steel 304",
    "free-cutting brass",
    "phosphor bronze",
    "aluminium 6082",
    "aluminium 2011",
]


@pytest.mark.parametrize("size", ["M3", "M5", "M6", "M8", "M12"])
@pytest.mark.parametrize("name", METALS)
def test_the_full_length_outlasts_a_screw_of_class_8_8(name, size):
    """By the shear areas of FED-STD-H28 the thread strips only after the screw breaks, one pitch being lost."""
    one = thread(size)
    joint = strip_load(one.major, one.pitch, one.major, CLASS_8_8, material(name).tensile_strength)
    assert engaged_length(name, one.major).full >= joint.engagement_needed + one.pitch


@pytest.mark.parametrize(
    ("name", "share"), [("mild steel", 1.0), ("aluminium 5083", 2.0), ("acetal", 2.5)], ids=str
)
def test_the_shares_that_were_seen(name, share):
    """Class 8.8 in two public tables: steel of 360 MPa and more 1.0 d, soft aluminium 2.0 d, plastic 2.5 d."""
    assert engaged_length(name, 10.0).full == pytest.approx(10.0 * share)


def test_every_material_of_the_tables_has_a_row():
    """No family is left out, and least is never more than full."""
    from tommybar.facts.materials import material_names

    for name in material_names():
        one = engaged_length(name, 6.0)
        assert 0 < one.least <= one.full
