"""What plan and resize print: a table for a person, and JSON with the keys that scripts rely on."""

import json
import re
from pathlib import Path

import pytest

from tommybar.cli.inputs import pins_from
from tommybar.cli.main import status_of
from tommybar.design import design_from_text

ROOT = Path(__file__).parents[2]
DESIGN = str(ROOT / "examples" / "demonstrator" / "design.yaml")
UNITS = ("mm", "mm3", "g", "rpm", "m_min", "mm_rev", "min", "deg")
# figures without a unit, or in the unit that stands beside them
PLAIN = {
    "scale",
    "at_scale",
    "rounds",
    "number",
    "of",
    "count",
    "copy",
    "n",
    "card",
    "step",
    "value",
    "old",
    "exact",
    "new",
}


@pytest.mark.parametrize("command", ["plan", "resize"])
def test_the_words_come_in_the_unit_that_is_asked_for(command, capsys):
    """In inches when asked, or when the shop's own file is in inches; in mm when that is asked there."""

    def said(shop, *more):
        status_of([command, DESIGN, "--shop", shop, *more])
        return capsys.readouterr().out

    assert re.search(r"bound by .*: 2\.835 in, at most 2\.834 in", said("small-bench", "--units", "in"))
    assert re.search(r"bound by .*: 72 mm, at most 72 mm", said("small-bench"))
    assert re.search(r"\d\.\d+ in\b", said("inch-bench"))
    assert not re.search(r"\d mm\b(?! \()", said("inch-bench"))
    assert not re.search(r"\d\.\d{3,} in\b", said("inch-bench", "--units", "mm"))


def test_a_unit_that_is_none_is_refused(capsys):
    """Feet are not among them."""
    assert status_of(["plan", DESIGN, "--shop", "shop-r", "--units", "ft"]) == 1
    assert "they are mm or in" in capsys.readouterr().err


@pytest.fixture(scope="module")
def planned():
    """The plan of the demonstrator in shop R as a script reads it."""
    import contextlib
    import io

    out = io.StringIO()
    with contextlib.redirect_stdout(out):
        code = status_of(["plan", DESIGN, "--shop", "shop-r", "--json"])
    return code, json.loads(out.getvalue())


def test_the_keys_that_scripts_rely_on(planned):
    """plan --json has the keys that are promised."""
    code, plan = planned

    assert code == 0
    assert {"plan_id", "scale", "sizes", "binds", "stock", "parts", "findings"} <= set(plan)
    assert {"old", "exact", "new", "unit", "follows", "why"} <= set(plan["sizes"]["wheel_dia"])
    assert {"blanks", "cuts", "buy"} <= set(plan["stock"])
    wheel = plan["parts"]["wheel"]
    assert wheel["mass_g"] > 0
    card = wheel["cards"][0]
    assert {"hold", "sticks_out_mm", "steps", "runout", "findings"} <= set(card)
    assert {"do", "tool", "speed_rpm", "feed_mm_rev", "passes", "dial"} <= set(card["steps"][0])
    for finding in plan["findings"]:
        assert {
            "number", "severity", "words", "part", "feature", "card", "step", "figure", "bound", "remedy", "source",
        } <= set(finding)  # fmt: skip


def test_every_figure_has_its_unit_in_its_key(planned):
    """A number stands under a key that ends in its unit, or is a count, a scale or beside its unit."""
    bare = set()

    def walk(node, key=""):
        if isinstance(node, dict):
            for name, one in node.items():
                walk(one, name)
        elif isinstance(node, list):
            for one in node:
                walk(one, key)
        elif (
            type(node) in (int, float) and key not in PLAIN and not re.search(rf"_({'|'.join(UNITS)})$", key)
        ):
            bare.add(key)

    walk(planned[1])

    assert bare == set()


def test_the_metal_is_all_there(planned):
    """Of each turned part: metal removed, parted off and left add up to the blank, to 1e-6."""
    turned = {name: one["dry_run"] for name, one in planned[1]["parts"].items() if "dry_run" in one}

    assert set(turned) == {"wheel", "shaft", "bush", "crank", "handle"}
    for run in turned.values():
        assert run["removed_mm3"] + run["parted_off_mm3"] + run["left_mm3"] == pytest.approx(
            run["blank_mm3"], rel=1e-6
        )


