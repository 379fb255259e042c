"""Parts with every turned feature weigh what the solid kernel integrates of the same features."""

from __future__ import annotations

from pathlib import Path

import pytest

from tommybar.design import load_design
from tommybar.shapes.clocking import in_frame
from tommybar.shapes.features import CrossHole, Cup, Cylinder, Dim, TurnedShape
from tommybar.shapes.mass import mass_properties
from tommybar.shapes.solids.kernel import solid_of, solid_properties

FILE = Path(__file__).parents[1] / "design" / "turned_vocabulary.yaml"


@pytest.mark.parametrize("name", ["wheel", "stud", "fork"])
def test_a_part_weighs_what_the_kernel_weighs(name: str) -> None:
    """Volume, centre and inertia about the axis within 1e-9 of the part."""
    pytest.importorskip("OCP.gp")
    shape = load_design(FILE).sized().part(name).shape
    assert isinstance(shape, TurnedShape)
    shape = in_frame(
        shape
    )  # its mirror image: at the other hand the kernel's own integral misses the centre by 3e-6
    found, solid = mass_properties(shape, 1000.0 / 1000), solid_properties(solid_of(shape))
    x, y, z = solid.centre

    assert found.volume == pytest.approx(solid.volume, rel=1e-9)
    assert (*found.off_axis, found.centre) == pytest.approx((x, y, z), rel=0, abs=1e-8)
    about = solid.second[0] + solid.second[1] + solid.volume * (x * x + y * y)
    assert found.inertia_axis * 1000 == pytest.approx(about, rel=1e-9)


def test_a_cross_hole_that_touches_a_cone_between_its_corners() -> None:
    """The hole's edge crosses the cup's wall at no corner of the section; the sum must part there."""
    pytest.importorskip("OCP.gp")
    shape = TurnedShape(
        Dim(20.0),
        (Cylinder("rod", Dim(8.0), 0.0, 20.0),),
        cups=(Cup("cup", "A", 6.5, 90.0),),
        cross_holes=(CrossHole("hole", Dim(2.4), 3.35, 5.5, 2),),
    )
    solid = solid_properties(solid_of(shape))

    assert mass_properties(shape, 1.0).volume == pytest.approx(solid.volume, rel=1e-9)
