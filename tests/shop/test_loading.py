"""Shop files: units, ranges, what is assumed, and what is refused with which words."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tommybar.refusals import Refusal
from tommybar.shop import example_shops, examples, load_shop


@pytest.fixture
def shop_of(tmp_path):
    """Load a shop from the lines that follow the three that every file has."""

    def load(text: str, units: str = "mm"):
        file = tmp_path / "shop.yaml"
        file.write_text(f"tommybar: 1\nshop: Shed\nunits: {units}\n{text}")
        return load_shop(file)

    return load


def test_examples_are_found_and_whole():
    """Four example shops ship, and none of them leaves a figure to be assumed."""
    shops = {name: load_shop(path) for name, path in example_shops().items()}

    assert set(shops) == {"shop-r", "small-bench", "rope-bench", "inch-bench"}
    assert {name: shop.assumed for name, shop in shops.items()} == dict.fromkeys(shops, ())


def test_shop_r_has_the_figures_of_the_reference_shop():
    """Swing, speeds, dial and jaw ranges as the reference shop states them."""
    shop = load_shop(example_shops()["shop-r"])

    assert (shop.lathe.swing_bed, shop.lathe.swing_cross_slide, shop.lathe.spindle_bore) == (180, 110, 20)
    assert shop.lathe.speeds == (150, 250, 400, 600, 950, 1500, 2200)
    assert (shop.lathe.cross_slide.per_division, shop.lathe.cross_slide.reads) == (0.02, "RAD")
    assert shop.jaw_set("outside jaws").ranges == ((32, 95, 8),)
    collets = shop.jaw_set("collets").ranges
    assert (collets[0], collets[-1], len(collets)) == ((1.5, 2, 22), (15.5, 16, 22), 29)
    assert {5.8, 7.8, 9.8, 1.0, 13.0} <= set(shop.drills)
    assert [reamer.size for reamer in shop.reamers] == [4, 5, 6, 8, 10, 12]


def test_a_dial_numbered_in_diameter_moves_half_of_what_it_says(shop_of):
    """0.05 DIA a division is 0.025 mm of travel; RAD is travel itself."""
    dia = shop_of("lathe: {cross_slide: {division: 0.05, turn: 2, reads: DIA}}")
    rad = shop_of("lathe: {cross_slide: {division: 0.05, turn: 2, reads: RAD}}")

    assert (dia.lathe.cross_slide.per_division, dia.lathe.cross_slide.per_turn) == (0.025, 1.0)
    assert (rad.lathe.cross_slide.per_division, rad.lathe.cross_slide.per_turn) == (0.05, 2.0)


def test_bare_figures_are_in_the_unit_of_the_file_and_others_say_their_own(shop_of):
    """In an inch file 3/4 is 19.05 mm, and "20 mm" stays 20 mm."""
    shop = shop_of(
        "lathe: {spindle_bore: 3/4, drill_chuck: 13 mm, swing_over_bed: 7, centre_height: 3 1/2}", "in"
    )

    assert shop.lathe.spindle_bore == pytest.approx(19.05)
    assert shop.lathe.drill_chuck == 13.0
    assert shop.lathe.centre_height == pytest.approx(88.9)


def test_drills_by_range_by_number_and_by_letter(shop_of):
    """Ranges, single sizes, number drills and letters make one rising list."""
    shop = shop_of('drills: ["1-2 by 0.5", 7.8, "#7", F]')

    assert shop.drills == (1.0, 1.5, 2.0, 5.1054, 6.5278, 7.8)


def test_a_reamer_knows_what_it_really_cuts(shop_of):
    """A 10 mm reamer whose test hole came out at 10.012 adds 0.012."""
    shop = shop_of("reamers: [6, {size: 10, cuts: 10.012}]")

    assert [(one.size, one.cuts_over) for one in shop.reamers] == [(6.0, 0.0), (10.0, 0.012)]


def test_each_collet_is_a_range_of_its_own_and_gaps_stay_gaps(shop_of):
    """Sizes a whole millimetre apart that close half a millimetre leave half-millimetre gaps."""
    shop = shop_of(
        "jaws: [{name: c, device: collets, sizes: [6, 6.5, 8], closes: 0.5, depth: 20, runout: 0.02}]"
    )

    assert shop.jaws[0].ranges == ((5.5, 6, 20), (6.0, 6.5, 20), (7.5, 8, 20))


def test_what_is_left_out_comes_from_the_nearest_example_and_is_listed(shop_of):
    """A 50 mm lathe is filled up from the small bench, a 95 mm one from shop R; each place is named."""
    small = shop_of("lathe: {centre_height: 50}")
    large = shop_of("lathe: {centre_height: 95}")

    assert small.lathe == replace(load_shop(example_shops()["small-bench"]).lathe, centre_height=50.0)
    assert large.jaws == load_shop(example_shops()["shop-r"]).jaws
    assert "lathe.spindle_bore" in small.assumed
    assert "lathe.swing_over_cross_slide" in small.assumed
    assert "lathe.centre_height" not in small.assumed
    assert {"mill", "jaws", "tools", "drills", "reamers", "can"} <= set(small.assumed)


def test_metal_is_never_assumed(shop_of):
    """A file without a rack has nothing on it, and says so among the assumptions."""
    shop = shop_of("lathe: {centre_height: 90}")

    assert shop.rack == ()
    assert "rack" in shop.assumed


def test_a_whole_file_without_a_rack_assumes_nothing_else(tmp_path):
    """Shop R without its rack is still shop R."""
    text = example_shops()["shop-r"].read_text()
    start, end = text.index("rack:"), text.index("obtainable:")
    file = tmp_path / "r.yaml"
    file.write_text(text[:start] + text[end:])

    assert load_shop(file).assumed == ("rack",)


def test_no_mill_is_said_with_a_word(shop_of):
    """``mill: none`` is a shop without a mill; leaving the key out is an assumption."""
    assert shop_of("mill: none").mill is None
    assert "mill" not in shop_of("mill: none").assumed
    assert shop_of("").mill is not None


def test_the_reference_shop_stands_in_when_there_is_nothing_to_go_by(shop_of):
    """A file of three lines is shop R in millimetres; the one in inches is the inch bench."""
    assert shop_of("").lathe == load_shop(example_shops()["shop-r"]).lathe
    assert shop_of("", "in").lathe == load_shop(example_shops()["inch-bench"]).lathe


def test_flats_and_tubes_either_way_round(shop_of):
    """A flat's thickness is its smaller figure, a tube's bore its smaller one, in either order."""
    flat = "{material: mild steel, flat: 10 x 30, long: 300}"
    tube = "{material: mild steel, tube: 16 x 20, long: 9}"
    flat, tube = shop_of(f"rack: [{flat}, {tube}]").rack

    assert (flat.size, flat.width, flat.name) == (10, 30, "mild steel flat 30 x 10")
    assert (tube.size, tube.width) == (20, 16)


BAD = {
    "unknown key": (
        "lathe: {swing_over_crosslide: 100}",
        ':4:9: lathe.swing_over_crosslide: The key "swing_over_crosslide" is not known here. '
        'Did you mean "swing_over_cross_slide"?',
    ),
    "unit of another kind": (
        "lathe: {spindle_bore: 20 deg}",
        ":4:23: lathe.spindle_bore: This is an angle; a length is wanted here. Check the units.",
    ),
    "negative": (
        "lathe: {between_centres: -350}",
        ":4:26: lathe.between_centres: The figure is -350; it must be above 0.",
    ),
    "range that falls": (
        "jaws: [{name: a, device: three-jaw, ranges: [{from: 36, to: 3, depth: 20}]}]",
        ":4:46: jaws.0.ranges.0: The range ends at 3 mm; it must end above its start, 36 mm."
        " Write the smaller diameter first.",
    ),
    "range that misses its end": (
        "drills: 1-6 by 0.3",
        ':4:9: drills: The range "1-6 by 0.3" does not end on 6 mm: 0.3 mm goes 16.67 times.'
        " Mend the end or the rise.",
    ),
    "dial without whole divisions": (
        "lathe: {top_slide: {division: 0.03, turn: 2}}",
        ":4:20: lathe.top_slide: One turn holds 66.6667 divisions; a dial has a whole number of them."
        " Read division and turn off the dial again.",
    ),
    "tool that can never be chosen": (
        "tools: [{letter: P, kind: parting, width: 2}]",
        ":4:9: tools.0: Tool P is a parting tool without reach; it can never be chosen so."
        " Measure it and write it in.",
    ),
    "two tools of one letter": (
        "tools: [{letter: A, kind: knife, shank: 8}, {letter: A, kind: chamfer, shank: 8}]",
        ':4:54: tools.1.letter: "A" is given twice. Give each its own.',
    ),
    "unknown skill": (
        "can: [arbour]",
        ':4:7: can.0: "arbour" is no way of working that is planned here. Did you mean "arbor"?',
    ),
    "swing too large": (
        "lathe: {swing_over_bed: 110, swing_over_cross_slide: 130}",
        ":4:8: lathe: The swing over the cross-slide is 130 mm; it must be below the swing over the bed,"
        " 110 mm. Measure from the top of the slide to the axis, times two.",
    ),
    "two sections": (
        "rack: [{material: mild steel, round: 20, flat: 30 x 10, long: 100}]",
        ":4:8: rack.0: The piece has 2 sections (round, flat); it must have one of round, hexagon, square,"
        " flat, plate, sheet, tube. Write for instance round: 20.",
    ),
    "share above one": (
        "lathe: {efficiency: 75}",
        ":4:21: lathe.efficiency: The share is 75; it must be above 0 and up to 1. Write 75 % as 0.75.",
    ),
}


@pytest.mark.parametrize("kind", BAD)
def test_bad_files_are_refused_in_full_words(shop_of, kind):
    """Each fault gives its place, its figure, the bound and the remedy."""
    text, words = BAD[kind]

    with pytest.raises(Refusal) as told:
        shop_of(text)

    assert str(told.value).partition("shop.yaml")[2] == words


def test_all_faults_come_at_once(shop_of):
    """Three faults of one file stand in one refusal, in the order of the file."""
    with pytest.raises(Refusal) as told:
        shop_of("lathe: {spindle_bore: wide}\ndrills: [0]\ntaps: [M4.7]")

    assert [one.place for one in told.value.complaints] == ["lathe.spindle_bore", "drills", "taps.0"]


def test_a_missing_file_is_one_line():
    """A shop file that is not there is a refusal, not a traceback."""
    with pytest.raises(Refusal, match=r"There is no file nowhere\.yaml"):
        load_shop(Path("nowhere.yaml"))


def test_examples_are_found_beside_an_installed_package(tmp_path, monkeypatch):
    """In a wheel the examples lie inside the package, and are taken from there."""
    (tmp_path / "tommybar" / "examples" / "shops").mkdir(parents=True)
    (tmp_path / "tommybar" / "examples" / "shops" / "mine.yaml").write_text("")
    monkeypatch.setattr(examples, "_PACKAGE", tmp_path / "tommybar")

    assert examples.example_folder.__wrapped__() == tmp_path / "tommybar" / "examples"


def test_of_two_equal_lathes_the_bench_with_the_fuller_drawer_stands_in(tmp_path):
    """Two examples have a lathe of 55 mm; a new user's shop takes its tools from the one that has chamfer and groove tools."""
    place = tmp_path / "shed.yaml"
    place.write_text(
        "tommybar: 1\nshop: Shed\nunits: mm\n"
        "lathe: {centre_height: 55, swing_over_bed: 110, swing_over_cross_slide: 72}\n"
    )

    kinds = {one.kind for one in load_shop(place).tools}

    assert kinds >= {"chamfer", "groove", "recess", "parting"}


