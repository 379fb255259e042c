"""Plates: holes in their faces, and each impossible one refused with both figures."""

import pytest


def test_several_holes_of_one_entry_are_numbered(plate):
    """Holes written together get numbers; their sizes are named by them."""
    design = plate("{name: foot, face: top, dia: 5.5, through: true, at: [[8, 10], [30, 10]]}")
    holes = design.sized().parts[0].shape.holes

    assert [(one.name, one.dia.name, one.x, one.depth) for one in holes] == [
        ("foot_1", "plate.foot_1", 8, None),
        ("foot_2", "plate.foot_2", 30, None),
    ]


def test_sizes_of_a_plate_are_named(plate):
    """Length, width and thickness each have their name."""
    shape = plate().sized().parts[0].shape

    assert [one.name for one in (shape.length, shape.width, shape.thickness)] == [
        "plate.length",
        "plate.width",
        "plate.thick",
    ]


@pytest.mark.parametrize(
    ("hole", "said"),
    [
        (
            "{name: a, face: top, dia: 6, through: true, at: [[38, 10]]}",
            "The hole takes x 35 to 41 mm; the face top is 40 mm that way.",
        ),
        (
            "{name: a, face: front, dia: 6, deep: 9, at: [[20, 2]]}",
            "The hole takes y -1 to 5 mm; the face front is 8 mm that way.",
        ),
        (
            "{name: a, face: left, thread: M4, deep: 40, at: [[10, 4]]}",
            "The thread is 40 mm deep; the plate is 40 mm thick there.",
        ),
        ("{name: a, face: top, dia: 4, at: [[10, 4]]}", "must have either through: true or deep"),
        (
            "{name: a, face: top, dia: 4, through: true, sink_dia: 4, sink_deep: 2, at: [[10, 4]]}",
            "The counterbore is 4 mm; its hole is 4 mm.",
        ),
        (
            "{name: a, face: top, dia: 4, through: true, sink_dia: 6, sink_deep: 8, at: [[10, 4]]}",
            "The counterbore is 8 mm deep; the plate is 8 mm thick there.",
        ),
        (
            "{name: a, face: top, dia: 4, through: true, sink_dia: 6, at: [[10, 4]]}",
            "must have both sink_dia and sink_deep",
        ),
        (
            "{name: a, face: top, dia: 6, through: true, at: [[10, 10], [15, 10]]}",
            "a_1 and a_2 lie 5 mm apart; their radii add up to 6 mm.",
        ),
        (
            "{name: a, face: tip, dia: 6, through: true, at: [[10, 10]]}",
            "It is tip; it must be top, bottom, front, back, left or right.",
        ),
        (
            "{name: a, face: top, dia: 6, through: yes, at: [[10, 10]]}",
            "It is yes; it must be true or false.",
        ),
    ],
)
def test_what_cannot_be_drilled_is_refused_with_both_figures(plate, refused, hole, said):
    """A hole off the part, too deep or into its neighbour says both figures."""
    assert said in refused(plate, hole)
