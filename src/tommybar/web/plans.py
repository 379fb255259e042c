"""Plans for the pages: worked out once for the same inputs, kept, and shown with their progress."""

from __future__ import annotations

import threading
from collections import OrderedDict
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Literal

from tommybar.refusals import Refusal, nearest
from tommybar.web.files import Choices, Files
from tommybar.web.settings import Settings
from tommybar.web.work import StillAtWorkError, Tell, Work, Works

if TYPE_CHECKING:
    from tommybar.design import Design
    from tommybar.planning import Plan
    from tommybar.shop.model import Shop

KINDS: Mapping[str, Literal["length", "angle", "number"]] = {"mm": "length", "deg": "angle", "": "number"}


@dataclass(frozen=True)
class Inputs:
    """Everything that a plan depends on, as text."""

    design: str
    shop: str
    scale: str
    pins: tuple[tuple[str, str], ...]
    stock: Literal["rack", "buy", "ask"]
    words_in: Literal["mm", "in"] = "mm"  # the unit of its sentences


class Plans:
    """Plans by their inputs. Ask :meth:`of` for one."""

    def __init__(self, files: Files, works: Works, settings: Settings) -> None:
        self._files, self._works, self._settings = files, works, settings
        self._kept: OrderedDict[tuple[Inputs, bool], Work] = OrderedDict()
        self._lock = threading.Lock()

    def inputs(self, name: str, words_in: Literal["mm", "in"] = "mm") -> Inputs:
        """What the plan of a design depends on now."""
        choices = self._files.choices(name)
        return Inputs(
            self._files.text("designs", name),
            self.shop_text(choices.shop),
            choices.scale,
            tuple(sorted(choices.pins.items())),
            choices.stock,
            words_in,
        )

    def shop_names(self) -> list[str]:
        """The person's own shops, then the examples."""
        from tommybar.shop.examples import example_shops

        own = self._files.names("shops")
        return own + [one for one in example_shops() if one not in own]

    def shop_text(self, name: str) -> str:
        """The text of a shop of the person's own, or of an example of that name."""
        from tommybar.shop.examples import example_shops

        if self._files.has("shops", name):
            return self._files.text("shops", name)
        examples = example_shops()
        if name not in examples:
            known = self.shop_names()
            raise Refusal(
                f'There is no shop "{name}".', nearest(name, known) or f"There are {', '.join(known)}."
            )
        return examples[name].read_text(encoding="utf-8")

    def of(self, name: str, back: str, words_in: Literal["mm", "in"] = "mm") -> Plan:
        """The plan of a design, its sentences in the reader's unit.

        Raises :class:`StillAtWorkError` when it takes longer than a page waits.
        """
        inputs = self.inputs(name, words_in)
        return self._worked_out((inputs, False), "The plan", back, lambda tell: planned(inputs, tell))

    def with_assembly(self, name: str, back: str, words_in: Literal["mm", "in"] = "mm") -> Plan:
        """The plan with what its placed and moving pieces show, which takes longer than a changed size may."""
        plan, inputs = self.of(name, back, words_in), self.inputs(name, words_in)
        return self._worked_out(
            (inputs, True), "The assembly", back, lambda tell: together(plan, inputs, tell)
        )

    def _worked_out(
        self, key: tuple[Inputs, bool], what: str, back: str, deed: Callable[[Tell], Plan]
    ) -> Plan:
        with self._lock:
            work = self._kept.get(key)
            if work is None or (work.done.is_set() and work.error is not None):
                work = self._works.begin(what, back, deed)
                self._kept[key] = work
            self._kept.move_to_end(key)
            while len(self._kept) > 2 * self._settings.plans_kept:
                self._kept.popitem(last=False)
        if not work.done.wait(self._settings.plan_patience):
            raise StillAtWorkError(work)
        plan: Plan = work.outcome()
        return plan


def planned(inputs: Inputs, tell: Tell) -> Plan:
    """Work the plan out."""
    from tommybar.planning import plan

    tell("reading")
    design, shop = design_of(inputs.design), shop_of(inputs.shop)
    return plan(
        design,
        shop,
        scale=scale_of(inputs.scale),
        pins=pins_of(dict(inputs.pins), design),
        stock=inputs.stock,
        words_in=inputs.words_in,
        tell=tell,
    )


def together(plan: Plan, inputs: Inputs, tell: Tell) -> Plan:
    """Look at the pieces of a plan together."""
    from tommybar.planning import with_assembly

    tell("assembly")
    return with_assembly(plan, inputs.words_in)


@lru_cache(maxsize=16)
def design_of(text: str) -> Design:
    """A design out of its text; the same text is read once."""
    from tommybar.design.loaded import design_from_text

    return design_from_text(text)


@lru_cache(maxsize=16)
def shop_of(text: str) -> Shop:
    """A shop out of its text; the same text is read once."""
    import tempfile
    from pathlib import Path

    from tommybar.shop import load_shop

    with tempfile.TemporaryDirectory(prefix="tommybar-") as folder:
        place = Path(folder) / "shop.yaml"
        place.write_text(text, encoding="utf-8")
        try:
            return load_shop(place)
        except Refusal as refusal:
            from dataclasses import replace

            raise Refusal(replace(one, file="") for one in refusal.complaints) from None


def scale_of(typed: str) -> float | None:
    """A scale as typed; None for an empty field."""
    if not typed.strip():
        return None
    try:
        value = float(typed.replace(",", "."))
    except ValueError:
        raise Refusal(
            f'The scale is "{typed[:40]}"; a plain number is wanted.', "Write 0.76, or leave it empty."
        ) from None
    if not 0.05 <= value <= 20:
        raise Refusal(
            f"The scale is {value:g}; it must lie between 0.05 and 20.", "Write 0.76 for three quarters."
        )
    return value


def pins_of(typed: Mapping[str, str], design: Design) -> dict[str, float | str]:
    """Pins as typed, in house units; sizes the design has no more are left out."""
    from tommybar.design.figures import figure

    known = {one.name: one for one in design.named if not one.expression}
    pins: dict[str, float | str] = {}
    for name, words in typed.items():
        if name in known and words.strip():
            one = known[name]
            pins[name] = (
                words.strip() if isinstance(one.value, str) else figure(words, design.units, KINDS[one.unit])
            )
    return pins


__all__ = ["Choices", "Inputs", "Plans", "design_of", "pins_of", "planned", "scale_of", "shop_of"]
