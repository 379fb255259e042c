"""The search against trying every choice, on small designs made at random."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from random import Random

import pytest

from tommybar.design import Design, design_from_text
from tommybar.refusals import Refusal
from tommybar.resize import price_of, resize
from tommybar.resize.choice import Choice, Domain
from tommybar.resize.scales import Scales
from tommybar.resize.search import _next_best
from tommybar.shop.model import Bar, Reamer, Shop


def random_design(chance: Random) -> Design:
    """A disc on a stud with must-lines that tie scaled and snapped sizes together."""
    disc, hub, bore, hole = (chance.randint(60, 110), chance.randint(26, 34), chance.choice((8, 10, 12)), 10)
    musts = [
        f"(hub - bore) / 2 >= {chance.uniform(3, 0.4 * (hub - bore)):.2f}",
        f"disc - hub >= {chance.uniform(1.5, 3):.2f} * hole",
        f"{chance.uniform(0.9, 1.6):.2f} * bore >= hole - {chance.uniform(1, 4):.2f}",
        f"sqrt(bore * hole) + max(web, {chance.uniform(2, 5):.1f}) >= {chance.uniform(8, 13):.2f}",
        f"round(collar - bore, 0.5) >= {chance.uniform(1, 4):.2f}",
    ]
    kept = []
    for must in chance.sample(musts, 4):
        text = _text(disc, hub, bore, hole, [*kept, must])
        try:
            design_from_text(text)
        except Refusal:
            continue
        kept.append(must)
    return design_from_text(_text(disc, hub, bore, hole, kept))


def _text(disc: int, hub: int, bore: int, hole: int, musts: list[str]) -> str:
    lines = "\n".join(
        f'  - "{must}"'.replace('- "', '- {that: "').replace('"\n', '"}\n') + "}" for must in musts
    )
    return f"""tommybar: 1
design: Random disc
units: mm
sizes:
  disc: {{is: {disc}, follows: scale}}
  hub: {{is: {hub}, follows: scale}}
  web: {{is: 6, follows: scale}}
  bore: {{is: {bore}, follows: reamer}}
  hole: {{is: {hole}, follows: drill}}
  collar: {{is: 16, follows: bar}}
  clamp: {{is: M6, follows: thread}}
must:
{lines or "  []"}
parts:
  disc:
    material: aluminium 6082
    turned:
      length: web + 6
      outside: [{{name: rim, dia: disc}}]
      bores: [{{name: bore, dia: bore, through: true}}]
      holes: [{{name: ease, dia: hole, count: 3, circle: (disc + hub) / 2}}]
  stud:
    material: mild steel
    turned:
      outside:
        - {{name: journal, dia: bore, long: web + 6}}
        - {{name: collar, dia: collar, long: 4}}
        - {{name: thread, thread: clamp, long: 12}}
relations:
  - {{fit: disc.bore, on: stud.journal, limits: H7/f7}}
