"""Turned parts: lands in order, and each impossible feature refused with both figures."""

import pytest

RIM = "outside: [{name: rim, dia: rim, long: 6, edges: 1}, {name: boss, dia: hub, long: 4}]"


def shape_of(design):
    """The shape of the only part."""
    return design.sized().parts[0].shape


def test_lands_stand_in_order_from_face_a(disc):
    """Lands follow each other; the length over all is their sum when it is left out."""
    shape = shape_of(disc(RIM))

    assert [(one.name, one.start, one.end) for one in shape.outside] == [("rim", 0, 6), ("boss", 6, 10)]
    assert shape.length.value == 10
    assert shape.length.name == "disc.length"


def test_one_land_takes_what_is_left_of_the_length(disc):
    """The land without long fills the part up, wherever it stands."""
    shape = shape_of(
        disc(
            "length: 25",
            "outside: [{name: a, dia: 8, long: 5}, {name: b, dia: 10}, {name: c, dia: 8, long: 6}]",
        )
    )

    assert [(one.start, one.end) for one in shape.outside] == [(0, 5), (5, 19), (19, 25)]


def test_edges_are_broken_only_where_they_stand_free(disc):
    """The rim has two free edges; the boss has one, at the face."""
    shape = shape_of(disc(RIM.replace("long: 4", "long: 4, edges: 0.5 x 45 deg")))

    assert [(one.edge_start, one.edge_end) for one in shape.outside] == [(1, 1), (0, 0.5)]


def test_circle_of_holes_runs_through_the_web_only(disc):
    """Holes on a circle begin at the floor of the recess that they lie in."""
    shape = shape_of(
        disc(
            RIM,
            "recesses: [{name: dish, face: A, inside: hub, outside: 50, deep: 4}]",
            "holes: [{name: ease, dia: 8, count: 3, circle: 35}]",
        )
    )

    assert (shape.circle_holes[0].start, shape.circle_holes[0].end) == (4, 6)


def test_a_screw_stands_at_its_major_diameter(disc):
    """A thread gives the land its nominal diameter, from the table of threads."""
    shape = shape_of(disc("outside: [{name: screw, thread: M6, long: 10}]"))

    assert (shape.outside[0].dia.value, shape.outside[0].thread) == (6, "M6")


def test_own_limits_are_read_with_their_sign(disc):
    """Limits written at a feature, zone or deviations, become its smallest and largest size."""
    shape = shape_of(
        disc(
            "outside: [{name: a, dia: 10, long: 9, limits: h7}, {name: b, dia: 9, long: 9, limits: +0.05/-0.02}]"
        )
    )

    assert [(one.dia.smallest, one.dia.largest) for one in shape.outside] == [(9.985, 10), (8.98, 9.05)]


