"""The list of troubles, and the laws that hold for every one of them."""

from tommybar.bench.rescue import REALITIES, warnings

from .conftest import stands


def test_the_troubles_are_listed_once_in_order():
    """By their numbers, each with a title and what it asks."""
    numbers = [one.number for one in REALITIES]

    assert numbers == sorted(set(numbers))
    assert numbers[0] >= 1 and numbers[-1] <= 45
    assert all(one.title and one.asks for one in REALITIES)


def test_warnings_carry_the_number_of_their_reality_and_say_what_to_do():
    """751 to 795, each with words and a remedy; nothing of the plan is said twice."""
    found = warnings(stands())
    known = {750 + one.number for one in REALITIES}

    assert found
    assert {one.number for one in found} <= known
    assert all(one.words and one.remedy and one.source for one in found)
    assert len(set(found)) == len(found)
