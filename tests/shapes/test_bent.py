"""Sheet, rings, springs and bent wire against closed forms, and bought parts against their tables."""

import math

import pytest

from tommybar.refusals import Refusal
from tommybar.shapes.developed import (
    bend_allowance,
    flats,
    ring_length,
    solid_length,
    spring_length,
    wire_length,
)
from tommybar.shapes.envelopes import envelope
from tommybar.shapes.features import (
    Bend,
    Boss,
    Dim,
    Outline,
    PlateHole,
    PlateShape,
    RolledRing,
    SheetShape,
    SpringShape,
    WireShape,
)
from tommybar.shapes.mass import mass_properties

EXACT = {"rel": 1e-11, "abs": 1e-9}


def angle_strip(angle=90.0, **more):
    """Legs of 20 and 30 outside in 2 mm sheet, 15 wide, 3 mm inside radius."""
    bends = [(abs(angle), 3.0)]
    first, second = flats([20.0, 30.0], bends, 2.0)
    allowance = bend_allowance(angle, 3.0, 2.0)
    bend = Bend("bend", first, angle, 3.0)
    return SheetShape(
        Dim(first + allowance + second), Dim(15.0), Dim(2.0), bends=(bend,), legs=(20.0, 30.0), **more
    )


def test_developed_length_of_a_right_angle():
    """By hand: 20 + 30 - 2 x 5 + pi/2 (3 + 0.88) = 46.095 mm."""
    assert angle_strip().length.value == pytest.approx(40 + math.pi / 2 * 3.88, **EXACT)


def test_an_angle_strip_weighs_its_flats_and_a_ring_sector():
    """15 x 2 x (15 + 25) and a quarter ring of 5 over 3; both legs from the corner."""
    found = mass_properties(angle_strip(), 1.0)
    quarter = math.pi / 4 * (25 - 9) * 15
    assert found.volume == pytest.approx(15 * 2 * 40 + quarter, **EXACT)
    middle = 4 / (3 * math.pi) * (125 - 27) / (25 - 9)  # of a quarter ring, from each side
    flat1, flat2 = 15 * 2 * 15, 15 * 2 * 25
    x = (flat1 * 7.5 + flat2 * (20 - 1) + quarter * (15 + middle)) / found.volume
    z = (flat1 * 1 + flat2 * (5 + 12.5) + quarter * (5 - middle)) / found.volume
    assert (found.off_axis[0], found.centre) == pytest.approx((x, z), **EXACT)
    assert found.off_axis[1] == pytest.approx(7.5)


def test_a_bend_the_other_way_is_the_mirror_image():
    """The centre goes as far below the top face as it stood above the bottom face."""
    up, down = mass_properties(angle_strip(70.0), 1.0), mass_properties(angle_strip(-70.0), 1.0)
    assert down.volume == pytest.approx(up.volume, **EXACT)
    assert down.centre == pytest.approx(2.0 - up.centre, **EXACT)
    assert down.off_axis[0] == pytest.approx(up.off_axis[0], **EXACT)


def test_a_bent_blank_turned_through_nothing_is_a_plate():
    """A flat sheet with holes and an outline weighs what the plate of the same figures weighs."""
    holes = (
        PlateHole("a", "top", 10, 10, Dim(5.0)),
        PlateHole("b", "top", 40, 10, Dim(4.0), sink_dia=6.0, sink_angle=90.0),
    )
    outline = Outline("bosses", bosses=(Boss(10, 10, 10), Boss(40, 10, 7)))
    sheet = SheetShape(Dim(47.0), Dim(20.0), Dim(2.0), outline, holes)
    plate = PlateShape(Dim(47.0), Dim(20.0), Dim(2.0), holes=holes, outline=outline)
    one, other = mass_properties(sheet, 1.0), mass_properties(plate, 1.0)
    assert one.volume == pytest.approx(other.volume, rel=1e-10)
    assert one.off_axis == pytest.approx(other.off_axis, rel=1e-10)
    assert one.centre == pytest.approx(2.0 - other.centre, rel=1e-10)  # z up from the bottom face
    assert one.inertia_axis == pytest.approx(other.inertia_axis, rel=1e-9)


def test_holes_in_a_bent_leg_go_up_with_it():
    """A hole 30 along the flat lies in the leg that stands up: it takes mass from high up."""
    plain, bored = angle_strip(), angle_strip(holes=(PlateHole("h", "top", 36.0, 7.5, Dim(6.0)),))
    one, other = mass_properties(plain, 1.0), mass_properties(bored, 1.0)
    lost = math.pi * 9 * 2
    assert one.volume - other.volume == pytest.approx(lost, **EXACT)
    high = 36.0 - 15 - math.pi / 2 * 3.88 + 5
    assert one.centre * one.volume - other.centre * other.volume == pytest.approx(lost * high, **EXACT)


