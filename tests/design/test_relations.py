"""Relations: limits come from fits to both mates, and every name is looked up."""

import pytest

BODY = (
    "outside: [{name: rim, dia: rim, long: 9}]",
    "bores: [{name: bore, dia: 10, through: true}]",
)
AFTER = """  pin:
    material: silver steel
    turned: {outside: [{name: seat, dia: 10, long: 9}, {name: neck, dia: 6, long: 9}]}
  plate:
    material: mild steel
    plate:
      {length: 40, width: 20, thick: 8, holes: [
        {name: tapped, face: top, thread: M5, through: true, at: [[10, 10], [30, 10]]},
        {name: clear, face: top, dia: 5.5, through: true, at: [[20, 5]]}]}
relations: [RELATION]
"""


@pytest.fixture
def related(disc):
    """The disc with a pin, a plate and one relation."""
    return lambda relation: disc(*BODY, after=AFTER.replace("RELATION", relation)).sized()


def test_a_fit_gives_both_mates_their_limits(related):
    """ISO 286: 10 H7 is 10.000 to 10.015, 10 g6 is 9.986 to 9.995."""
    sized = related("{fit: disc.bore, on: pin.seat, limits: H7/g6}")
    bore, seat = sized.part("disc").shape.bores[0].dia, sized.part("pin").shape.outside[0].dia

    assert (bore.zone, bore.smallest, bore.largest) == ("H7", 10.0, 10.015)
    assert (seat.zone, seat.smallest, seat.largest) == ("g6", 9.986, 9.995)
    assert sized.fits[0].hole == "disc.bore"


def test_a_loop_knows_its_lengths(related):
    """Terms carry sign, factor and figure."""
    sized = related(
        "{loop: [disc.length, -2 * pin.neck.long, pin.seat.long], float: [0, 0.1], made_last: pin}"
    )

    assert [(one.name, one.factor, one.value) for one in sized.loops[0].terms] == [
        ("disc.length", 1, 9),
        ("pin.neck.long", -2, 9),
        ("pin.seat.long", 1, 9),
    ]


def test_a_screw_stands_before_each_tapped_hole(related):
    """Every tapped hole gets its relation, by the names of the single holes."""
    sized = related("{screw: M5, through: plate.clear, into: plate.tapped}")

    assert [(one.through, one.into) for one in sized.screws] == [
        (("plate.clear",), "plate.tapped_1"),
        (("plate.clear",), "plate.tapped_2"),
    ]


def test_screws_go_through_the_holes_in_their_order(related):
    """The first clearance hole stands before the first tapped one, the second before the second."""
    sized = related("{screw: M4, through: [disc.bore, plate.clear], into: plate.tapped}".replace("M4", "M5"))

    assert [one.through for one in sized.screws] == [("disc.bore",), ("plate.clear",)]


def test_an_unknown_key_is_offered_the_keys_of_its_own_kind(related, refused):
    """A fit knows the keys of a fit, not those of loops and screws."""
    words = refused(related, "{fit: disc.bore, on: pin.seat, limits: H7/g6, colour: red}")

    assert (
        'The key "colour" is not known here. Known here: fit, on, limits, clearance, engaged, joint.' in words
    )


def test_own_limits_may_not_disagree_with_the_fit(disc, refused):
    """A feature in a fit has the zone of the fit, or says the same."""
    body = (BODY[0], BODY[1].replace("through: true", "through: true, limits: H8"))
    after = AFTER.replace("RELATION", "{fit: disc.bore, on: pin.seat, limits: H7/g6}")

    assert 'The limits are "H8"; the fit of disc.bore says H7.' in refused(disc, *body, after=after)


@pytest.mark.parametrize(
    ("relation", "said"),
    [
        ("{fit: disk.bore, on: pin.seat, limits: H7/g6}", 'There is no part "disk". Did you mean "disc"?'),
        (
            "{fit: disc.boer, on: pin.seat, limits: H7/g6}",
            'disc has no feature "boer". Did you mean "bore"?',
        ),
        (
            "{fit: disc.bore, on: pin.neck, limits: H7/g6}",
            "disc.bore is 10 mm and pin.neck is 6 mm; a fit has one nominal size.",
        ),
        ("{fit: pin.seat, on: disc.bore, limits: H7/g6}", "pin.seat is no hole."),
        ("{fit: disc.bore, on: disc.bore, limits: H7/g6}", "Name an outside cylinder."),
        (
            "{fit: disc.bore, on: pin.seat, limits: g6/H7}",
            'The fit is "g6/H7"; it must be a hole zone and a shaft zone.',
        ),
        ("{fit: disc.bore, on: pin.seat, limits: H7/q6}", "q6"),
        ("{loop: [disc.width], float: [0, 1], made_last: disc}", 'There is no length "disc.width".'),
        (
            "{loop: [disc.length / 2], float: [0, 1], made_last: disc}",
            '"disc.length / 2" is no term of a loop.',
        ),
        ("{loop: [disc.length], float: [1, 0], made_last: disc}", "The float goes from 1 to 0 mm."),
        (
            "{loop: [disc.length], float: [0, 1], made_last: disc}",
            "The loop comes to 9 mm; its float is 0 to 1 mm.",
        ),
        ("{loop: [disc.length], float: [0, 9], made_last: pin}", 'There is no part of the loop "pin".'),
        (
            "{screw: M6, through: plate.clear, into: plate.tapped}",
            "plate.clear is 5.5 mm; the screw M6 is 6 mm.",
        ),
        ("{screw: M4, through: plate.clear, into: plate.tapped}", "plate.tapped_1 is M5; the screw is M4."),
        ("{bolt: M4}", "it must have one of the keys fit, loop, screw"),
    ],
)
def test_wrong_relations_are_refused(related, refused, relation, said):
    """A name that is not there is refused with the nearest; figures that disagree with both."""
    assert said in refused(related, relation)


def test_two_fits_may_not_disagree(related, refused):
    """One size has one zone."""
    both = "{fit: disc.bore, on: pin.seat, limits: H7/g6}, {fit: disc.bore, on: pin.seat, limits: H8/g6}"

    assert "gives disc.bore the zone H8; another fit gives it H7" in refused(related, both)
