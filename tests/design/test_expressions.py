"""Expressions: what they come to, and where and why they are refused."""

import pytest

from tommybar.design.expressions import parse
from tommybar.design.figures import figure
from tommybar.design.quantities import ANGLE, LENGTH
from tommybar.design.working import Scope, worker
from tommybar.refusals import Refusal

NAMES = {"hub": LENGTH, "web": LENGTH, "slope": ANGLE, "clamp": "a thread"}
VALUES = {"hub": 20.0, "web": 6.0, "slope": 30.0}


def length(text, unit="mm"):
    """The expression as a length [mm]."""
    return worker(parse(text), Scope.of(unit, NAMES), "length")(VALUES)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("12.5", 12.5),
        ("3/8 in", 9.525),
        ('3/8"', 9.525),
        ("1 3/8 in", 34.925),
        ("1 in", 25.4),
        ("2 * 1/2 in", 25.4),
        ("5 thou", 0.127),
        ("1.5 cm + 2", 17.0),
        ("hub - 2 * web", 8.0),
        ("-web + hub", 14.0),
        ("(hub + web) / 2", 13.0),
        ("hub * web / web", 20.0),
        ("sqrt(hub * hub + 15 mm * 15 mm)", 25.0),
        ("hub * sin(slope)", 10.0),
        ("hub * cos(60)", 10.0),
        ("web * tan(atan(1))", 6.0),
        ("hub * sin(asin(0.5))", 10.0),
        ("min(hub, web, 7)", 6.0),
        ("max(web, 7)", 7.0),
        ("round(6.5)", 7.0),
        ("round(6.74, 0.25)", 6.75),
        ("hub / 3 * 3", 20.0),
        (" + ".join(["(1)"] * 30), 30.0),
    ],
)
def test_value_in_a_millimetre_file(text, value):
    """Arithmetic, fractions, units and functions come to the figure worked out by hand."""
    assert length(text) == pytest.approx(value, abs=1e-12)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("2", 50.8),
        ("hub + 1", 45.4),
        ("0.5 mm", 0.5),
        ("2 * hub", 40.0),
        ("round(2.4)", 50.8),
        ("max(web, 1)", 25.4),
    ],
)
def test_bare_figures_of_an_inch_file_are_inches_beside_lengths_only(text, value):
    """A bare figure is an inch when it is a length, and a plain number when it is a factor."""
    assert length(text, "in") == pytest.approx(value, abs=1e-12)


@pytest.mark.parametrize(
    ("text", "column", "said"),
    [
        ("", 1, "The expression is empty."),
        ("hub +", 6, "breaks off"),
        ("hub hub", 5, "follows without a sign"),
        ("2 hub", 3, "is no unit"),
        ("2 3", 3, "Two figures stand side by side"),
        ("0,5", 2, "Write decimals with a point"),
        ("(hub", 1, "not closed"),
        ("hub)", 4, "closes nothing"),
        ("hubb * 2", 1, 'Did you mean "hub"?'),
        ("sinn(30)", 1, 'Did you mean "sin"?'),
        ("open(1)", 1, "There is no function"),
        ("hub.real", 4, "A point stands here"),
        ("hub ** 2", 5, "Powers are not read"),
        ("9^9", 2, "Powers are not read"),
        ("9**9**9**9", 2, "Powers are not read"),
        ("hub - - web", 7, "Two signs"),
        ("hub / 3/8 in", 7, "can be read two ways"),
        ('1-3/8"', 1, "could be a difference or a mixed number"),
        ("3/0 in", 1, "divides by nought"),
        ("1e400", 1, "not a finite figure"),
        ("hub * web", 1, "This is length x length; a length is wanted here."),
        ("hub / web", 1, "This is a plain number; a length is wanted here."),
        ("hub + slope", 5, "A length and an angle cannot be added."),
        ("max(hub, slope)", 1, "cannot be compared"),
        ("hub + hub / web", 5, "A length and a plain number cannot be added."),
        ("sin(hub)", 1, "sin wants an angle; this is a length."),
        ("sqrt(hub)", 1, "The square root of a length has no meaning."),
        ("hub * web + 3", 13, "A figure without unit stands beside length x length."),
        ("2 * clamp", 5, 'The size "clamp" is a thread'),
        ("min()", 5, "stands where a figure should"),
        ("round(1, 2, 3)", 1, "round takes 1 to 2 figures; it has 3."),
        ("hub # 2", 5, 'The character "#" is not read.'),
        ("(" * 26 + "1" + ")" * 26, 26, "Brackets are nested 26 deep; at most 25."),
        ("1" + " + 1" * 60, 1, "The expression has 241 characters; at most 200."),
    ],
)
def test_refused_at_its_column(text, column, said):
    """Each slip is refused where it stands, with what was meant to stand there."""
    with pytest.raises(Refusal) as refused:
        length(text)

    assert said in str(refused.value)
    assert refused.value.complaints[0].column == column


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("hub * hub / (web - 6)", "divides by nought"),
        ("hub * sqrt(3 - 4)", "square root of -1"),
        ("hub * sin(asin(2))", "asin of 2"),
        ("round(hub, 0)", "step of rounding is 0"),
        ("hub * 1e300 * 1e300", "not a finite figure"),
    ],
)
def test_refused_when_worked_out(text, said):
    """What only the figures show is refused then."""
    with pytest.raises(Refusal) as refused:
        length(text)

    assert said in str(refused.value)


def test_figures_of_every_kind():
    """Speeds, angles, powers and counts are read in their own units."""
    assert figure("8 rev/s", kind="speed") == 480
    assert figure(480, kind="speed") == 480
    assert figure("0.37 kW", kind="power") == 370
    assert figure("12.5 deg", kind="angle") == 12.5
    assert figure("5", kind="count") == 5
    with pytest.raises(Refusal, match=r"The count is 2.5; it must be a whole number"):
        figure("2.5", kind="count")
    with pytest.raises(Refusal, match="A figure is wanted here; this is true or false"):
        figure(True)
