"""The grip in section, drawn from the dry run: what stands, what is cut now, what holds it.

Colours and hatches are classes of the page, so that the same picture serves
by day, at night and on paper.
"""

from __future__ import annotations

from html import escape

from tommybar.dryrun.runs import CardRun, Ring, StepRun
from tommybar.dryrun.tool_shapes import tool_shape
from tommybar.making.cards import Card, Step
from tommybar.pack.machine.sketch_frame import Frame, frame_of, jaw_front
from tommybar.pack.units import Reader
from tommybar.shop.model import Shop


def grip_sketch(card: Card, run: CardRun, shop: Shop, reader: Reader, step: Step | None = None) -> str:
    """SVG of the grip: before the first step, or with the metal that ``step`` takes."""
    frame = frame_of(run)
    here = _step_run(run, step)
    work = here.after if here else run.before
    cut = here.removed if here else ()
    body = [
        _holders(run, frame),
        _twice(work, frame, "metal"),
        _twice(cut, frame, "cut"),
        _axis(frame),
        _tool(step, shop, frame) if step else "",
        _datum(card, run, frame),
        _sticks_out(run, frame, reader),
    ]
    what = f"{card.part}, {card.hold.device}" + (f": {step.do}" if step else "")
    return (
        f'<svg class="sketch" viewBox="0 0 {frame.width:.0f} {frame.height:.0f}" role="img">'
        f"<title>{escape(what)}</title>{''.join(body)}</svg>"
    )


def _step_run(run: CardRun, step: Step | None) -> StepRun | None:
    return next((one for one in run.steps if step and one.key == step.key), None)


def _twice(rings: tuple[Ring, ...], frame: Frame, kind: str) -> str:
    """Rings above and below the axis, filled and hatched."""
    return "".join(
        f'<path class="{kind}" d="{path}"/><path class="{kind}-hatch" d="{path}"/>'
        f'<path class="{kind}-edge" d="{frame.edge(rings, mirror)}"/>'
        for mirror in (False, True)
        if (path := frame.path(rings, mirror))
    )


def _holders(run: CardRun, frame: Frame) -> str:
    """Jaws, collet or arbor: dark, with the name on the upper one."""
    drawn = "".join(
        f'<path class="jaw" d="{frame.path((frame.inside(ring),), mirror)}"/>'
        for _, ring in run.keep_out
        for mirror in (False, True)
    )
    for name, ring in run.keep_out:
        low = max(min(r for _, r in ring), 0.0)
        wide = (max(z for z, _ in ring) - max(min(z for z, _ in ring), frame.left)) * frame.scale
        high = (min(max(r for _, r in ring), frame.tall) - low) * frame.scale
        if low > 0 and wide > 15 * len(name) + 12 and high > 30:  # words are larger on a small screen
            x = frame.x(max(min(z for z, _ in ring), frame.left)) + 8
            y = frame.y(low) - min(high / 2, 20) + 6
            drawn += f'<text class="jaw-name" x="{x:.1f}" y="{y:.1f}">{escape(name)}</text>'
            break
    return drawn


def _axis(frame: Frame) -> str:
    return f'<path class="axis" d="M0 {frame.axis:.1f}H{frame.width:.1f}"/>'


def _datum(card: Card, run: CardRun, frame: Frame) -> str:
    """A dot inside the datum face A, with its letter."""
    points = [point for ring in run.finished for point in ring]
    if not points or not card.free_end:
        return ""
    face = max(z for z, _ in points) if card.free_end == "A" else min(z for z, _ in points)
    free = card.free_end == "A"
    x = min(max(frame.x(face) + (-9 if free else 9), 12.0), frame.width - 12.0)
    name = frame.x(max(z for ring in run.before for z, _ in ring)) + 14 if free else x + 16
    y = frame.y(-_middle_of_face(run.finished, face))  # below: tools stand above
    return (
        f'<circle class="datum" cx="{x:.1f}" cy="{y:.1f}" r="5.5"/>'
        f'<text class="datum-name" x="{name:.1f}" y="{max(y + 6, frame.axis + 22):.1f}">A</text>'
    )


