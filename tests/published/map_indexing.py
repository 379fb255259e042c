"""From the words of a row of indexing.csv to a call of public functions."""

from __future__ import annotations

import re
from fractions import Fraction

from tommybar.facts.dividing import degrees_a_turn, index_angle, index_divisions, plain_indexings, plate_set
from tommybar.facts.gears import cut_pitch, gear_set, gear_trains, lead_of, ratio_error, train_for

from .frame import Computed, Row, Unmapped

LEFT_OUT: dict[str, str] = {}

_PLATES = {"P3": "three plates", "P2": "two-sided plate"}
_DIVISIONS = re.compile(r"^(\d+):1 (\d+) divisions with (P\d)$")
_HEAD = re.compile(r"^(\d+):1(?: table| head)?, (.+)$")
_TRAIN = re.compile(r"^(.+) leadscrew: drivers ([\dx]+) driven ([\dx]+) for (.+)$")
_ONE_PAIR = re.compile(r"^(.+) leadscrew with (\d+) driving (\d+)$")
_COMPOUND = re.compile(r"^compound (\d+)/(\d+) x (\d+)/(\d+) on (.+) leadscrew")
_WHEELS = re.compile(r"^leadscrew (.+), cutting (.+): ratio and gears$")
_NEAREST = re.compile(r"^(.+) on a (.+) leadscrew: nearest listed pitch$")


def expected_call(row: Row) -> Computed:
    """What the program computes for this row."""
    if row.group == "plates":
        return _plate_row(row)
    if row.group.startswith("plain indexing") or row.group.startswith("worked examples"):
        return _head_row(row)
    if row.group == "change gears":
        return _gear_row(row)
    if row.group == "127 approximations":
        return _approximation(row)
    raise Unmapped(row.group)


def _plate_row(row: Row) -> Computed:
    name = next((_PLATES[word] for word in re.findall(r"P\d", row.item)), "three plates")
    plates = plate_set(name)
    if row.item.startswith("circles in"):
        return tuple(float(circle) for plate in plates for circle in plate)
    ratio = int(re.findall(r"(\d+):1", row.item)[0])
    if "divides every number from 2 to" in row.item:
        number = 2
        while plain_indexings(number, ratio, plates):
            number += 1
        return float(number - 1)
    if match := re.search(r"(odd |even |)numbers (\d+)\.\.(\d+) .*does (not )?reach", row.item):
        wanted = {"odd ": (1,), "even ": (0,), "": (0, 1)}[match[1]]
        numbers = [n for n in range(int(match[2]), int(match[3]) + 1) if n % 2 in wanted]
        return tuple(float(n) for n in numbers if bool(plain_indexings(n, ratio, plates)) != bool(match[4]))
    raise Unmapped(row.item)


def _head_row(row: Row) -> Computed:
    if match := _DIVISIONS.match(row.item):
        plates = plate_set(_PLATES[match[3]])
        best = index_divisions(int(match[2]), int(match[1]), plates)
        return best.words if best.exact else "not possible by plain indexing"
    match = _HEAD.match(row.item)
    if not match:
        raise Unmapped(row.item)
    ratio, rest = int(match[1]), match[2]
    plates = plate_set("three plates")
    if rest in ("one crank turn", "one handwheel turn"):
        turn = degrees_a_turn(ratio)
        return turn * 60 if row.unit == "arc minute" else turn
    if found := re.match(r"^(\w+) holes? on (?:the )?(\d+)", rest):
        holes = 1 if found[1] == "one" else int(found[1])
        angle = degrees_a_turn(ratio) * holes / int(found[2])
        return angle * 60 if row.unit == "arc minute" else angle
    if found := re.match(r"^(\d+) divisions$", rest):
        ways = plain_indexings(int(found[1]), ratio, plates)
        return _as_written(row, {way.plate: way.holes for way in ways}, ways[0].turns)
    degrees = _angle(rest)
    near = index_angle(degrees, ratio, plates)
    if not near.exact:
        missing = 360 / ratio / degrees
        return f"{near.holes} hole on {missing:g} (no such circle; {near.holes} on {near.plate} used)"
    every = {
        way.plate: way.holes
        for circle in {circle for plate in plates for circle in plate}
        if (way := index_angle(degrees, ratio, ((circle,),))).exact
    }
    return _as_written(row, every, near.turns)


def _as_written(row: Row, ways: dict[int, int], turns: int) -> str:
    """The printed words, if each of the circles they name is among ours; otherwise our own."""
    named = [(int(holes), int(plate)) for holes, plate in re.findall(r"(\d+)(?: holes)? on (\d+)", row.value)]
    printed_turns = re.match(r"^(\d+) turn", row.value)
    same_turns = (int(printed_turns[1]) if printed_turns else 0) == turns
    if same_turns and not named and not any(ways.values()):
        return row.value
    if named and same_turns and all(ways.get(plate) == holes for holes, plate in named):
        return row.value
    return f"{turns} turns + " + " or ".join(f"{holes} on {plate}" for plate, holes in ways.items())


def _angle(words: str) -> float:
    if words == "one degree":
        return 1.0
    if match := re.match(r"^angle (\d+) arc minutes$", words):
        return int(match[1]) / 60
    if match := re.match(r"^([\d.]+) degrees$", words):
        return float(match[1])
    raise Unmapped(words)


def _gear_row(row: Row) -> Computed:
    if match := _TRAIN.match(row.item):
        drivers, driven = ([int(teeth) for teeth in match[index].split("x")] for index in (2, 3))
        train = train_for(drivers, driven, lead_of(match[1]), lead_of(match[4]))
        return train.pitch, train.error_ppm
    if match := _ONE_PAIR.match(row.item):
        return _in_unit(row, cut_pitch(lead_of(match[1]), [int(match[2])], [int(match[3])]))
    if match := _COMPOUND.match(row.item):
        # the book turns the pairs over: threads to the inch are multiplied, not the pitch
        return _in_unit(
            row, cut_pitch(lead_of(match[5]), [int(match[2]), int(match[4])], [int(match[1]), int(match[3])])
        )
    if match := _WHEELS.match(row.item):
        found = gear_trains(lead_of(match[2]), lead_of(match[1]), gear_set("with 127"), most=20)
        pairs = [
            (train.drivers[0], train.driven[0])
            for train in found
            if len(train.drivers) == 1 and not train.error_ppm
        ]
        printed = re.findall(r"(\d+) driver / (\d+) driven", row.value)
        mine = (int(printed[0][0]), int(printed[0][1])) if printed else (0, 0)
        return row.value if mine in pairs else str(pairs)
    if match := _NEAREST.match(row.item):
        best = gear_trains(lead_of(match[1].replace(" tpi", "tpi")), lead_of(match[2]), gear_set("with 63"))[
            0
        ]
        return best.pitch
    raise Unmapped(row.item)


def _in_unit(row: Row, pitch: float) -> float:
    return 25.4 / pitch if row.unit == "tpi" else pitch


def _approximation(row: Row) -> Computed:
    if match := re.match(r"^(\d+)/(\d+) in place of (\d+)/(\d+)$", row.item):
        numbers = [int(text) for text in match.groups()]
        return ratio_error(Fraction(numbers[0], numbers[1]), Fraction(numbers[2], numbers[3]))
    if match := re.match(r"^(\d+) used for (\d+)/(\d+)", row.item):
        return ratio_error(Fraction(int(match[1])), Fraction(int(match[2]), int(match[3])))
    raise Unmapped(row.item)