def test_the_same_input_gives_the_same_plan(planned, capsys):
    """To the byte, on the next day as well."""
    status_of(["plan", DESIGN, "--shop", str(ROOT / "examples" / "shops" / "shop-r.yaml"), "--json"])

    assert json.loads(capsys.readouterr().out) == planned[1]


def test_the_table_names_scale_parts_and_minutes(capsys):
    """A person sees the scale, what binds, each part with its cards, and the findings by severity."""
    assert status_of(["plan", DESIGN, "--shop", "shop-r"]) == 0
    out = capsys.readouterr().out

    assert re.search(r"plan [0-9a-f]{8} +scale 1\.00", out)
    assert re.search(r"(?m)^wheel +1 +round 92 x [0-9.]+, mild steel +\d+ +\d+ +\d+\.\d$", out)
    assert "ISO 4762 M5 x " in out
    assert "Stops" not in out


def test_a_smaller_shop_names_what_binds(capsys):
    """The swing of the small bench decides the scale; the table says so for every size."""
    status_of(["resize", DESIGN, "--shop", "small-bench"])
    out = capsys.readouterr().out

    assert "bound by swing over the cross-slide of wheel" in out
    assert re.search(r"(?m)^wheel_dia +90 ", out)
    assert re.search(r"(?m)^grip_dia +12 +12 +12 .*fingers do not scale", out)


def test_a_stop_ends_with_2_and_json_is_whole(tmp_path, capsys):
    """Without reamers the bore has no tool: the plan is printed all the same, and the status says stop."""
    text = (ROOT / "examples" / "shops" / "shop-r.yaml").read_text()
    shop = tmp_path / "poor.yaml"
    shop.write_text(re.sub(r"(?m)^reamers:.*\n(?:[ -].*\n)*", "reamers: []\n", text))

    code = status_of(["plan", DESIGN, "--shop", str(shop), "--scale", "1", "--json"])
    plan = json.loads(capsys.readouterr().out)

    assert code == (2 if any(one["severity"] == "stop" for one in plan["findings"]) else 0)
    assert plan["scale"] == 1
    assert [one for one in plan["findings"] if "ream" in f"{one['words']} {one['remedy']}"]


def test_a_pin_holds_a_size(capsys):
    """A pinned size is taken as it is, in the unit it is given in."""
    status_of(["resize", DESIGN, "--shop", "shop-r", "--pin", "boss=1 in", "--pin", "grub=M5", "--json"])
    sizes = json.loads(capsys.readouterr().out)["sizes"]

    assert (sizes["boss"]["new"], sizes["grub"]["new"]) == (25.4, "M5")


def test_a_wheel_too_large_for_the_lathe_ends_with_2(capsys):
    """At twice its size the wheel of 180 mm is asked of a lathe that swings 110 over the cross-slide."""
    assert status_of(["plan", DESIGN, "--shop", "shop-r", "--scale", "2"]) == 2
    assert re.search(r"(?m)^Stops \(\d+\):$", capsys.readouterr().out)


def test_pins_are_read_by_what_the_size_is():
    """A length in the unit of the file or its own, an angle in degrees, a number bare, a thread by its name."""
    sizes = "a: {is: 2, follows: scale}, b: {is: 5 deg, follows: nothing}, c: {is: M4, follows: thread}"
    text = (
        f"tommybar: 1\ndesign: x\nunits: in\nsizes: {{{sizes}, n: {{is: 3, follows: nothing, kind: number}}}}\n"
        "parts: {p: {material: brass, turned: {outside: [{name: o, dia: a, long: a}]}}}\n"
    )

    pins = pins_from(["a=1", "b = 7 deg", "c=M5", "n=4"], design_from_text(text))

    assert pins == {"a": 25.4, "b": 7, "c": "M5", "n": 4}
