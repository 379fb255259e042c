"""Laws of the journal: neither doubles nor disorder nor a detour change what entries come to."""

from hypothesis import given, settings
from hypothesis import strategies as st

from tommybar.bench.entries import Entry, entry_from
from tommybar.bench.made_file import made_from
from tommybar.bench.standing import in_order, standing

KEYS = ("wheel/1/1", "wheel/1/2", "shaft/1")
SIZES = ("wheel.bore", "shaft.seat")


def an_id(number):
    """The id of the entry of that number."""
    return f"00000000-0000-4000-8000-{number:012d}"


@st.composite
def journals(draw):
    """Entries of up to three devices with clocks that may jump, some undoing others."""
    entries = []
    for device in draw(st.lists(st.sampled_from(["tablet", "phone", "bench"]), min_size=1, unique=True)):
        for number in range(1, draw(st.integers(0, 7)) + 1):
            kind = draw(st.sampled_from(["tick", "skip", "size", "undo", "note"]))
            said = {"skip": {"reason": "x"}, "note": {"words": "w"}}.get(kind, {})
            if kind == "size":
                key, said = draw(st.sampled_from(SIZES)), {"value": draw(st.sampled_from([10.0, 10.01]))}
            elif kind == "undo":
                key = an_id(draw(st.integers(0, 20)))
            else:
                key = "" if kind == "note" else draw(st.sampled_from(KEYS))
            at = f"2026-05-02T{draw(st.integers(10, 20))}:00:00.000+00:00"
            one = Entry(an_id(len(entries)), device, number, kind, key, at, "R", said)
            if key != one.id:
                entries.append(one)
    return entries


@settings(max_examples=150, deadline=None)
@given(journals(), st.randoms(use_true_random=False))
def test_doubles_and_disorder_change_nothing(entries, chance):
    """Sent twice and in any order, a queue comes to the same standing."""
    sent = entries + [one for one in entries if chance.random() < 0.4]
    chance.shuffle(sent)

    assert standing(sent) == standing(entries)


@settings(max_examples=100, deadline=None)
@given(journals())
def test_each_device_keeps_its_own_order(entries):
    """Merged with others, the entries of a device stand in the order of its count."""
    for device in {one.device for one in entries}:
        numbers = [one.number for one in in_order(entries) if one.device == device]
        assert numbers == sorted(numbers)


@settings(max_examples=100, deadline=None)
@given(journals())
def test_everything_is_either_standing_or_undone(entries):
    """No entry vanishes: it stands, or the undo that took it out is named and itself stands."""
    stand = standing(entries)
    there = {one.id for one in stand.ordered} | set(stand.undone)
    undos = {one.id for one in entries if one.kind == "undo"}

    assert {one.id for one in entries} - undos <= there
    assert all(undo.id not in stand.undone for undo in stand.undone.values())


@settings(max_examples=100, deadline=None)
@given(journals())
def test_undoing_the_last_entry_goes_back_to_where_one_was(entries):
    """An entry and its undo together leave the record of the making as it was without them."""
    last = Entry(
        an_id(99), "tablet", 98, "size", "wheel.bore", "2026-05-03T10:00:00.000+00:00", "", {"value": 9.0}
    )
    undo = Entry(an_id(98), "tablet", 99, "undo", last.id, "2026-05-03T10:01:00.000+00:00", "", {})

    assert made_from(standing([*entries, last, undo])) == made_from(standing(entries))


@settings(max_examples=60, deadline=None)
@given(journals())
def test_an_entry_survives_the_way_over_the_network(entries):
    """As plain data and back it is the same entry."""
    assert [entry_from(one.as_dict()) for one in entries] == entries