def test_rolled_rings_by_pappus():
    """Strip: pi (D + t) t b; wire: 2 pi2 R a2; m r2 of each; a gap takes its share and moves the centre away."""
    strip = mass_properties(RolledRing(Dim(40.0), 6.0, 1.5), 1.0)
    assert strip.volume == pytest.approx(math.pi * 41.5 * 1.5 * 6, **EXACT)
    assert strip.inertia_axis * 1000 == pytest.approx(strip.volume * (20**2 + 21.5**2) / 2, rel=1e-10)
    wire = mass_properties(RolledRing(Dim(40.0), 2.0, 2.0, True), 1.0)
    assert wire.volume == pytest.approx(2 * math.pi**2 * 21 * 1, **EXACT)
    assert wire.inertia_axis * 1000 == pytest.approx(wire.volume * (21**2 + 0.75), rel=1e-10)
    for round_ in (False, True):
        split = RolledRing(Dim(40.0), 2.0, 2.0, round_, 10.0)
        found = mass_properties(split, 1.0)
        whole = mass_properties(RolledRing(Dim(40.0), 2.0, 2.0, round_), 1.0)
        assert found.volume / whole.volume == pytest.approx(ring_length(split) / (2 * math.pi * 21), **EXACT)
        assert found.off_axis[0] < -1 and abs(found.off_axis[1]) < 1e-9


def test_springs_and_bent_wire_are_length_times_section():
    """A close coil of 10 turns; a right angle in 2 mm wire; the centre of a semicircle of thin wire 2 R/pi."""
    spring = SpringShape("extension", 1.0, Dim(10.0), 10.0, 10.0, 11.0, "hooks")
    assert spring_length(spring) == pytest.approx(10 * math.sqrt((9 * math.pi) ** 2 + 1), **EXACT)
    assert mass_properties(spring, 1.0).volume == pytest.approx(math.pi / 4 * spring_length(spring), **EXACT)
    wire = WireShape(Dim(2.0), (10.0, 20.0), ((4.0, 90.0),))
    assert wire_length(wire) == pytest.approx(30 + 5 * math.pi / 2, **EXACT)
    assert mass_properties(wire, 1.0).volume == pytest.approx(math.pi * wire_length(wire), **EXACT)
    thin = WireShape(Dim(0.02), (1e-9, 1e-9), ((49.99, 180.0),))
    assert mass_properties(thin, 1.0).off_axis == pytest.approx((2 * 50 / math.pi, 50.0), rel=1e-6)


def test_solid_length_counts_the_ends():
    """Eight coils of 1 mm: 8 mm ground, 9 mm not ground."""
    kinds = {
        one: SpringShape("compression", 1.0, Dim(10.0), 6.0, 8.0, 25.0, one) for one in ("ground", "closed")
    }
    assert (solid_length(kinds["ground"]), solid_length(kinds["closed"])) == (8.0, 9.0)


@pytest.mark.parametrize(
    ("designation", "kind", "figures"),
    [
        # figures of the standards named, from memory but for those that the tables say were seen
        ("ISO 4762 M5 x 16", "socket head screw", {"head_dia": 8.5, "head_height": 5, "length": 16}),
        ("ISO 4017 M6 x 20", "hexagon head screw", {"across_flats": 10, "head_height": 4}),
        ("ISO 4026 M4 x 6", "grub screw", {"thread_dia": 4, "length": 6}),
        ("ISO 4032 M6", "nut", {"across_flats": 10, "thickness": 5.2}),
        ("ISO 7089 M5", "washer", {"inside": 5.3, "outside": 10, "thickness": 1}),
        ("DIN 471 10", "circlip", {"thickness": 1.0, "inside": 9.6}),
        ("ISO 8734 3 x 12", "dowel pin", {"dia": 3, "length": 12}),
        ("ball 6", "ball", {"dia": 6}),
        ("608-2Z", "ball bearing", {"inside": 8, "outside": 22, "width": 7}),
        ("O-ring 10 x 2", "o-ring", {"inside": 10, "section": 2}),
    ],
)
def test_designations_are_looked_up(designation, kind, figures):
    """Kind and main figures of each kind of bought part."""
    found = envelope(designation)
    assert found.kind == kind
    for name, value in figures.items():
        assert found.size(name) == pytest.approx(value, abs=0.06)
    assert found.source
    assert mass_properties(found, 7.85).mass > 0


@pytest.mark.parametrize(
    ("designation", "words"),
    [
        ("ISO 4763 M5 x 16", r'in no table .* Did you mean "ISO 4762"\?'),
        ("ISO 4762 M5 x 17", r"not made 17 mm long .* The nearest are 16 and 20 mm"),
        ("ISO 8734 3 x 13", r"not made 13 mm long .* The nearest is"),
        ("ball 6.2", r"Balls of 6\.2 mm are not stocked\. The nearest is 6"),
        ("circlip 10", r"does not say whether it is for a shaft or a bore"),
    ],
)
def test_unknown_designations_offer_the_nearest(designation, words):
    """The nearest known one stands in the refusal."""
    with pytest.raises(Refusal, match=words):
        envelope(designation)