def _middle_of_face(rings: tuple[Ring, ...], face: float) -> float:
    """The middle of the widest flat at ``face`` [mm from the axis]."""
    flats = [
        (abs(a[1] - b[1]), 0.5 * (a[1] + b[1]))
        for ring in rings
        for a, b in zip(ring, (*ring[1:], ring[0]), strict=True)
        if abs(a[0] - face) < 1e-6 and abs(b[0] - face) < 1e-6
    ]
    return max(flats, default=(0.0, 0.0))[1]


def _sticks_out(run: CardRun, frame: Frame, reader: Reader) -> str:
    """The dimension from the jaws' fronts to the face as it is before the card."""
    front, top = jaw_front(run), max(z for ring in run.before for z, _ in ring)
    a, b, y = frame.x(front), frame.x(top), 2 * frame.axis + 14
    foot = frame.y(-max(r for ring in run.before for _, r in ring)) + 5
    words = f"sticks out {reader.length(top - front, 1)}"
    half = min(7.5 * len(words) + 4, frame.width / 2)  # room for the words on a small screen
    middle = min(max((a + b) / 2, half), frame.width - half)
    heads = f"M{a:.1f} {y:.1f}l9 -4v8zM{b:.1f} {y:.1f}l-9 -4v8z" if b - a > 24 else ""
    return (
        f'<path class="thin" d="M{a:.1f} {foot:.1f}V{y + 6:.1f}M{b:.1f} {foot:.1f}V{y + 6:.1f}'
        f'M{a:.1f} {y:.1f}H{b:.1f}"/><path class="head" d="{heads}"/>'
        f'<text class="dimension" x="{middle:.1f}" y="{y + 30:.1f}">{escape(words)}</text>'
    )


def _tool(step: Step, shop: Shop, frame: Frame) -> str:
    """The tool where its deepest cut ends, and an arrow in the direction of the cut."""
    feeds = [
        (before, move) for before, move in zip(step.moves, step.moves[1:], strict=False) if not move.rapid
    ]
    if not feeds:
        return ""
    if step.tool_kind in ("boring", "recess", "inside groove"):
        before, end = min(feeds, key=lambda pair: (-round(pair[1].r, 3), pair[1].z))
    else:
        before, end = min(feeds, key=lambda pair: (round(pair[1].r, 3), pair[1].z))
    try:
        shape = tool_shape(step, shop)
    except KeyError:
        return ""
    if shape is None:
        return ""
    rings = [tuple((z + end.z, r + end.r) for z, r in piece) for piece in (*shape.body, *shape.cut)]
    drawn = f'<path class="tool" d="{frame.path(rings)}"/>'
    along, at = (end.z - before.z, end.r - before.r), (frame.x(end.z), frame.y(end.r))
    if step.tool_kind in ("knife", "chamfer", "parting", "groove", "threading", "knurling", "form"):
        at = (at[0] + 32, at[1] - (46 if abs(along[0]) > abs(along[1]) else 60))
    else:  # it comes from the right: the arrow stands free there
        at = (frame.width - 40, at[1] - 24)
    return drawn + _arrow(frame, along, at)


def _arrow(frame: Frame, along: tuple[float, float], at: tuple[float, float]) -> str:
    """An arrow beside the tool that points the way it is fed; ``at`` on the picture."""
    length = (along[0] ** 2 + along[1] ** 2) ** 0.5
    if length < 1e-9:
        return ""
    u, v = along[0] / length, -along[1] / length  # on the picture y runs down
    x, y = min(max(at[0], 40), frame.width - 40), min(max(at[1], 32), frame.axis - 8)
    tip, tail = (x + 26 * u, y + 26 * v), (x - 26 * u, y - 26 * v)
    side = (-v * 6, u * 6)
    back = (tip[0] - 13 * u, tip[1] - 13 * v)
    return (
        f'<path class="feed" d="M{tail[0]:.1f} {tail[1]:.1f}L{back[0]:.1f} {back[1]:.1f}"/>'
        f'<path class="feed-head" d="M{tip[0]:.1f} {tip[1]:.1f}L{back[0] + side[0]:.1f} '
        f'{back[1] + side[1]:.1f}L{back[0] - side[0]:.1f} {back[1] - side[1]:.1f}Z"/>'
    )
