"""Realities 10, 15, 16 and 17: threads that cannot be cut, that break out, whose tap breaks, that stay shallow."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tommybar.bench.places import place_of
from tommybar.bench.rescue.shop_edits import without_thread_tool
from tommybar.bench.rescue.situation import Mishap, Reality, Situation, Try, beware, foreseen
from tommybar.bench.splice import with_key, with_value
from tommybar.design.model import Part
from tommybar.design.yaml_file import Place, yaml_from_text
from tommybar.facts.gears.search import gear_trains
from tommybar.facts.threads import thread
from tommybar.findings import Finding
from tommybar.refusals import Refusal, nearest
from tommybar.shapes.blind_holes import LEAD
from tommybar.shapes.features import Cylinder, PlateHole, PlateShape, TurnedShape

DEEP = 2.0  # a thread deeper than so many diameters breaks taps; common practice, no source
PLUGGING = 30.0  # a hole plugged, or a broken tap got out [min]; common practice, no source


def _outside_threads(situation: Situation) -> Iterator[tuple[str, str]]:
    for part in situation.plan.design.parts:
        if isinstance(part.shape, TurnedShape):
            for one in part.shape.outside:
                if isinstance(one, Cylinder) and one.thread:
                    yield f"{part.name}.{one.name}", one.thread


def _tapped(situation: Situation) -> Iterator[tuple[str, str, float, Part]]:
    """Tapped holes: size, thread, depth or 0 for through, part."""
    for part in situation.plan.design.parts:
        shape = part.shape
        if isinstance(shape, TurnedShape):
            for bore in shape.bores:
                if bore.thread:
                    yield f"{part.name}.{bore.name}", bore.thread, 0.0 if bore.through else bore.depth, part
            for circle in shape.circle_holes:
                if circle.thread:
                    yield f"{part.name}.{circle.name}", circle.thread, 0.0, part
            for cross in shape.cross_holes:
                if cross.thread:
                    yield f"{part.name}.{cross.name}", cross.thread, 0.0, part
        elif isinstance(shape, PlateShape):
            for one in shape.holes:
                if one.thread:
                    yield f"{part.name}.{one.name}", one.thread, one.depth or 0.0, part


def warn_of_leads(situation: Situation) -> Iterator[Finding]:
    """Outside threads without a die, and how true the lead screw and wheels would cut them."""
    lathe, dies = situation.plan.shop.lathe, situation.plan.shop.dies
    owned = {thread(one).designation for one in dies}
    for size, designation in _outside_threads(situation):
        pitch = thread(designation).pitch
        if designation in owned or lathe.leadscrew_pitch <= 0:
            continue
        trains = (
            gear_trains(
                Fraction(pitch).limit_denominator(100000),
                Fraction(lathe.leadscrew_pitch).limit_denominator(100000),
                lathe.change_gears,
                most=1,
            )
            if lathe.change_gears
            else ()
        )
        if trains and abs(trains[0].error_ppm) < 0.5:
            continue
        figure = f"{trains[0].error_ppm:+.0f} ppm" if trains else "no train within 0.5 %"
        yield beware(
            10,
            f"{designation} of {size} has no die, and the wheels do not cut its pitch of {pitch:g} mm truly: {figure}.",
            about=size,
            figure=figure,
            bound="exact",
            remedy="Get the die, or take the nearest thread that there is one for.",
            source="lead rule over every train of the shop's wheels",
        )


def _named_thread(situation: Situation, size: str) -> tuple[str, str]:
    """The thread of a feature, and the named size that it is; empty when it stands there itself."""
    known = {**dict(_outside_threads(situation)), **{name: one for name, one, _, _ in _tapped(situation)}}
    name = size if size in known else next((one for one in known if one.rsplit("_", 1)[0] == size), "")
    if not name:
        raise Refusal(
            f'There is no thread "{size}".', nearest(size, known) or f"There are {', '.join(known)}."
        )
    place = _feature_place(situation.inputs.design_text, size)
    data = yaml_from_text(situation.inputs.design_text).data
    given = data
    for step in place:
        given = given[step]
    written = str(given.get("thread", ""))
    return known[name], written if written in data.get("sizes", {}) else ""


def _feature_place(text: str, size: str) -> Place:
    part, _, feature = size.partition(".")
    given = yaml_from_text(text).data["parts"].get(part, {})
    for kind in ("turned", "plate"):
        for group, ones in given.get(kind, {}).items():
            if isinstance(ones, list):
                for index, one in enumerate(ones):
                    if one["name"] in (feature, feature.rsplit("_", 1)[0]):
                        return ("parts", part, kind, group, index)
    raise Refusal(f'The design has no feature "{size}".', "See the cards for its name.")


def _other_threads(situation: Situation, designation: str, smaller: bool) -> list[str]:
    """Threads with both tap and die in the shop, the nearest stress area first."""
    shop, area = situation.plan.shop, thread(designation).stress_area
    both = {thread(one).designation for one in shop.taps} & {thread(one).designation for one in shop.dies}
    rest = [one for one in both if one != designation and not (smaller and thread(one).stress_area > area)]
    return sorted(rest, key=lambda one: (abs(thread(one).stress_area - area), one))


def _changed_thread(situation: Situation, size: str, named: str, other: str) -> dict[str, object]:
    if named:
        return {"pins": {named: other}}
    place = (*_feature_place(situation.inputs.design_text, size), "thread")
    return {"design": with_value(situation.inputs.design_text, place, other)}


def tries_other_thread(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """Cut it in the lathe without die or tap; or the nearest thread that can be cut."""
    designation, named = _named_thread(situation, mishap.about)
    shop = without_thread_tool(situation.inputs.shop_text, designation)
    yield Try(
        f"Cut {designation} in the lathe, without die or tap.",
        shop=shop,
        pins={named: designation} if named else {},
    )
    for other in _other_threads(situation, designation, smaller=False)[:2]:
        area, old = thread(other).stress_area, thread(designation).stress_area
        words = f"Take {other} in place of {designation}: {100 * area / old:.0f} % of its strength."
        yield Try(words, shop=shop, **_changed_thread(situation, mishap.about, named, other))  # type: ignore[arg-type]


def warn_of_breaking_out(situation: Situation) -> list[Finding]:
    """What the checks of walls round threads say."""
    return foreseen(15, situation.plan, (616, 617, 620, 621, 622, 623, 624, 625))


def tries_after_breaking_out(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """A smaller thread; the hole turned or moved to fresh metal, the old one plugged."""
    designation, named = _named_thread(situation, mishap.about)
    part = mishap.about.split(".")[0]
    for other in _other_threads(situation, designation, smaller=True)[:1]:
        yield Try(
            f"Plug the hole and tap {other} in its place, wherever {named or designation} stands.",
            keep=(part,),
            by_hand=PLUGGING,
            **_changed_thread(situation, mishap.about, named, other),  # type: ignore[arg-type]
        )
    yield from _turned_on(situation, mishap)


def _turned_on(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """The pattern turned on its circle by half a pitch, or a cross hole by 90 degrees."""
    text = situation.inputs.design_text
    place = _feature_place(text, mishap.about)
    part, _, feature = mishap.about.partition(".")
    shape = situation.plan.design.part(part).shape
    if not isinstance(shape, TurnedShape):
        return
    for circle in shape.circle_holes:
        if circle.name == feature:
            turn = 180.0 / circle.count
            yield Try(
                f"Turn the {feature} pattern of {part} on by {turn:g} deg, to fresh metal.",
                design=with_key(text, place, "first", f"{circle.start_angle + turn:g} deg"),
                keep=(part,),
                by_hand=PLUGGING,
            )
    for cross in shape.cross_holes:
        if cross.name == feature:
            yield Try(
                f"Drill and tap {feature} of {part} again, 90 deg on.",
                design=with_key(text, place, "angle", f"{cross.angle + 90:g} deg"),
                keep=(part,),
                by_hand=PLUGGING,
            )


def warn_of_taps(situation: Situation) -> Iterator[Finding]:
    """Threads deeper than two diameters."""
    for size, designation, depth, part in _tapped(situation):
        long = depth or _metal(part, size)
        if long > DEEP * thread(designation).major:
            yield beware(
                16,
                f"{designation} of {size} is tapped {long:.1f} mm deep in {part.material}:"
                f" {long / thread(designation).major:.1f} diameters.",
                about=size,
                figure=f"{long:.1f} mm",
                bound=f"{DEEP * thread(designation).major:.1f} mm",
                remedy="Drill a size larger, back each half turn, clear the chips; taper, second, bottoming tap.",
            )


def _metal(part: Part, size: str) -> float:
    shape = part.shape
    if isinstance(shape, TurnedShape):
        bore = next((one for one in shape.bores if f"{part.name}.{one.name}" == size), None)
        if bore is not None:
            return bore.depth
        circle = next((one for one in shape.circle_holes if f"{part.name}.{one.name}" == size), None)
        return circle.end - circle.start if circle is not None else 0.0
    return shape.thickness.value if isinstance(shape, PlateShape) else 0.0


def tries_after_breaking(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """The pattern to fresh metal; a larger thread through the spoilt hole."""
    yield from _turned_on(situation, mishap)
    designation, named = _named_thread(situation, mishap.about)
    area = thread(designation).stress_area
    larger = [one for one in _other_threads(situation, designation, False) if thread(one).stress_area > area]
    for other in larger[:1]:
        yield Try(
            f"Get the tap out, drill through its hole and tap {other}, wherever {named or designation} stands.",
            keep=(mishap.about.split(".")[0],),
            by_hand=PLUGGING,
            **_changed_thread(situation, mishap.about, named, other),  # type: ignore[arg-type]
        )


def warn_of_shallow(situation: Situation) -> Iterator[Finding]:
    """Blind threads whose drill, with its lead and point, comes near the far side."""
    for part in situation.plan.design.parts:
        if not isinstance(part.shape, PlateShape):
            continue
        for hole in part.shape.holes:
            if not hole.thread or hole.depth is None:
                continue
            kind = thread(hole.thread)
            tip = hole.depth + LEAD * kind.pitch + 0.3 * kind.tapping_drill
            there = _behind(part.shape, hole)
            if tip > there - 0.5:
                yield beware(
                    17,
                    f"{hole.thread} of {part.name}.{hole.name} wants a hole {tip:.1f} mm deep with lead and point;"
                    f" there are {there:.1f} mm.",
                    about=f"{part.name}.{hole.name}",
                    figure=f"{tip:.1f} mm",
                    bound=f"{there:.1f} mm",
                    remedy="Work to the three depths on the card; finish with a bottoming tap.",
                )


def _behind(shape: PlateShape, hole: PlateHole) -> float:
    across = {"top": shape.thickness, "bottom": shape.thickness, "front": shape.width, "back": shape.width}
    return across.get(hole.face, shape.length).value


def tries_after_shallow(situation: Situation, mishap: Mishap) -> Iterator[Try]:
    """Leave it as deep as it came out; or finish it with a bottoming tap."""
    text = situation.inputs.design_text
    place = (*_feature_place(text, mishap.about), "deep")
    if place_of(text, f"{mishap.about}.deep") is None:
        raise Refusal(f"{mishap.about} has no depth of its own.", "Name a blind thread.")
    if mishap.value <= 0:
        raise Refusal(f"The depth is {mishap.value:g} mm; it must be above 0.", "Run a screw in and measure.")
    each = 25.4 if situation.inputs.design.units == "in" else 1.0
    yield Try(
        f"Leave the thread of {mishap.about} {mishap.value:g} mm deep and see what holds.",
        design=with_value(text, place, mishap.value / each),
        keep=(mishap.about.split(".")[0],),
    )
    yield Try(f"Take {mishap.about} to its depth with a bottoming tap.", by_hand=10.0)


LEADS = Reality(
    10, "Thread that cannot be cut truly", "about: the threaded feature", warn_of_leads, tries_other_thread
)
BREAKS_OUT = Reality(
    15, "Tapped hole breaks out", "about: the tapped hole", warn_of_breaking_out, tries_after_breaking_out
)
TAP_BREAKS = Reality(16, "Tap breaks", "about: the tapped hole", warn_of_taps, tries_after_breaking)
SHALLOW = Reality(
    17,
    "Blind thread too shallow",
    "about: the tapped hole; value: the depth of full thread it has [mm]",
    warn_of_shallow,
    tries_after_shallow,
)
