"""A small plan written by hand, its lathe cards run on geometry: a spindle and a plate with two holes."""

from __future__ import annotations

from tommybar.design.model import Part, SizedDesign
from tommybar.dryrun import run_part
from tommybar.made.record import Made
from tommybar.making.cards import Blank, Card, Hold, HolePlace, Measure, Move, Pass, Step
from tommybar.nest.cutlist import CutList
from tommybar.planning import PartPlan, Plan
from tommybar.shapes.features import Cylinder, Dim, PlateHole, PlateShape, TurnedShape
from tommybar.shop import example_shops, load_shop

JOURNAL = Dim(8.0, "spindle.journal", "f7", 7.972, 7.987)
SEAT = Dim(10.0, "spindle.seat", "h7", 9.985, 10.0)


def way(*places: tuple[float, float] | tuple[float, float, str]) -> tuple[Move, ...]:
    """Moves from (z, r) or (z, r, "rapid")."""
    return tuple(Move(place[0], place[1], len(place) == 3) for place in places)


def turned(near: float, far: float, *radii: float) -> tuple[Move, ...]:
    """Cuts along the axis to each radius."""
    moves: list[tuple[float, float] | tuple[float, float, str]] = [(near, 9.0)]
    for radius in radii:
        moves += [(near, radius, "rapid"), (far, radius), (far, 9.0), (near, 9.0, "rapid")]
    return way(*moves)


def spindle_cards(name: str) -> tuple[Card, ...]:
    """One grip: face, turn the journal, drill, and a seat turned beyond."""
    hold = Hold("three-jaw, inside jaws", "inside jaws", "blank", 12.0, 20.0, 31.0, 0.08, "all in one grip")
    face = Step(
        1,
        "Face A clean",
        "face_a",
        "A: knife, right hand",
        "knife",
        950,
        36,
        0.1,
        "1.00",
        "Z mm",
        ("Touch Z on the sawn face, set 0; take off 1.00 in two cuts.",),
        (),
        1.0,
        "the datum face",
        moves=way((2.0, 8.0), (0.0, 8.0, "rapid"), (0.0, -0.3), (1.0, -0.3), (1.0, 8.0, "rapid")),
        tool_letter="A",
        key=f"{name}/1/1",
    )
    journal = Step(
        2,
        "Turn journal, last two cuts",
        "journal",
        "B: knife, right hand",
        "knife",
        950,
        36,
        0.05,
        "7.98",
        "DIA mm",
        (
            "Touch on 12.00 DIA, set the cross-slide to 0; last cut 1 turn + 0.5 div in (RAD dial, 0.02 a div).",
            "Stop at Z 14.00 from the face.",
            "Slack is 8 div: go back a full turn, then come up from the same side.",
        ),
        (
            Pass(10.5, 1.5, "37.5 div"),
            Pass(9.0, 1.5, "75 div"),
            Pass(8.2, 0.8, "95 div"),
            Pass(8.09, 0.11, "97.5 div", last=True),
            Pass(7.98, 0.11, "1 turn + 0.5 div", last=True),
        ),
        6.5,
        "the bearing runs here",
        ("Spindle stopped before measuring.",),
        (Measure("spindle.journal", JOURNAL, "micrometer 0-25", ("bush.bore",)),),
        turned(1.5, -14.0, 5.25, 4.5, 4.1, 4.045, 3.99),
        tool_letter="B",
        key=f"{name}/1/2",
    )
    seat = Step(
        3,
        "Turn the seat",
        "seat",
        "B: knife, right hand",
        "knife",
        950,
        36,
        0.05,
        "9.993",
        "DIA mm",
        ("Last cut 50 div in.",),
        (Pass(9.993, 2.0, "50 div"),),
        4.0,
        "",
        (),
        (
            Measure("spindle.seat", SEAT, "micrometer 0-25", ("wheel.bore",)),
            Measure("spindle.length", Dim(24.0, "spindle.length"), "caliper 150"),
        ),
        turned(-12.0, -24.0, 4.9965),
        tool_letter="B",
        key=f"{name}/1/3",
    )
    drill = Step(
        4,
        "Drill for M4",
        "hole",
        "drill 3.3",
        "drill",
        1500,
        15.6,
        0.0,
        "14.0",
        "deep mm",
        ("Tailstock: 7 turns + 12 div with the point, from where it marks.",),
        (),
        3.0,
        "",
        (),
        (),
        way((3.0, 0.0), (-14.0, 0.0), (3.0, 0.0, "rapid")),
        3.3,
        "",
        f"{name}/1/4",
    )
    return (
        Card(
            name, 1, 1, "lathe", "journal and seat in one grip", "A", hold, (face, journal, seat, drill),
            ("Key out of the chuck; turn one full revolution by hand.", "Seat the bar against the stop."),
            ("A knife", "B knife", "centre drill", "drill 3.3"),
            minutes=15.0, after="saw it off at 26 and bag it",
            goes_wrong=("The shoulder has a radius and the bush does not seat.",),
        ),
    )  # fmt: skip


