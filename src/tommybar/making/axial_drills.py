"""Centre drill and drills on the axis, with their points, pecks and tailstock readings."""

from __future__ import annotations

import math

from tommybar.facts.drills import point_length
from tommybar.making.bench import Bench, cutting_minutes
from tommybar.making.cards import Move, Step
from tommybar.making.cuts import feed_for
from tommybar.making.dials import graduation_words, travel_words
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.rigidity import drilling_feed_held

CENTRE_DEEP = 1.3  # of its pilot: just into the cone
START = 2.0  # feed of a drill starts this far from the face [mm]


def depth_words(bench: Bench, depth: float, dia: float, point: float) -> tuple[str, ...]:
    tail = bench.shop.lathe.tailstock
    peck = depth / dia > rule("cut", "peck")
    words = [
        f"Tip touching the face is 0. Tip to {Mm(depth + point):.1f}: {travel_words(tail, depth + point)} "
        f"({graduation_words(tail)}).",
    ]
    if peck:
        each = f"{Mm(dia):.0f}" if dia >= 2.0 else f"{Mm(dia):.1f}"
        words.append(f"Deeper than {rule('cut', 'peck'):g} diameters: clear the chips every {each}.")
    return tuple(words)


def axial_moves(depth: float) -> list[Move]:
    return [Move(20.0, 0.0), Move(START, 0.0, rapid=True), Move(-depth, 0.0), Move(20.0, 0.0, rapid=True)]


def centre(bench: Bench, feature: str, first: float, depth: float) -> None:
    """Start the axis with a centre drill no larger than the first drill and no deeper than the hole."""
    if any(step.tool_kind == "centre drill" for step in bench.steps):
        return
    fitting = [d for d in bench.shop.centre_drills if d <= first + 1e-6 and CENTRE_DEEP * d <= depth + 1e-6]
    if not fitting:
        owned = ", ".join(f"{d:g}" for d in bench.shop.centre_drills) or "none"
        bench.find(
            413,
            "caution",
            f"No centre drill suits a first drill of {first:g} mm: start it from a turned dimple.",
            feature=feature,
            figure=f"{first:g} mm, {depth:.1f} mm deep",
            bound=f"pilots owned: {owned}",
            remedy="Turn a dimple with the corner of a knife, or buy a centre drill no larger than the hole.",
        )
        return
    size = min(fitting, key=lambda d: (abs(d - 2.5), d))
    speed = bench.speed(None, "centre drilling", size, feature)
    deep = round(CENTRE_DEEP * size, 2)
    bench.add(
        Step(
            0,
            f"Centre drill, {Mm(size):tool} pilot",
            feature,
            f"centre drill {Mm(size):tool}",
            "centre drill",
            speed.rpm,
            speed.reached,
            0.03,
            f"{deep:.1f}",
            "deep mm",
            ("Just into the cone; it only has to start the drill.",),
            minutes=cutting_minutes(axial_moves(deep), speed.rpm, 0.03, 1),
            why="A short stiff drill starts on the axis; a long one wanders.",
            moves=tuple(axial_moves(deep)),
            tool_size=size,
        )
    )


def drill_through_sizes(
    bench: Bench, feature: str, drills: tuple[float, ...], depth: float, *, blind_flat: bool
) -> None:
    already = bench.bored.get(feature, 0.0)
    if drills:
        centre(bench, feature, drills[0], depth)
    for n, drill in enumerate(drills):
        if drill <= already:
            continue
        point = point_length(drill)
        full = depth - (point if blind_flat else 0.0)
        if full <= 0:  # a pocket no deeper than the tip: what makes its floor makes all of it
            continue
        speed = bench.speed(None, "drilling", drill, feature)
        feed = feed_for(bench.part.material, "HSS", "drilling", "roughing", drill)
        opened = max((d for d in drills[:n]), default=already)
        held = drilling_feed_held(bench, drill, opened, speed, feed, feature)
        feed = held.feed
        moves = axial_moves(full + point)
        cautions: tuple[str, ...] = (held.bound,) if held.bound else ()
        if bench.part.material.endswith("brass"):
            cautions = (
                *cautions,
                "Brass grabs: stone the drill's lips to no rake, lock what can be locked.",
            )
        bench.add(
            Step(
                0,
                f"Drill {feature} {Mm(drill):tool}" + (", pilot" if n == 0 and len(drills) > 1 else ""),
                feature,
                f"drill {Mm(drill):tool}",
                "drill",
                speed.rpm,
                speed.reached,
                feed,
                f"{full + point:.1f}",
                "tip deep mm",
                (
                    f"Full diameter to {Mm(full):.1f} deep, the point {Mm(point):.1f} more.",
                    *depth_words(bench, full, drill, point),
                    *(("Under 1 mm: fed by hand, by feel, drawn out often.",) if feed == 0 else ()),
                ),
                minutes=cutting_minutes(moves, speed.rpm, feed, max(1, math.ceil(full / drill / 3))),
                cautions=cautions,
                moves=tuple(moves),
                tool_size=drill,
            )
        )
    if drills:
        bench.bored[feature] = max(drills[-1], already)
