"""How a piece leaves its stub: parted off, or sawn off out of the lathe."""

from __future__ import annotations

from tommybar.making.bench import Bench, cutting_minutes, named
from tommybar.making.cards import Move, Step
from tommybar.making.cuts import feed_for
from tommybar.making.lengths import Mm
from tommybar.making.practice import rule
from tommybar.making.rigidity import plunging_feed_held


def part_off(bench: Bench) -> None:
    """Part off behind the finished piece, leaving a little for facing."""
    rest = rule("blank", "part_rest")
    z = -(bench.length + rest)
    dia = bench.work.largest(z + 0.01, z - 2.0)
    hole = max((bench.bored.get(b.name, 0.0) for b in bench.shape.bores if b.through), default=0.0)
    tool = bench.tool("parting", lambda t: t.reach >= (dia - hole) / 2, lambda t: t.width, "the parting cut")
    if tool is None:
        return
    speed = bench.speed(tool, "parting", dia, "parting")
    feed = feed_for(bench.part.material, tool.material, "parting", "roughing")
    held = plunging_feed_held(bench, tool.width, dia, speed, feed, "the parting cut")
    feed = held.feed
    end = hole / 2 - 0.5 if hole > 0 else -rule("cut", "over_centre")
    moves = [Move(z, dia / 2 + 2.0), Move(z, end), Move(z, dia / 2 + 2.0, rapid=True)]
    catch = (
        ("Catch it on a rod in the tailstock chuck; hands off.",)
        if hole > 0
        else ("Hands off; let it fall on a rag.",)
    )
    bench.add(
        Step(
            0,
            "Part off, carriage locked",
            "parting",
            named(tool),
            "parting",
            speed.rpm,
            speed.reached,
            feed,
            f"{-z:.2f}",
            "Z mm",
            (
                f"Right corner of the {Mm(tool.width):tool} blade at Z {Mm(-z):.2f}; leaves {Mm(rest):g} for facing.",
            ),
            minutes=cutting_minutes(moves, speed.rpm, feed, 1),
            why="Last of all, close to the jaws, after every bore and edge that can be reached.",
            cautions=(
                "Tailstock away. Blade square and on centre, oil, steady feed.",
                *catch,
                *((held.bound,) if held.bound else ()),
            ),
            moves=tuple(moves),
            tool_size=tool.width,
            tool_letter=tool.letter,
        )
    )
    bench.work = bench.work.ended(z)


def saw_off(bench: Bench) -> None:
    """Saw the piece from its stub, leaving metal for facing; no blade reaches the middle."""
    rest = rule("blank", "saw_rest")
    z = -(bench.length + rest)
    dia = bench.work.largest(z + 0.01, z - 2.0)
    kerf = bench.shop.saw_kerf
    moves = [Move(z, dia / 2 + 2.0), Move(z, -0.5), Move(z, dia / 2 + 2.0, rapid=True)]
    bench.add(
        Step(
            0,
            "Take it out and saw it from its stub",
            "sawing",
            "saw",
            "parting",
            0.0,
            0.0,
            0.0,
            f"{-z:.1f}",
            "mm from the face",
            (f"Saw {Mm(-z):.1f} from the finished face, on the waste side; leaves {Mm(rest):g} for facing.",),
            minutes=6.0,
            why="The parting blade does not reach the middle of this diameter.",
            cautions=("Out of the chuck, in the bench vice between soft clams.",),
            moves=tuple(moves),
            tool_size=kerf,
        )
    )
    bench.work = bench.work.ended(z)
