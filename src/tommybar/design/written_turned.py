"""A turned part as it stands in a design file. z runs from face A, lands from A to B."""

from __future__ import annotations

from pydantic import Field

from tommybar.design.formula import SizeFormula
from tommybar.design.validation import Entry
from tommybar.design.written_across import (
    WrittenBoreKeyway,
    WrittenCircle,
    WrittenCross,
    WrittenCrossSlot,
    WrittenEngraving,
    WrittenFlats,
    WrittenHeadSlot,
    WrittenKeyway,
    WrittenSlit,
)
from tommybar.design.written_inside import (
    WrittenBore,
    WrittenBoreGroove,
    WrittenBoreTaper,
    WrittenCentre,
    WrittenCup,
    WrittenFaceGroove,
    WrittenRecess,
)
from tommybar.design.written_lands import WrittenGroove, WrittenLand


class WrittenTurned(Entry):
    """A part turned about one axis."""

    length: SizeFormula | None = Field(None, description="Over all; may be left out when every land has long")
    outside: tuple[WrittenLand, ...] = Field(min_length=1)
    grooves: tuple[WrittenGroove, ...] = ()
    bores: tuple[WrittenBore, ...] = ()
    tapers: tuple[WrittenBoreTaper, ...] = ()
    bore_grooves: tuple[WrittenBoreGroove, ...] = ()
    cups: tuple[WrittenCup, ...] = ()
    centres: tuple[WrittenCentre, ...] = ()
    recesses: tuple[WrittenRecess, ...] = ()
    face_grooves: tuple[WrittenFaceGroove, ...] = ()
    holes: tuple[WrittenCircle, ...] = ()
    cross_holes: tuple[WrittenCross, ...] = ()
    flats: tuple[WrittenFlats, ...] = ()
    head_slots: tuple[WrittenHeadSlot, ...] = ()
    cross_slots: tuple[WrittenCrossSlot, ...] = ()
    keyways: tuple[WrittenKeyway, ...] = ()
    bore_keyways: tuple[WrittenBoreKeyway, ...] = ()
    slits: tuple[WrittenSlit, ...] = ()
    engravings: tuple[WrittenEngraving, ...] = ()


FEATURE_LISTS = tuple(key for key in WrittenTurned.model_fields if key != "length")
"""Keys of a turned part that hold lists of named features."""
