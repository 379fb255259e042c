"""A made file as people and the page write it."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, model_validator

from tommybar.design.figures import PositiveLength
from tommybar.design.validation import Entry
from tommybar.refusals import Refusal

KINDS = ("size", "card", "step", "part")


def _text(given: Any) -> Any:
    """A bare number where words are wanted is taken as it stands."""
    return f"{given:g}" if isinstance(given, int | float) and not isinstance(given, bool) else given


Words = Annotated[str, BeforeValidator(_text, json_schema_input_type=str | float)]


class MadeEntry(Entry):
    """One line of the record: a measured size, a card or step done or skipped, or where a part is."""

    size: str | None = None
    is_: Annotated[PositiveLength | None, Field(alias="is")] = None
    with_: Annotated[Words, Field(alias="with")] = ""
    card: str | None = None
    step: str | None = None
    done: bool | None = None
    skipped: Words = ""
    part: str | None = None
    where: Words = ""
    on: Words = ""
    by: Words = ""
    note: Words = ""

    @model_validator(mode="after")
    def _one_thing(self) -> MadeEntry:
        given = [kind for kind in KINDS if getattr(self, kind) is not None]
        if len(given) != 1:
            raise Refusal(
                f"The entry is about {' and '.join(given) or 'nothing'}; it must be about one of"
                f" {', '.join(KINDS)}.",
                "Write one entry for each.",
            )
        if (self.size is not None) != (self.is_ is not None):
            raise Refusal(
                "A measured size has two keys, size and is; one of them is missing.",
                "Write {size: wheel.bore, is: 10.021}.",
            )
        if self.size is not None and "." not in self.size:
            raise Refusal(
                f'"{self.size}" is no size; it must be part.size.', "Write for instance wheel.bore."
            )
        if given[0] in ("card", "step") and self.done is None and not self.skipped:
            raise Refusal(
                f"The {given[0]} is neither done nor skipped.", "Add done: true, or skipped with the reason."
            )
        if self.part is not None and not self.where:
            raise Refusal("The part's whereabouts are missing.", "Add where: in the chuck.")
        return self


class MadeFile(Entry):
    """A whole made file."""

    tommybar: Literal[1]
    of: Words = ""
    units: Literal["mm", "in"] = "mm"
    made: tuple[MadeEntry, ...] = ()
