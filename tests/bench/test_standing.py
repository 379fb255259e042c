"""What entries come to: order, undo, last word, conflicts."""

import pytest

from tommybar.bench.entries import entry_from, new_entry
from tommybar.bench.journal import receive
from tommybar.bench.made_file import entries_from_made, made_of, made_text
from tommybar.bench.standing import conflicts_of, in_order, settled, standing
from tommybar.made import load_made
from tommybar.refusals import Refusal

from .conftest import Hand


def test_an_undo_takes_an_entry_out_and_nothing_is_deleted(after, hand):
    """The reading is out of the standing, and in the journal with the undo beside it."""
    reading = hand("size", "wheel.bore", value=10.5)
    build = after(reading, undo := hand("undo", reading.id, reason="misread"))

    stand = standing(build.entries)

    assert stand.sizes == {}
    assert stand.undone == {reading.id: undo}
    assert len(build.entries) == 2
    assert made_of(build).measured == ()


def test_an_undo_can_be_undone(hand):
    """The undo of an undo brings the entry back; a third takes it out again."""
    tick = hand("tick", "wheel/1/1")
    one = hand("undo", tick.id)
    two = hand("undo", one.id)
    three = hand("undo", two.id)

    assert "wheel/1/1" not in standing([tick, one]).ticks
    assert "wheel/1/1" in standing([tick, one, two]).ticks
    assert "wheel/1/1" not in standing([three, two, one, tick]).ticks


def test_undoing_the_last_reading_brings_the_one_before_back(hand):
    """Readings are kept, so the one before counts again."""
    first, second = hand("size", "wheel.bore", value=10.01), hand("size", "wheel.bore", value=10.9)

    stand = standing([first, second, hand("undo", second.id)])

    assert stand.sizes["wheel.bore"].said["value"] == 10.01


def test_undos_that_name_each_other_come_to_an_end(hand):
    """Two undos in a ring are answered, and the same whichever comes first."""
    one, two = (hand("undo", "00000000-0000-4000-8000-00000000000" + n) for n in "12")
    ring = [
        entry_from({**one.as_dict(), "id": two.key, "key": one.key}),
        entry_from({**two.as_dict(), "id": one.key, "key": two.key}),
    ]

    assert set(standing(ring).undone) == set(standing(ring[::-1]).undone)


def test_a_devices_own_order_counts_even_when_its_clock_is_set_back(hand):
    """The third entry, dated before the first, still comes third."""
    entries = [
        new_entry("note", words=words, device="phone", number=number, at=f"2026-05-02T{hour}:00:00+00:00")
        for words, number, hour in (("a", 1, 18), ("b", 2, 19), ("c", 3, 17))
    ]

    assert [one.said["words"] for one in in_order(entries[::-1])] == ["a", "b", "c"]


def test_two_devices_that_measure_differently_are_a_conflict():
    """Both readings are shown with device and person; the later one counts until it is settled."""
    tablet, phone = Hand("tablet", "R"), Hand("phone", "S", minute=5)
    one = tablet("size", "wheel.bore", value=10.012, instrument="plug")
    two = phone("size", "wheel.bore", value=10.02)

    (conflict,) = conflicts_of([two, one])

    assert (conflict.kind, conflict.key, conflict.entries) == ("size", "wheel.bore", (one, two))
    assert conflict.words == (
        "wheel.bore is told differently: tablet (R): 10.012 mm, plug; phone (S): 10.020 mm."
    )
    assert standing([one, two]).sizes["wheel.bore"] == two


def test_equal_readings_and_other_pieces_are_no_conflict():
    """The same figure twice is agreement; the second bush is another piece."""
    tablet, phone = Hand("tablet"), Hand("phone")
    same = [one("size", "wheel.bore", value=10.012) for one in (tablet, phone)]
    pieces = [
        tablet("size", "bush.body", value=12.02, copy=1),
        phone("size", "bush.body", value=12.025, copy=2),
    ]

    assert conflicts_of([*same, *pieces]) == ()


def test_a_reading_that_replaces_another_knowingly_is_no_conflict():
    """Who measures again with the first reading before their eyes says so, and that is that."""
    first = Hand("tablet")("size", "wheel.bore", value=10.012)
    second = Hand("phone", minute=9)("size", "wheel.bore", value=10.02, instead_of=[first.id])

    assert conflicts_of([first, second]) == ()
    assert standing([first, second]).sizes["wheel.bore"] == second


def test_a_step_done_here_and_skipped_there_is_a_conflict(hand):
    """It is shown with the reason; on one device the later word simply counts."""
    skipped = Hand("phone", "S")("skip", "wheel/1/10", reason="no cutter")

    (conflict,) = conflicts_of([hand("tick", "wheel/1/10"), skipped])

    assert "tablet (R): done" in conflict.words
    assert "phone (S): skipped, no cutter" in conflict.words
    assert conflicts_of([hand("tick", "a/1/1"), hand("skip", "a/1/1", reason="x")]) == ()


def test_settling_a_conflict_takes_the_others_out(hand):
    """After the undo entries one reading is left and there is no conflict any more."""
    other = Hand("phone")("size", "wheel.bore", value=10.02)
    entries = [mine := hand("size", "wheel.bore", value=10.012), other]
    (conflict,) = conflicts_of(entries)

    entries += settled(conflict, mine.id, device="tablet", number=9)

    assert conflicts_of(entries) == ()
    assert standing(entries).sizes["wheel.bore"] == mine


