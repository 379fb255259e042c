"""What stands on every page: design, revision, plan, scale of the design, shop, and the reader's unit."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

from tommybar.pack.units import Reader
from tommybar.refusals import Refusal, nearest

PaperName = Literal["A4", "A3", "Letter", "Tabloid"]
Angle = Literal["first", "third"]


@dataclass(frozen=True)
class Imprint:
    """The same words for every sheet of one pack."""

    title: str
    revision: str
    plan_id: str
    scale: float  # of the design against its drawing
    shop: str
    reader: Reader
    paper: PaperName = "A4"
    angle: Angle = "first"  # first-angle or third-angle projection

    def __post_init__(self) -> None:
        for what, word, known in (
            ("paper", self.paper, get_args(PaperName)),
            ("angle of projection", self.angle, get_args(Angle)),
        ):
            if word not in known:
                raise Refusal(f'The {what} is "{word}"; it must be {", ".join(known)}.', nearest(word, known))

    @property
    def scale_words(self) -> str:
        """The scale of the design, e.g. "0.76 of the design"."""
        return "as designed" if abs(self.scale - 1.0) < 5e-5 else f"{self.scale:.4g} × the design"

    @property
    def line(self) -> str:
        """One line for the head of a page."""
        words = [
            f"rev {self.revision}" if self.revision else "",
            f"plan {self.plan_id}",
            self.scale_words,
            self.shop,
        ]
        return " · ".join(word for word in words if word)