"""


def random_shop(chance: Random, shop: Shop) -> Shop:
    """The small shop with some reamers, drills and rods taken out."""
    rods = tuple(
        Bar(f"{size} rod", "mild steel", "round", size, 300)
        for size in sorted(chance.sample((8, 10, 12, 14, 16, 20), 4))
    )
    return replace(
        shop,
        reamers=tuple(Reamer(size) for size in sorted(chance.sample((4, 5, 6, 7, 8, 10, 12), 4))),
        drills=tuple(sorted(chance.sample(shop.drills, 12))),
        rack=rods,
        obtainable=(),
    )


def by_trying_all(scales: Scales) -> tuple[float, float] | None:
    """Largest good scale and least cost there, over every combination, rounding as the search may."""
    named = " ".join(text for text, _, _ in scales.design.must())
    scaled = frozenset(
        one.name for one in scales.design.named if one.follows == "scale" and one.name in named
    )
    disc = next(one.value for one in scales.design.named if one.name == "disc")
    for scale in scales.grid(1.0):
        if scale < 1 and disc * scale + 2 + 2 > scales.shop.lathe.swing_cross_slide + 1e-9:
            continue  # the exact disc, its skin of 2 and the daylight of 2
        for widened in (frozenset(), scaled):
            domains = scales.offers.at(scale, widened)
            costs = []
            for picks in product(*(domain.choices for domain in domains.values())):
                values = {name: choice.value for name, choice in zip(domains, picks, strict=True)}
                if any(choice.stop for choice in picks) or any(
                    not one.holds for one in scales.looks.at(values)
                ):
                    continue
                costs.append(sum(choice.cost for choice in picks))
            if costs:
                return scale, min(costs)
    return None


@pytest.mark.parametrize("seed", range(10))
def test_against_every_choice(small_shop, seed):
    """The same scale as by trying everything, and never a dearer choice of sizes."""
    chance = Random(seed)
    design = random_design(chance)
    shop = random_shop(chance, small_shop)
    scales = Scales(design, shop, "ask", {}, ())
    found, _, sure = scales.largest(1.0)
    tried_all = by_trying_all(Scales(design, shop, "ask", {}, ()))

    assert sure
    if tried_all is None:
        assert found is None
        return
    assert found is not None
    assert found.scale == tried_all[0]
    assert sum(one.cost for one in found.picks.values()) <= tried_all[1] + 1e-9


def test_nearest_by_itself_is_not_good_enough(jockey, with_reamers):
    """Taking every size's nearest choice breaks the collar's shoulder; the search does not."""
    scales = Scales(jockey, with_reamers(4, 5, 8), "rack", {}, ())
    domains = scales.offers.at(0.68)
    nearest = {name: domain.ordered[0].value for name, domain in domains.items()}

    assert [one.what for one in scales.looks.at(nearest) if one.kind == "must" and not one.holds] == [
        "(collar - bore) / 2 >= 1.5"
    ]
    assert scales.at(0.68).good


def test_a_must_line_may_send_a_scaled_size_to_the_other_side_of_the_grid(jockey, small_shop):
    """A web of 4.2 is asked: at 0.68 the exact 4.08 goes up to 4.5 where 4.0 would be nearer."""
    text = jockey.file_text.replace("must:", "must:\n  - {that: web >= 4.2, because: it rings}")
    found = resize(design_from_text(text), small_shop, stock="rack")
    web = next(one for one in found.rows if one.name == "web")

    assert found.scale == 0.68
    assert web.new == 4.5
    assert "other side of the grid; 4 mm would break: web >= 4.2" in web.why


def test_the_price_of_a_limit(jockey, small_shop):
    """Both 72 of swing and 70 of stock hold 0.68: taking one away gains nothing, and that is said."""
    rack = resize(jockey, small_shop, stock="rack")
    swing = next(bind for bind in rack.limits if bind.binds and bind.what.startswith("swing"))
    ask = resize(jockey, small_shop, stock="ask")
    alone = next(bind for bind in ask.limits if bind.binds)

    assert price_of(swing, jockey, small_shop, stock="rack").without == 0.68
    assert "would still be 0.68" in price_of(swing, jockey, small_shop, stock="rack").words
    assert alone.what == "swing over the cross-slide"
    assert price_of(alone, jockey, small_shop, stock="ask").without == 0.73
    assert price_of(alone, jockey, small_shop, stock="ask").words.endswith("would be 0.73 instead of 0.68.")


def test_a_limit_that_the_plan_hands_back_is_kept(jockey, small_shop, small):
    """A grip that fails above 0.61 brings the scale to 0.61 and is named as what binds."""
    bind = replace(small.limits[0], what="grip on the hub", part="drum", scale=0.61)
    found = resize(jockey, small_shop, stock="rack", extra=(bind,))

    assert found.scale == 0.61
    assert [one.what for one in found.limits if one.binds] == ["grip on the hub"]


def test_when_nothing_fits_the_fewest_that_clash_are_named(jockey, small_shop):
    """A web of at least 5 asks 0.84; the swing allows 0.68: these two and no more."""
    text = jockey.file_text.replace("must:", "must:\n  - {that: web >= 5, because: it rings}")
    found = resize(design_from_text(text), small_shop, stock="ask")
    conflict = found.findings[0]

    assert (conflict.number, conflict.severity) == (100, "stop")
    assert "web >= 5" in conflict.words and "Swing over the cross-slide of drum" in conflict.words
    assert conflict.words.count(";") == 1
    assert found.scale == 1.0


def test_what_can_be_spared_is_not_named_among_what_clashes(jockey, small_shop):
    """Without M8 the thread stops above 0.78, where the swing stops too: only swing and web are named."""
    text = jockey.file_text.replace("must:", "must:\n  - {that: web >= 5, because: it rings}")
    small_taps = ("M3", "M4", "M5", "M6")
    shop = replace(small_shop, taps=small_taps, dies=small_taps)
    words = resize(design_from_text(text), shop, stock="ask").findings[0].words

    assert "web >= 5" in words and "Swing over the cross-slide of drum" in words
    assert "stud_thread" not in words


def priced(names: str, chance: Random) -> dict[str, Domain]:
    """Sizes with one to four values each, at random prices."""
    return {
        name: Domain(
            name,
            1.0,
            tuple(Choice(float(n), chance.randint(0, 5) / 10, "") for n in range(chance.randint(1, 4))),
        )
        for name in names
    }


@pytest.mark.parametrize("seed", range(60))
def test_sizes_that_no_clash_ties_are_chosen_apart_at_the_same_price(seed):
    """The cheapest of all choices that hold no clash, by trying all of them; none where there is none."""
    chance = Random(seed)
    domains = priced("abcdef", chance)
    clashes = [
        frozenset(
            (name, chance.choice(domains[name].choices).value)
            for name in chance.sample("abcdef", chance.randint(1, 3))
        )
        for _ in range(chance.randint(1, 14))
    ]
    allowed = [
        sum(one.cost for one in picks)
        for picks in product(*(domain.choices for domain in domains.values()))
        if not any(clash <= set(zip(domains, (one.value for one in picks), strict=True)) for clash in clashes)
    ]
    found = _next_best(domains, clashes)

    assert (found is None) == (not allowed)
    if found is not None:
        assert sum(one.cost for one in found.values()) == pytest.approx(min(allowed))
        assert not any(clash <= {(name, one.value) for name, one in found.items()} for clash in clashes)
