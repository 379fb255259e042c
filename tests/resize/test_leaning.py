"""What leans on what, read from the design's text."""

from __future__ import annotations

import pytest

from tommybar.resize.leaning import Leaning
from tommybar.resize.look import Looks


@pytest.mark.parametrize(
    ("name", "leans"),
    [
        ("hub", {"hub"}),
        ("ease_circle", {"hub", "rim_in"}),
        ("recess", {"drum_wide", "web"}),
        ("journal_long", {"drum_wide", "float"}),
    ],
)
def test_a_size_leans_on_free_sizes_through_others(jockey, name, leans):
    """A free size on itself, a worked-out one on those at the bottom."""
    assert Leaning(jockey).of_name(name) == leans


def test_parts_outsides_and_relations(jockey):
    """A part on all its features, an outside on less, a relation on the features that it names."""
    lean = Leaning(jockey)

    assert lean.of_part("drum") == {"drum_dia", "drum_wide", "hub", "rim_in", "web", "bore", "ease"}
    assert lean.of_outside("drum") == {"drum_dia", "drum_wide"}
    assert lean.of_relation(0) >= {"bore"}
    assert "drum_dia" not in lean.of_relation(0)
    assert lean.of_place("relations.2.through") >= {"stud_hole", "stud_thread"}
    assert lean.of_place("parts.nut.turned.bores.0") == {"nut_dia", "stud_thread"}


def test_what_cuts_a_thread(jockey):
    """The stud's thread is cut with a die and tapped in the nut; the mounts are only tapped."""
    lean = Leaning(jockey)

    assert lean.tools_for_thread("stud_thread") == {"tap", "die"}
    assert lean.tools_for_thread("mount") == {"tap"}


def test_which_material_a_stock_size_is_of(jockey):
    """The collar is the stud's own diameter; the bracket's thickness belongs to a plate."""
    lean = Leaning(jockey)

    assert lean.materials_of("collar")[0] == ("stud", "turned", "mild steel")
    assert lean.materials_of("bracket_thick")[0] == ("bracket", "plate", "mild steel")
    assert dict(lean.through_screws()) == {"stud_hole": "stud_thread", "washer_hole": "end_thread"}


def test_a_clearance_leans_on_its_own_hole_and_screw_only(jockey):
    """Not on every other screw of the design: that would make the search try all their sizes too."""
    lean = Leaning(jockey)

    assert lean.of_clearance("washer.bore") == {"washer_hole", "end_thread"}
    assert lean.of_clearance("stud_hole") == {"stud_hole", "stud_thread"}


def test_no_other_size_changes_a_clearance(jockey, small_shop):
    """Every other free size half as large again: hole and least clearance of each screw stay as they were."""
    looks = Looks(jockey, small_shop, "rack", Leaning(jockey))
    drawn = {size.name: size.value for size in jockey.named if not size.expression}

    def clearances(values):
        return {one.what: (one.figure, one.bound) for one in looks.at(values) if one.kind == "relation"}

    before = clearances(drawn)
    assert len(before) == 4
    for what, was in before.items():
        leans = looks.leaning.of_clearance(what.rpartition(" ")[2])
        for name, value in drawn.items():
            if name not in leans and isinstance(value, float):
                now = clearances({**drawn, name: 1.02 * value})
                assert now.get(what, was) == was, (what, name)
