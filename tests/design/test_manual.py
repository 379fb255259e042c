"""Every sample of the page on design files loads, and says what the page says."""

import re
from pathlib import Path

import pytest

from tommybar.design import design_from_text

PAGE = (Path(__file__).parents[2] / "docs" / "design-files.md").read_text()
SAMPLES = re.findall(r"(?s)```yaml\n(.*?)```", PAGE)


@pytest.mark.parametrize("text", SAMPLES, ids=[re.search(r"design: (.*)", one)[1] for one in SAMPLES])
def test_samples_load(text):
    """A sample is a whole file without fault."""
    assert design_from_text(text, "sample.yaml").sized().parts


def test_figures_of_the_samples():
    """By hand: boss 10 + 2 x 6 = 22; seat 12 + 6 - 0.1; plate 3 x 1 1/2 x 3/8 in."""
    samples = {re.search(r"design: (.*)", one)[1]: one for one in SAMPLES}
    disc, foot = (design_from_text(samples[name]).sized() for name in ("Spoked disc", "Foot"))

    assert dict(disc.values)["boss"] == 22
    assert disc.loops[0].terms[1].value == pytest.approx(17.9)
    shape = foot.part("foot").shape
    assert (shape.length.value, shape.width.value, shape.thickness.value) == (76.2, 38.1, 9.525)
    assert [one.name for one in shape.holes] == ["screw_1", "screw_2", "side"]