def test_a_build_saved_as_a_made_file_reads_back_the_same(after, hand, tmp_path, folder):
    """Sizes, ticks, skips with reasons and places of parts survive; a further build can begin from it."""
    build = after(
        hand("tick", "wheel/1/1"),
        hand("skip", "wheel/1/10", reason='no "long" cutter: broken, sorry'),
        hand("tick", "shaft/1"),
        hand("size", "wheel.bore", value=10.0125, instrument="plug 0.01"),
        hand("pause", "wheel", where="in the chuck", mark="jaw 2", zeros="re-touch", hot="glue"),
    )
    place = tmp_path / "made.yaml"
    place.write_text(made_text(build), encoding="utf-8")

    made = load_made(place)

    assert made == made_of(build)
    assert made.whereabouts[0].where == "in the chuck, mark at jaw 2, zeros re-touch, hot or curing: glue"
    begun = entries_from_made(place, made.design)
    assert [(one.kind, one.key) for one in begun] == [
        ("tick", "wheel/1/1"),
        ("skip", "wheel/1/10"),
        ("tick", "shaft/1"),
        ("size", "wheel.bore"),
        ("pause", "wheel"),
    ]
    assert begun == entries_from_made(place, made.design)
    with pytest.raises(Refusal, match="records a making of"):
        entries_from_made(place, "Another")


def test_an_empty_build_is_an_empty_made_file(build, tmp_path):
    """The file of a build without entries can be read."""
    place = tmp_path / "made.yaml"
    place.write_text(made_text(build), encoding="utf-8")

    assert load_made(place) == made_of(build)


GOOD = {
    "id": "5f0c2d1e-0000-4000-8000-000000000001",
    "device": "tablet",
    "number": 1,
    "kind": "size",
    "key": "wheel.bore",
    "at": "2026-05-02T18:00:00Z",
    "by": "R",
    "said": {"value": 10.01},
}


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({"id": "7"}, "no id of an entry"),
        ({"id": None}, "no id of an entry"),
        ({"kind": "ticks"}, 'Did you mean "tick"'),
        ({"key": ""}, "key of the entry is missing"),
        ({"key": "bore"}, "must be part.size"),
        ({"device": ""}, "device of the entry is missing"),
        ({"number": -1}, "whole number from 0"),
        ({"number": True}, "whole number from 0"),
        ({"at": "yesterday"}, "is no time"),
        ({"by": "x" * 81}, "up to 80"),
        ({"by": "a\0"}, "cannot be kept"),
        ({"said": []}, "no group of keys"),
        ({"said": {}}, "does not say its value"),
        ({"said": {"value": float("nan")}}, "finite figure"),
        ({"said": {"value": -3.0}}, "above 0"),
        ({"said": {"value": 1e9}}, "up to 100 m"),
        ({"said": {"value": "10"}}, "finite figure"),
        ({"said": {"value": 10.0, "with": "plug"}}, "does not say"),
        ({"said": {"value": 10.0, "instead_of": "x"}}, "list of ids"),
        ({"colour": "red"}, 'no key "colour"'),
        ({"kind": "skip", "key": "wheel/1/1", "said": {}}, "does not say its reason"),
        ({"kind": "undo", "key": GOOD["id"], "said": {}}, "undoes itself"),
        ({"kind": "resume", "key": "wheel", "said": {"as_left": "yes"}}, "yes or no"),
        ({"kind": "note", "key": "", "said": {"words": "x" * 4001}}, "up to 4000"),
    ],
)
def test_a_faulty_entry_is_refused_with_words(folder, build, changed, words):
    """Nothing faulty gets into a journal, and the words say what is wrong."""
    with pytest.raises(Refusal, match=words):
        entry_from({**GOOD, **changed})
    receipt = receive(folder, build.id, [{**GOOD, **changed}])
    assert (receipt.stored, len(receipt.refused)) == ((), 1)


def test_a_time_is_kept_in_one_form():
    """A clock in another zone is turned to UTC."""
    assert entry_from({**GOOD, "at": "2026-05-02T20:00:00+02:00"}) == entry_from(GOOD)


def test_each_piece_of_several_alike_keeps_its_reading(after, hand):
    """Two bushes, two readings: neither takes the other's place, in the record and in its file."""
    build = after(
        hand("size", "bush.bore", value=8.020),
        hand("size", "bush.bore", value=8.006, copy=2),
    )

    made = made_of(build)

    assert [(one.value, one.piece) for one in made.pieces("bush.bore")] == [(8.020, 1), (8.006, 2)]
    assert "piece 2" in made_text(build)


def test_pieces_come_back_from_the_file_of_a_build(after, hand, tmp_path):
    """What was ticked and measured on the second piece is read in again as of the second piece."""
    build = after(
        hand("tick", "bush/1/1"),
        hand("tick", "bush/1/1", copy=2),
        hand("size", "bush.bore", value=8.006, copy=2),
    )
    place = tmp_path / "made.yaml"
    place.write_text(made_text(build), encoding="utf-8")

    back = entries_from_made(place)

    assert sorted((one.kind, one.said.get("copy", 1)) for one in back) == [
        ("size", 2),
        ("tick", 1),
        ("tick", 2),
    ]
