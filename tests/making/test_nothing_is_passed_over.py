"""Every feature that a turned part is drawn with is made on a card, or told by a stop; none is passed over."""

from __future__ import annotations

import pytest
from tests.pack.turned.vocabulary import SHAPES

from tommybar.design.model import Part
from tommybar.design.turned import turned_features
from tommybar.making.parts import route_part
from tommybar.shapes.features import TurnedShape


@pytest.mark.parametrize("name", sorted(SHAPES))
def test_each_feature_has_a_step_or_a_stop(shop_r, name):
    """The shapes carry every turned feature between them; what the bar brings and what is held is left as it is."""
    shape = SHAPES[name]
    making = route_part(Part("p", "turned", "mild steel", 1, shape), {}, shop_r)
    made = {step.feature for card in making.cards for step in card.steps}
    told = " ".join(f"{f.feature} {f.words}" for f in making.findings if f.severity == "stop")
    left = {card.hold.surface for card in making.cards} | {land.name for land in shape.outside}
    over = [one for one in turned_features(shape) if one not in made | left and one not in told]

    assert making.cards or told
    assert over == [] or not making.cards


def test_the_shapes_carry_every_list_of_features():
    """A kind of feature that no shape has would not be looked at above."""
    empty = [
        group
        for group in TurnedShape.__dataclass_fields__
        if group not in ("length", "outside") and not any(getattr(shape, group) for shape in SHAPES.values())
    ]

    assert empty == []