def test_a_bought_part_names_sizes_in_its_designation(disc, refused):
    """Sizes in brackets are filled in, and looked up."""
    design = disc(RIM, after='  rod: {bought: "rod {hub} x {rim}, bright"}\n')

    assert design.sized({"rim": 62.5}).parts[1].bought == "rod 20 x 62.5, bright"
    assert 'There is no size "rin". Did you mean "rim"?' in refused(
        disc, RIM, after='  rod: {bought: "rod {rin}"}\n'
    )


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        (
            ["length: 30", RIM],
            "disc.yaml:11:15: parts.disc.turned.length: The lands add up to 10 mm; the length is 30 mm.",
        ),
        (
            ["length: 9", RIM.replace(", long: 4", ", long: 4}, {name: end, dia: 5")],
            "take 10 mm of the length 9 mm",
        ),
        ([RIM.replace("long: 6, ", "").replace(", long: 4", "")], "The length of rim and boss is left out"),
        ([RIM.replace("edges: 1", "edges: 4")], "The chamfers take 8 mm; the land is 6 mm long."),
        ([RIM.replace("long: 4", "long: 4, edges: 5")], "The chamfer is 5 mm; its land is 4 mm long."),
        (
            [RIM.replace("edges: 1", "edges: 1 x 95 deg")],
            "The chamfer is 95 deg to the axis; it must lie between 0 and 90 deg.",
        ),
        (
            ["outside: [{name: a, dia: 10, long: 9, edge_b: 2}, {name: b, dia: 8, long: 9}]"],
            "The chamfer is 2 mm; the step it breaks is 1 mm high, of which 0.05 mm must stay.",
        ),
        (
            ["outside: [{name: a, dia: 7, long: 9, edge_a: 0.5}, {name: b, dia: 8, long: 9, edge_a: 0.5}]"],
            "The chamfer is 0.5 mm; the step it breaks is 0.5 mm high, of which 0.05 mm must stay.",
        ),
        (
            ["outside: [{name: a, dia: 8, long: 9, edge_b: 1}, {name: b, dia: 10, long: 9}]"],
            "This end of a is no edge: beside its 8 mm stand 10 mm.",
        ),
        (
            [RIM, "bores: [{name: bore, dia: 20, through: true}]"],
            "The bore is 20 mm; boss outside it is 20 mm",
        ),
        (
            [RIM, "bores: [{name: bore, dia: 8, deep: 9}]"],
            "The bore is 9 mm deep and its drill tip 2.40 mm more; the part is 10 mm long.",
        ),
        ([RIM, "bores: [{name: bore, dia: 8}]"], "must have either through: true or deep"),
        (
            [RIM, "bores: [{name: bore, through: true}]"],
            "The feature has neither; it must have dia or thread.",
        ),
        (
            [RIM, "recesses: [{name: dish, face: B, inside: 5, outside: 18, deep: 10}]"],
            "The recess is 10 mm deep; the land it is cut in is 10 mm thick there.",
        ),
        (
            [RIM, "recesses: [{name: dish, face: A, inside: 30, outside: 50, deep: 6}]"],
            "The recess is 6 mm deep; the land it is cut in is 6 mm thick there.",
        ),
        (
            [RIM, "recesses: [{name: dish, face: B, inside: 30, outside: 50, deep: 2}]"],
            "The recess is 50 mm in diameter; boss is 20 mm.",
        ),
        (
            [RIM, "recesses: [{name: dish, face: A, inside: 50, outside: 30, deep: 2}]"],
            "The recess goes from 50 to 30 mm in diameter.",
        ),
        (
            [RIM, "recesses: [{name: dish, face: A, inside: 30, outside: 50, deep: 2, corner: 3}]"],
            "The corner radius is 3 mm; the recess is 2 deep",
        ),
        (
            [
                "outside: [{name: rim, dia: rim, long: 10}]",
                "recesses: [{name: a, face: A, inside: 30, outside: 50, deep: 5},"
                " {name: b, face: B, inside: 30, outside: 50, deep: 5}]",
            ],
            "The recesses are 5 and 5 mm deep; the part is 10 mm thick.",
        ),
        (
            [RIM, "holes: [{name: ease, dia: 12, count: 3, circle: 50}]"],
            "The holes reach to 62 mm in diameter; the part is 60 mm.",
        ),
        (
            [RIM, "holes: [{name: ease, dia: 12, count: 12, circle: 40}]"],
            "12 holes of 12 mm lie 10.35 mm apart on their circle",
        ),
        (
            [
                RIM,
                "bores: [{name: bore, dia: 10, through: true}]",
                "holes: [{name: ease, dia: 6, count: 3, circle: 15}]",
            ],
            "reach in to 9 mm in diameter; bore is 10 mm.",
        ),
        (
            [RIM, "holes: [{name: ease, dia: 3, count: 2.5, circle: 30}]"],
            "The count comes to 2.5; it must be a whole number.",
        ),
        (
            [RIM, "grooves: [{name: cut, on: boss, at: b, wide: 5, deep: 1}]"],
            "The groove lies from 5 to 10 mm; boss lies from 6 to 10 mm.",
        ),
        (
            [RIM, "grooves: [{name: cut, on: boss, at: b, wide: 2, deep: 10}]"],
            "The floor of the groove is 0 mm; it must lie between 0 and 20 mm.",
        ),
        (
            [RIM, "grooves: [{name: cut, on: bos, at: b, wide: 2, deep: 1}]"],
            'There is no land "bos". Did you mean "boss"?',
        ),
        (
            [RIM, "cross_holes: [{name: grub, thread: M5, on: boss}]"],
            "The hole lies from 5.5 to 10.5 mm; boss lies from 6 to 10 mm.",
        ),
        (
            [RIM, "cross_holes: [{name: grub, dia: 3, on: boss, into: bore}]"],
            'There is no bore or cross hole "bore". There are none.',
        ),
        (["outside: [{name: a, thread: M61, long: 9}]"], 'There is no thread "M61"'),
        (["outside: [{name: a, thread: hub, long: 9}]"], '"hub" is a figure; a thread is wanted here.'),
        (["outside: [{name: a, dia: 200, long: 9, limits: H7}]"], "200"),
        (["outside: [{name: a, dia: -3, long: 9}]"], "The length comes to -3 mm; it must be above 0."),
        (["outside: [{name: a, dia: 0, long: 9}]"], "The length comes to 0 mm; it must be above 0."),
        (
            ["outside: [{name: a, dia: 9, long: 9}, {name: a, dia: 8, long: 9}]"],
            'Two features are named "a".',
        ),
        (["outside: [{name: a b, dia: 9, long: 9}]"], '"a b" is no name.'),
    ],
)
def test_what_cannot_be_turned_is_refused_with_both_figures(disc, refused, lines, said):
    """Each impossible feature says the figure it had and the one that stands against it."""
    assert said in refused(disc, *lines)
