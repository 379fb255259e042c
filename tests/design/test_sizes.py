"""Named sizes: free ones, worked-out ones, their bounds and the must-lines."""

import json

import pytest

from tommybar.design import design_from_text, design_schema

TEXT = """tommybar: 1
design: A disc
units: UNITS
sizes:
SIZES
must: [MUST]
parts:
  disc: {material: mild steel, turned: {outside: [{name: rim, dia: rim, long: 10}]}}
"""


@pytest.fixture
def sized():
    """A design with the lines of sizes and the must-line given."""

    def build(*sizes, must="", units="mm"):
        lines = "\n".join(f"  {line}" for line in ("rim: {is: 40, follows: scale, drives: true}", *sizes))
        text = TEXT.replace("SIZES", lines).replace("MUST", must).replace("UNITS", units)
        return design_from_text(text, "d.yaml")

    return build


def test_worked_out_sizes_follow_the_free_ones(sized):
    """Whatever is chosen, expressions are worked out from it, in any order of the file."""
    design = sized(
        "web: hub / 2",
        "hub: {is: 12, follows: bar}",
        "slope: {is: 30 deg, follows: nothing}",
        "run: hub * sin(slope)",
    )

    assert design.evaluate() == {"rim": 40, "web": 6, "hub": 12, "slope": 30, "run": 6}
    assert design.evaluate({"hub": 20.0})["web"] == 10
    assert [(one.name, one.unit, one.expression) for one in design.named] == [
        ("rim", "mm", False),
        ("web", "mm", True),
        ("hub", "mm", False),
        ("slope", "deg", False),
        ("run", "mm", True),
    ]


def test_threads_and_counts_are_sizes_too(sized):
    """A thread is text; a plain number has no unit."""
    design = sized("clamp: {is: M4, follows: thread}", "holes: {is: 5, follows: nothing, kind: number}")

    assert design.evaluate({"clamp": "M3"}) == {"rim": 40, "clamp": "M3", "holes": 5}


def test_a_thread_counts_as_its_major_diameter(sized):
    """ISO 261: M4 is 4 mm, M6 is 6 mm over its crests; what leans on a thread follows when it is chosen."""
    design = sized("clamp: {is: M4, follows: thread}", "hole: clamp + 0.5", must="{that: rim >= 2 * clamp}")

    assert design.evaluate()["hole"] == 4.5
    assert design.evaluate({"clamp": "M6"})["hole"] == 6.5
    assert design.must({"clamp": "M6"})[0][2] == 28


def test_a_thread_is_chosen_by_its_designation(sized, refused):
    """A figure is no thread, and a thread must stand in the tables."""
    design = sized("clamp: {is: M4, follows: thread}")

    assert 'The size "clamp" follows thread; 5.0 is a figure.' in refused(design.evaluate, {"clamp": 5.0})
    assert 'There is no thread "M61"' in refused(design.evaluate, {"clamp": "M61"})


def test_an_inch_file_is_in_inches(sized):
    """Figures of an inch file are turned to mm, those with a unit are as they say."""
    design = sized(
        "hub: {is: 1/2 in, follows: bar, between: [0.25, 2]}",
        "gap: {is: 0.5 mm, follows: nothing}",
        units="in",
    )

    assert design.evaluate() == {"rim": 1016, "hub": 12.7, "gap": 0.5}
    assert design.named[1].between == (6.35, 50.8)


def test_slack_of_a_must_line(sized):
    """What is left over the bound, and what is missing when it is broken [mm]."""
    design = sized(
        "hub: {is: 12, follows: bar}", must="{that: (rim - hub) / 2 >= 10, because: grip}, {that: hub <= 14}"
    )

    assert design.must() == (("(rim - hub) / 2 >= 10", "grip", 4.0), ("hub <= 14", "", 2.0))
    assert design.must({"hub": 24.0})[0][2] == -2.0


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        (["hub: 12"], "The size is 12 and follows nothing that is named."),
        (["hub: {is: rim / 2, follows: scale}"], 'follows scale but is worked out from "rim"'),
        (["hub: {is: 12, follows: bar, between: [14, 20]}"], "The size is 12; between allows 14 to 20 mm."),
        (["hub: {is: 12, follows: bar, between: [4, 10]}"], "The size is 12; between allows 4 to 10 mm."),
        (["hub: {is: M4, follows: bar}"], '"M4" is no figure. A thread follows thread'),
        (["hub: {is: M61, follows: thread}"], 'There is no thread "M61"'),
        (["hub: {is: 12, follows: barr}"], 'Did you mean "bar"?'),
        (["sin: {is: 12, follows: bar}"], '"sin" is taken by a function or a unit.'),
        (["in: {is: 12, follows: bar}"], '"in" is taken by a function or a unit.'),
        (["a: a + 1"], "in a circle: a -> a."),
        (["a: b", "b: c", "c: a", "d: a + 2"], "in a circle: a -> b -> c -> a."),
        (["a: b", "b: a", "c: d", "d: c"], "in a circle: c -> d -> c."),
        (["a: rim / 0"], "divides by nought"),
        (["a: rim * rim"], "This is length x length; a size is a length, an angle or a number."),
    ],
)
def test_wrong_sizes_are_refused(sized, refused, lines, said):
    """Each slip among the sizes is refused at its place."""
    words = refused(sized, *lines)

    assert said in words
    assert words.startswith("d.yaml:")


@pytest.mark.parametrize(
    ("must", "said"),
    [
        ("{that: rim >= 41, because: grip}", "rim >= 41 is broken by 1 mm as drawn (grip)."),
        ("{that: rim = 41}", "The comparison has =; it must have one >= or <=."),
        ("{that: rim}", "The comparison has no sign"),
        ("{that: rim >= hubb}", 'd.yaml:6:22: must.0.that: No size is named "hubb".'),
    ],
)
def test_wrong_must_lines_are_refused(sized, refused, must, said):
    """A must-line is one comparison, and holds as drawn."""
    assert said in refused(sized, must=must)


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({"hub": 4.0}, 'The size "hub" is worked out and cannot be chosen. Choose rim instead.'),
        ({"rimm": 4.0}, 'No size is named "rimm". Did you mean "rim"?'),
        ({"rim": float("nan")}, 'The size "rim" is nan; it must be a finite figure.'),
        ({"rim": "M4"}, 'The size "rim" is M4; it must be a finite figure.'),
    ],
)
def test_wrong_choices_are_refused(sized, refused, values, said):
    """Only free sizes can be chosen, by finite figures."""
    assert said in refused(sized("hub: rim / 2").evaluate, values)


def test_a_long_chain_of_sizes_is_worked_out(sized):
    """Two thousand sizes that lean on each other are no matter, nor is their circle."""
    chain = [f"s{n}: s{n + 1} + 1 mm" for n in range(2000)]

    assert sized(*chain, "s2000: {is: 1, follows: scale}").evaluate()["s0"] == 2001


def test_the_schema_names_every_key_of_a_size():
    """Editors are given the keys, the classes and what is required."""
    schema = design_schema()

    assert json.loads(json.dumps(schema)) == schema
    assert set(schema["required"]) == {"tommybar", "design", "units", "parts"}
    assert {"is", "follows", "drives", "between", "because"} <= set(
        schema["$defs"]["WrittenSize"]["properties"]
    )
