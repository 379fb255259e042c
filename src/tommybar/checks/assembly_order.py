"""Whether the pieces can be put together and taken apart, and what stays for good."""

from __future__ import annotations

from tommybar.assembly.order import order_of
from tommybar.assembly.placing import Assembly
from tommybar.design.model import SizedDesign
from tommybar.findings import Finding

SOURCE = "straight ways along the joints, piece by piece"


def look(design: SizedDesign, whole: Assembly) -> tuple[Finding, ...]:
    """A stop for what cannot be brought together, a caution for what is shut in, a note for lasting joints."""
    order = order_of(design, whole)
    found = []
    if order.stuck:
        names = _listed([name for name, _ in order.stuck])
        found.append(
            Finding(
                656,
                "stop",
                f"{names} cannot be put together: no straight way along a joint is free for any of them.",
                order.stuck[0][0],
                figure=f"{len(order.stuck)} pieces",
                bound="each piece comes to its place along a free way",
                remedy="Split a collar, screw a shoulder on, or open one side of the hole.",
                source=SOURCE,
            )
        )
    if order.trapped:
        pieces = [piece for group in order.trapped for piece in group]
        names = _listed([name for name, _ in pieces])
        found.append(
            Finding(
                657,
                "caution",
                f"{names}: put together before the lasting joint is made; after it this does not come apart.",
                pieces[0][0],
                figure="shut in",
                bound="comes apart again for care and repair",
                remedy="Put them in before the joint is made, or make that joint with a screw.",
                source=SOURCE,
            )
        )
    found += [
        Finding(
            658,
            "note",
            f"{words[0].upper() + words[1:]}; it does not come apart again without harm.",
            figure=words.rpartition(": ")[2],
            bound="a joint that comes apart",
            remedy="Finish, measure and try everything inside it before this joint is made.",
            source="the joint that the design asks for",
        )
        for words in order.lasting
    ]
    return tuple(found)


def _listed(names: list[str]) -> str:
    many = {name: names.count(name) for name in names}
    plain = [(f"{n} of " if n > 1 else "") + name.replace("_", " ") for name, n in many.items()]
    words = plain[0] if len(plain) == 1 else ", ".join(plain[:-1]) + f" and {plain[-1]}"
    return words[0].upper() + words[1:]
