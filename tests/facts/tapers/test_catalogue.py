"""Named tapers, cones in words and usual angles."""

from __future__ import annotations

import math

import pytest

from tommybar.facts.tapers import cone, included_angle, taper, taper_names
from tommybar.refusals import Refusal


@pytest.mark.parametrize(
    ("name", "gauge_mm", "one_in"),
    [
        ("Morse 0", 9.045, 19.212),
        ("Morse 1", 12.065, 20.047),
        ("Morse 2", 17.780, 20.020),
        ("Morse 3", 23.825, 19.922),
        ("Morse 4", 31.267, 19.254),
        ("Morse 5", 44.399, 19.002),
    ],
)
def test_morse_tapers_of_iso_296(name: str, gauge_mm: float, one_in: float) -> None:
    """Gauge diameter D [mm] and 1:x of ISO 296 (metric table), against our inch table of ANSI/ASME B5.10."""
    found = taper(name)
    assert found.large_end == pytest.approx(gauge_mm, abs=0.0006)
    assert found.one_in == pytest.approx(one_in, abs=0.0006)


@pytest.mark.parametrize(
    ("name", "small_in"),
    [
        ("Jacobs 0", 0.22844),
        ("Jacobs 1", 0.33341),
        ("Jacobs 2", 0.48764),
        ("Jacobs 2 short", 0.48764),
        ("Jacobs 33", 0.56051),
        ("Jacobs 6", 0.62409),
        ("Jacobs 3", 0.74610),
        ("Jacobs 4", 1.0372),
        ("Jacobs 5", 1.3161),
        ("Brown & Sharpe 1", 0.2),
        ("Brown & Sharpe 2", 0.25),
        ("Brown & Sharpe 3", 0.3125),
        ("Brown & Sharpe 4", 0.35),
        ("Brown & Sharpe 5", 0.45),
        ("Brown & Sharpe 6", 0.5),
        ("Brown & Sharpe 7", 0.6),
        ("Brown & Sharpe 8", 0.75),
        ("Brown & Sharpe 9", 0.9001),
        ("Metric 4", 0.1122),
    ],
)
def test_small_ends_of_the_handbook(name: str, small_in: float) -> None:
    """Small end [in] as public reprints list it follows from large end, taper and length."""
    assert taper(name).small_end / 25.4 == pytest.approx(small_in, abs=0.00006)


def test_r8_and_seven_in_twenty_four() -> None:
    """R8 has 16 deg 51 min included; 7/24 has a half angle of 8 deg 17 min 50 s."""
    assert taper("R8").included_angle == pytest.approx(16 + 51 / 60, abs=0.0005)
    assert taper("7/24 No 30").half_angle == pytest.approx(8 + 17 / 60 + 50 / 3600, abs=0.5 / 3600)
    assert taper("7:24").half_angle == pytest.approx(taper("ISO 40").half_angle)


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("MT2", "Morse 2"),
        ("morse no 3", "Morse 3"),
        ("JT33", "Jacobs 33"),
        ("B&S 7", "Brown & Sharpe 7"),
        ("INT 30", "7/24 No 30"),
    ],
)
def test_short_names(said: str, name: str) -> None:
    """What is said at the bench leads to the table's name."""
    assert taper(said).name == name


def test_names_by_system() -> None:
    """All Morse tapers from 0 to 5."""
    assert taper_names("Morse") == tuple(f"Morse {number}" for number in range(6))


@pytest.mark.parametrize(
    ("text", "steepness"), [("1:50", 0.02), ("1/4 in/ft", 1 / 48), ("0.6 in/ft", 0.05), ("7:24", 7 / 24)]
)
def test_cones_in_words(text: str, steepness: float) -> None:
    """Ratio and taper per foot say the same thing."""
    assert cone(text).taper_on_diameter == pytest.approx(steepness, rel=1e-12)


@pytest.mark.parametrize("angle", [10.0, 60.0, 90.0, 118.0])
def test_an_included_angle_comes_back(angle: float) -> None:
    """From angle to taper and back."""
    assert cone(f"{angle} deg").included_angle == pytest.approx(angle)
    assert math.isclose(cone(f"{angle} deg").half_angle, angle / 2)


@pytest.mark.parametrize("text", ["0:20", "1:0", "180 deg", "steep", "-1:20", "0 deg"])
def test_what_is_no_cone_is_refused(text: str) -> None:
    """Flat, cylindrical and unreadable tapers are refused."""
    with pytest.raises(Refusal, match="must be a ratio, a taper per foot or an angle"):
        cone(text)


def test_an_unknown_taper_offers_the_nearest() -> None:
    """A slip of the pen is answered with the name meant."""
    with pytest.raises(Refusal, match=r'The taper is "Mores 2".*Did you mean "morse 2"'):
        taper("Mores 2")


def test_a_centre_is_a_cone_too() -> None:
    """The point of a lathe centre has 60 degrees, and names where that comes from."""
    assert taper("Lathe centre").half_angle == pytest.approx(30)
    assert "ISO 298" in taper("lathe centre").source


def test_angles_of_centres_and_drills() -> None:
    """60, 118, 135 and 90 degrees; anything else is refused."""
    angles = [
        included_angle(what)
        for what in ("lathe centre", "drill point", "drill point for hard stuff", "spotting drill")
    ]
    assert angles == [60, 118, 135, 90]
    with pytest.raises(Refusal, match=r'Did you mean "drill point"'):
        included_angle("drill points")
