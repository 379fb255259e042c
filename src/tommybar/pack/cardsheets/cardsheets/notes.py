"""What is read beside the ladder: the hold, before starting, gaps, drawer, what goes wrong, why."""

from __future__ import annotations

from dataclasses import dataclass

from tommybar.dryrun.runs import CardRun
from tommybar.making.cards import Card
from tommybar.pack.cardsheets.piece import Piece, words_piece
from tommybar.pack.units import Reader


@dataclass(frozen=True)
class Note:
    """A heading and its paragraphs; set to the width of the column that has room for it."""

    head: str
    lines: tuple[str, ...]
    dash: str = "–"

    def within(self, width: float, height: float) -> tuple[Note | None, Note | None]:
        """As many paragraphs as fit a height, and the rest; the rest goes on where there is room."""
        for count in range(len(self.lines), 0, -1):
            part = Note(self.head, self.lines[:count], self.dash)
            if part.piece(width).height <= height:
                left = self.lines[count:]
                return part, Note(self.head, left, self.dash) if left else None
        return None, self

    def piece(self, width: float) -> Piece:
        """The note wrapped to a width."""
        return words_piece(self.lines, width, self.head, dash=self.dash if len(self.lines) > 1 else "")


def hold_words(card: Card, reader: Reader) -> str:
    """How the work is held, in one sentence for the head of the card."""
    hold = card.hold
    device = hold.device if not hold.jaws or hold.jaws in hold.device else f"{hold.device}, {hold.jaws}"
    words = [device]
    if hold.dia > 0:
        words.append(f"on {hold.surface} Ø{reader.length(hold.dia, 2)}")
        if hold.length > 0:
            words.append(f"{reader.length(hold.length, 1)} gripped")
    elif hold.surface:
        words.append(hold.surface)
    if hold.stop:
        words.append(hold.stop)
    return ", ".join(words).replace("_", " ")


def rescue_words(card: Card, reader: Reader) -> str:
    """What to do when a size of this card comes out wrong; a size with a mate is named."""
    for step in card.steps:
        for one in step.measure:
            if one.gives_to and one.dim.smallest is not None and one.dim.largest is not None:
                size = one.size.split(".", 1)[-1].replace("_", " ").replace(".", " ")
                mate = one.gives_to[0].replace(".", " ").replace("_", " ")
                low, high = reader.limits(one.dim.smallest, one.dim.largest)
                return (
                    f"If {size} is under {low} or over {high}: do not scrap it, record {one.size}, plan again; "
                    f"{mate} is made to suit."
                )
    if any(step.measure for step in card.steps):
        return "If a size is out of its limits: stop, write it in, record it, and plan again before going on."
    return "If something goes wrong: stop, write it under Notes, and plan again before going on."


def why_words(card: Card) -> tuple[str, ...]:
    """Why it is held so, and what was looked at and not taken."""
    words = [card.hold.why] if card.hold.why else []
    words += [f"Not {one.holding}: {one.reason}." for one in card.hold.rejected]
    if card.why:
        words.append(card.why)
    return tuple(dict.fromkeys(line.replace("_", " ").replace("..", ".") for line in words))


def notes_of(card: Card, run: CardRun | None, reader: Reader, changed: str = "") -> list[Note]:
    """All notes, most needed first."""
    known = []
    if run is not None and run.smallest_gap >= 0:
        known.append(f"Smallest gap {reader.length(run.smallest_gap, 1)}: {run.gap_where}.")
    if card.machine == "lathe" and card.hold.runout > 0:
        known.append(f"Expect {reader.length(card.hold.runout, 3)} of run-out in this grip.")
    for one in card.runout:
        known.append(
            f"Run-out of {one.of} to {one.to}: expect {reader.length(one.expected, 3)}, "
            f"allowed {reader.length(one.within, 3)}."
        )
    notes = [
        Note("Before starting", card.before_starting),
        Note("Changed", (changed[:1].upper() + changed[1:],) if changed else ()),
        Note("Look out", tuple(known)),
        Note("Drawer", (" · ".join(card.drawer),) if card.drawer else ()),
        Note("What goes wrong", card.goes_wrong),
        Note("Why so", why_words(card)),
    ]
    return [Note(n.head, tuple(line.replace("_", " ") for line in n.lines), n.dash) for n in notes if n.lines]
