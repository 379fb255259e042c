"""BS 84 threads per inch as BS 1083 reprints and public charts print them; ISO 228 drills likewise."""

from __future__ import annotations

import pytest

from tommybar.facts.threads import thread

SIZES = ("1/4", "5/16", "3/8", "7/16", "1/2", "9/16", "5/8", "3/4", "7/8", "1")
BSW = (20, 18, 16, 14, 12, 12, 11, 10, 9, 8)
BSF = (26, 22, 20, 18, 16, 16, 14, 12, 11, 10)
SMALL = {"1/16 BSW": 60, "3/32 BSW": 48, "1/8 BSW": 40, "5/32 BSW": 32, "3/16 BSW": 24, "7/32 BSW": 24}
SMALL_FINE = {"7/32 BSF": 28, "9/32 BSF": 26}
PIPE_DRILLS = {
    "G 1/16": 6.8,
    "G 1/8": 8.8,
    "G 1/4": 11.8,
    "G 3/8": 15.25,
    "G 1/2": 19.0,
    "G 5/8": 21.0,
    "G 3/4": 24.5,
    "G 7/8": 28.25,
    "G 1": 30.75,
    "G 1 1/4": 39.5,
    "G 1 1/2": 45.5,
    "G 2": 57.0,
}
PIPE_DIAMETERS = {
    "G 1/8": (9.728, 9.147, 8.566),
    "G 1/4": (13.157, 12.301, 11.445),
    "G 3/8": (16.662, 15.806, 14.950),
}


@pytest.mark.parametrize(("size", "coarse", "fine"), list(zip(SIZES, BSW, BSF, strict=True)), ids=SIZES)
def test_threads_per_inch(size: str, coarse: int, fine: int) -> None:
    """BSW and BSF of each size from 1/4 to 1 in."""
    assert thread(f"{size} BSW").threads_per_inch == coarse
    assert thread(f"{size} BSF").threads_per_inch == fine


@pytest.mark.parametrize(("size", "count"), {**SMALL, **SMALL_FINE}.items())
def test_threads_per_inch_of_small_sizes(size: str, count: int) -> None:
    """BSW and BSF below 1/4 in, and 9/32."""
    assert thread(size).threads_per_inch == count


@pytest.mark.parametrize(("size", "drill"), PIPE_DRILLS.items())
def test_pipe_tapping_drills(size: str, drill: float) -> None:
    """Tapping drills of parallel pipe threads."""
    assert thread(size).tapping_drill == drill


@pytest.mark.parametrize(("size", "diameters"), PIPE_DIAMETERS.items())
def test_pipe_diameters(size: str, diameters: tuple[float, float, float]) -> None:
    """Major, pitch and minor diameter to 0.001 mm."""
    one = thread(size)

    assert (one.major, one.pitch_diameter, one.minor) == pytest.approx(diameters, abs=0.0005)