def plate_cards() -> tuple[Card, ...]:
    """One mill card with two holes to visit."""
    hold = Hold(
        "vice on parallels", "", "edges", 0.0, 0.0, 0.0, 0.0, "square to the fixed jaw", "left end stop"
    )
    spot = Step(
        1, "Spot and drill both holes", "holes", "drill 5.5", "drill", 1200, 20.7, 0.0, "11.6", "deep mm",
        ("Quill: 11.6 with the point.",), key="plate/1/1",
    )  # fmt: skip
    places = (
        HolePlace(1, 7.0, 8.0, "3 turns + 50 div", "4 turns", "5.5 through", "left"),
        HolePlace(2, 23.0, 8.0, "11 turns + 50 div", "4 turns", "5.5 through", "left"),
    )
    return (
        Card(
            "plate", 1, 1, "mill", "two holes in the foot", "", hold, (spot,), ("Vice square.",), ("drill 5.5",),
            places, ("hole 1 to hole 2: 16.00",), 8.0,
        ),
    )  # fmt: skip


def handmade_plan(
    title: str = "Trial spindle", part: str = "spindle", count: int = 1, made: Made | None = None
) -> Plan:
    """The plan; the part's name and the title can be given."""
    shop = load_shop(example_shops()["shop-r"])
    shape = TurnedShape(
        Dim(24.0, "spindle.length"),
        (Cylinder("journal", JOURNAL, 0.0, 14.0), Cylinder("seat", SEAT, 14.0, 24.0)),
    )
    spindle = Part(part, "turned", "silver steel", count, shape)
    plate = Part(
        "plate", "plate", "mild steel", 1,
        PlateShape(Dim(30.0), Dim(16.0), Dim(10.0), holes=(PlateHole("foot", "front", 7.0, 8.0, Dim(5.5)),)),
    )  # fmt: skip
    blank = Blank(part, "silver steel", "round", 12.0, 0.0, 51.0, 24.0, (("face first end", 1.0),))
    cards = spindle_cards(part)
    return Plan(
        plan_id="7c1e00aa",
        version="0.1.0",
        title=title,
        revision="A",
        scale=0.76,
        sizes=(),
        binds=(),
        second=None,
        design=SizedDesign(
            title, "A", "mm", (), (spindle, plate), cautions=("Guard the wheel at 240 rev/min.",)
        ),
        shop=shop,
        made=made or Made("trial"),
        parts=(
            PartPlan(spindle, blank, cards, run_part(spindle, blank, cards, shop), 9.0),
            PartPlan(plate, None, plate_cards(), None, 38.0, "foot holes moved to suit the base as measured"),
        ),
        stock=CutList((), ()),
        figures=(),
        findings=(),
        rounds=1,
    )