@pytest.mark.parametrize(
    ("tool", "words"),
    [
        (
            "{letter: P, kind: inside groove, width: 1, reach: 20, smallest_bore: 9}",
            "Tool P is an inside groove tool without cuts_deep",
        ),
        (
            "{letter: P, kind: inside groove, width: 1, reach: 20, smallest_bore: 9, cuts_deep: 1.5, shank: 8}",
            "cuts 1.5 mm deep from a shank of 8 mm; it cannot enter a bore of 9 mm",
        ),
        ("{letter: Q, kind: form, radius: 3}", "Tool Q is a form tool without leaves"),
    ],
)
def test_a_tool_that_lacks_what_it_is_chosen_by_is_refused(tmp_path, tool, words):
    file = tmp_path / "shop.yaml"
    file.write_text(f"tommybar: 1\nshop: S\nunits: mm\ntools: [{tool}]\n", encoding="utf-8")

    with pytest.raises(Refusal, match=words):
        load_shop(file)


def test_an_inside_grooving_tool_is_read_in_the_files_unit(tmp_path):
    """0.06 in is 1.524 mm."""
    file = tmp_path / "shop.yaml"
    file.write_text(
        "tommybar: 1\nshop: S\nunits: in\ntools: [{letter: P, kind: inside groove, width: 0.04, reach: 0.8, "
        "smallest_bore: 0.36, cuts_deep: 0.06, shank: 0.25}]\n",
        encoding="utf-8",
    )
    (tool,) = load_shop(file).tools

    assert tool.cuts_deep == pytest.approx(1.524) and tool.kind == "inside groove"
