"""Turned designs drawn at random: solid kernel, sums of mass and mesh agree on each that is accepted."""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from tommybar.design import design_from_text
from tommybar.refusals import Refusal
from tommybar.shapes.mass import mass_properties
from tommybar.shapes.mesh import mesh_of
from tommybar.shapes.solids.kernel import solid_of, solid_properties

_SPEC = importlib.util.spec_from_file_location(
    "laws_of_turned_designs", Path(__file__).parent / "test_turned_designs.py"
)
assert _SPEC is not None
assert _SPEC.loader is not None
drawn = importlib.util.module_from_spec(_SPEC)
sys.modules["laws_of_turned_designs"] = drawn
_SPEC.loader.exec_module(drawn)


@settings(max_examples=40, derandomize=True, suppress_health_check=list(HealthCheck))
@given(drawn.designs())
def test_kernel_sums_and_mesh_agree_on_designs_drawn_at_random(text: str) -> None:
    """Volume by the kernel and by the sums within 1e-8 of one another, the mesh within 1e-4 of them."""
    try:
        parts = design_from_text(text, "drawn.yaml").sized().parts
    except Refusal:
        return
    for part in parts:
        assert part.shape is not None
        volume = solid_properties(solid_of(part.shape)).volume

        assert mass_properties(part.shape, 1.0).volume == pytest.approx(volume, rel=1e-8)
        assert mesh_of(part.shape).volume == pytest.approx(volume, rel=1e-4)
