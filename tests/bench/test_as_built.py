"""As-built against as-drawn, and taking a size over into the next revision."""

import difflib
from types import SimpleNamespace

import pytest

from tommybar.bench.as_built import accept, differences, next_revision
from tommybar.bench.places import place_of, size_places
from tommybar.bench.splice import with_key, with_lines, with_value
from tommybar.design import design_from_text
from tommybar.made.dims import dims_of, lengths_of
from tommybar.refusals import Refusal

from .conftest import DESIGN


def of(found):
    """Differences by their size."""
    return {one.size: one for one in found}


def changed_lines(before, after):
    """Only the lines that differ."""
    return [line for line in difflib.ndiff(before.split("\n"), after.split("\n")) if line[:2] in ("- ", "+ ")]


def test_every_measured_size_stands_beside_its_drawing(after, hand):
    """Within, over, larger: each with figure, limits and instrument."""
    build = after(
        hand("size", "wheel.bore", value=10.021, instrument="plug"),
        hand("size", "shaft.seat", value=9.99),
        hand("size", "crank.disc", value=43.7),
        hand("size", "wheel.rim", value=90.002),
    )

    found = of(differences(build))

    assert {name: one.verdict for name, one in found.items()} == {
        "wheel.bore": "over",
        "shaft.seat": "within",
        "crank.disc": "smaller",
        "wheel.rim": "as drawn",
    }
    bore = found["wheel.bore"]
    assert (bore.drawn, bore.low, bore.high, bore.instrument) == (10.0, 10.0, 10.015, "plug")
    assert bore.apart == 0.021
    assert bore.words == "wheel.bore is 10.021 mm, drawn 10.000 mm (10.000 to 10.015 mm): over."


def test_new_limits_of_a_mate_do_not_move_what_was_drawn(after, hand):
    """The seat was re-targeted by the bore; as drawn it is still 9.978 to 10."""
    build = after(hand("size", "wheel.bore", value=10.021), hand("size", "shaft.seat", value=10.01))

    seat = of(differences(build))["shaft.seat"]

    assert (seat.low, seat.high, seat.verdict) == (9.978, 10.0, "over")


def test_a_plain_figure_is_taken_over_at_its_place(after, hand):
    """One figure and the revision change in the text; every comment stays; the design loads so."""
    build = after(hand("size", "crank.disc", value=43.7))
    (one,) = differences(build)
    assert one.can_accept

    accepted = accept(build, [one])

    assert accepted.revision == "B"
    assert changed_lines(DESIGN, accepted.text) == [
        "- revision: A",
        "+ revision: B",
        "-   crank_dia:    {is: 44, follows: scale}",
        "+   crank_dia:    {is: 43.7, follows: scale}",
    ]
    design = design_from_text(accepted.text)
    assert design.revision == "B"
    assert dims_of(design.sized())["crank.disc"].value == 43.7
    assert accepted.words == ("crank_dia: 44 becomes 43.7, as crank.disc was built.",)


@pytest.mark.parametrize(("had", "has"), [("'1.9'", "1.10"), ("'3'", "4"), ("Z", "AA")])
def test_a_revision_in_figures_stays_text(after, hand, had, has):
    """After 1.9 comes 1.10, which is not 1.1; after 3 comes 4; after Z comes AA."""
    text = DESIGN.replace("revision: A", f"revision: {had}")
    build = after(
        hand("change", because="another office", design=text), hand("size", "crank.disc", value=43.7)
    )

    accepted = accept(build, differences(build))

    assert accepted.revision == design_from_text(accepted.text).revision == has


def test_what_else_changes_is_told_beforehand(after, hand):
    """The flange's thickness is a named size; the seat between two flanges changes with it."""
    (one,) = differences(after(hand("size", "bush.flange.long", value=3.1)))

    assert one.can_accept
    assert {"shaft.seat.long", "bush.length"} <= set(one.also)


@pytest.mark.parametrize(
    ("size", "value", "why"),
    [
        ("wheel.bore", 10.05, "Its limits come from a fit"),
        ("wheel.bore", 10.01, "nothing to take over"),
        ("wheel.length", 24.1, 'worked out from "rim_wide \\+ boss_long"'),
        ("shaft.seat.long", 43.8, 'worked out from "base_wide - 2'),
        ("pillar.thick", 9.8, "follows plate: its figure is that of what is owned"),
        ("wheel.rim", 40.0, "The design cannot be so"),
    ],
)
def test_what_cannot_be_taken_over_says_why(after, hand, size, value, why):
    """A fit, an expression, a bought thickness, a design that breaks: each has its words, and accept refuses."""
    build = after(hand("size", size, value=value))
    (one,) = differences(build)

    with pytest.raises(Refusal, match=why):
        accept(build, [one])
    assert not one.can_accept


def test_a_build_at_another_scale_does_not_change_the_drawing(after, hand, folder, build):
    """A crank of 39.5 at scale 0.9 says nothing of the 44 in the file."""
    scaled = after(hand("change", because="smaller", scale=0.9), hand("size", "crank.disc", value=38.0))

    (one,) = differences(scaled)

    assert "another size: the file says 44 mm" in one.why_not


def test_nothing_named_is_nothing_accepted(build):
    """An empty choice is refused, and no revision is made."""
    with pytest.raises(Refusal, match="No size is named"):
        accept(build, [])


def test_figures_of_an_inch_file_are_taken_over_in_inches(after, hand, build, monkeypatch):
    """A bare figure stays in the file's unit; one with its own unit keeps that."""
    import tommybar.bench.as_built as as_built

    text = (
        "tommybar: 1\ndesign: Trial\nrevision: '2'\nunits: in\nparts:\n  disc:\n    material: mild steel\n"
        "    turned:\n      outside:\n        - {name: rim, dia: 2, long: 10 mm}   # the rim\n"
    )
    inputs = SimpleNamespace(design_text=text, design=design_from_text(text))
    standing = place_of(text, "disc.rim"), place_of(text, "disc.rim.long")

    assert [
        as_built._written(value, one, inputs) for value, one in zip((50.0, 9.5), standing, strict=True)
    ] == [
        "1.9685",
        "9.5 mm",
    ]


def test_every_size_of_the_demonstrator_has_its_place():
    """Each named figure and each length that is written out is found where it stands."""
    known = size_places(DESIGN)
    sized = design_from_text(DESIGN).sized()
    names = {*dims_of(sized), *lengths_of(sized)}
    lost = {name for name in names if place_of(DESIGN, name) is None}

    assert {name for name in lost if name.endswith((".long", ".length"))} == {  # worked out
        *("wheel.boss.long", "crank.disc.long", "shaft.length", "bush.length", "handle.length")
    }
    assert {name for name in lost if not name.endswith((".long", ".length"))} == {  # screws
        *("base.back_1", "base.back_2", "base.front_1", "base.front_2", "crank.bore", "crank.pin"),
        *("handle.thread", "shaft.thread", "wheel.grub"),
    }
    assert {"wheel.rim", "pillar.bore", "base.thick", "wheel.dish.deep"} <= set(known)
    assert known["wheel.rim"].named == "wheel_dia"


def test_splices_keep_everything_else():
    """Values, keys and lines go in beside comments, in both ways of writing."""
    text = "a:   # first\n  b: {c: 1, d: 'x'}   # second\n  e:\n    - 1\n    - 2   # two\nf: 3\n"

    assert with_value(text, ("a", "b", "d"), "y") == text.replace("'x'", "y")
    assert with_key(text, ("a", "b"), "z", 2.5) == text.replace("'x'}", "'x', z: 2.5}")
    assert with_lines(text, ("a", "e"), "3") == text.replace("# two\n", "# two\n    - 3\n")
    assert with_key(text, (), "g", "h: i") == text.replace("f: 3\n", 'f: 3\ng: "h: i"\n')


@pytest.mark.parametrize(
    ("place", "words"), [(("q",), "nothing at q"), (("a", 7), "nothing at a.7"), (("a",), "no single value")]
)
def test_a_splice_at_no_place_is_refused(place, words):
    """Where nothing stands nothing is changed."""
    with pytest.raises(Refusal, match=words):
        with_value("a: [1, 2]\n", place, 3.0)


def test_revisions_go_on_as_drawing_offices_write_them():
    """Letters and figures both go on."""
    assert [next_revision(one) for one in ("A", "Z", "9")] == ["B", "AA", "10"]
