"""Builds: begun, listed, looked at, settled, printed."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial
from typing import TYPE_CHECKING, Literal

from starlette.responses import PlainTextResponse, Response

from tommybar.bench.as_built import differences
from tommybar.bench.builds import builds, load_build, start_build
from tommybar.bench.folder import Folder
from tommybar.bench.journal import receive
from tommybar.bench.made_file import made_text
from tommybar.bench.replan import plan_of, printed_entry, stale_cards
from tommybar.bench.standing import device_words, standing
from tommybar.bench.tool_log import observed, proposals
from tommybar.making.lengths import spoken
from tommybar.making.step_keys import is_ticked
from tommybar.refusals import Complaint, Refusal
from tommybar.web.ask import Ask, answer, go_to
from tommybar.web.pages.designs import title_of
from tommybar.web.pages.opened import Told, told
from tommybar.web.plans import design_of, pins_of, scale_of
from tommybar.web.work import StillAtWorkError, Tell, Work

if TYPE_CHECKING:
    from tommybar.bench.entries import Entry
    from tommybar.bench.stored import Build
    from tommybar.pack.units import Reader
    from tommybar.planning import Plan

NAV = "builds"


@dataclass(frozen=True)
class Line:
    """One build in the list."""

    id: str
    title: str
    about: str
    last: str


@dataclass(frozen=True)
class BuildsPage:
    """All builds, and what may be begun."""

    lines: tuple[Line, ...]
    designs: tuple[tuple[str, str], ...]
    complaints: tuple[Complaint, ...]
    typed_design: str
    typed_title: str


@dataclass(frozen=True)
class Disagreement:
    """Two devices that say different things, and what each says: id and words."""

    words: str
    sides: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class BuildPage:
    """One build."""

    id: str
    title: str
    about: str
    plan_id: str
    stops: tuple[Told, ...]
    done: str
    sizes: tuple[tuple[str, ...], ...]
    conflicts: tuple[Disagreement, ...]
    accepts: tuple[tuple[str, str], ...]  # built sizes that may become the next revision: name and words
    stays: tuple[tuple[str, str], ...]  # those that may not: name and why
    tools: tuple[str, ...]  # what the readings tell of tools
    changed: tuple[tuple[str, str], ...]
    stale: tuple[str, ...]
    notes: tuple[str, ...]
    printed: bool  # whether a pack of it was written since the page was started
    unit: str


def folder_of(ask: Ask) -> Folder:
    """Where the builds are."""
    return Folder(ask.desk.files.path)


def build_of(ask: Ask) -> Build:
    """The build that the address names."""
    return load_build(folder_of(ask), str(ask.path["build"]))


def plan_now(ask: Ask, build: Build) -> Plan:
    """The plan of a build as it stands, its sentences in the reader's unit; kept until an entry comes in."""
    return _plan_in(ask, build, ask.reader.unit)


def plan_as_printed(ask: Ask, build: Build) -> Plan:
    """The same plan with its sentences in mm, in which printed cards are compared."""
    return _plan_in(ask, build, "mm")


def _plan_in(ask: Ask, build: Build, unit: Literal["mm", "in"]) -> Plan:
    kept: dict[tuple[str, int, str], Work] = ask.desk.extra.setdefault("build plans", {})
    key = (build.id, len(build.entries), unit)
    work = kept.get(key)
    if work is None or (work.done.is_set() and work.error is not None):

        def deed(tell: Tell) -> Plan:
            return plan_of(build, tell, unit)

        work = ask.desk.works.begin("The plan of the build", ask.here, deed)
        kept[key] = work
        for old in list(kept)[: -2 * ask.desk.settings.plans_kept]:
            kept.pop(old, None)
    if not work.done.wait(ask.desk.settings.plan_patience):
        raise StillAtWorkError(work)
    plan: Plan = work.outcome()
    return plan


def list_of_builds(ask: Ask, wrong: Refusal | None = None) -> Response:
    """The page."""
    files = ask.desk.files
    page = BuildsPage(
        tuple(
            Line(
                one.id,
                one.title,
                f"{one.design_name} in {one.shop_name}, begun {one.begun[:10]}",
                one.last[:16].replace("T", " "),
            )
            for one in builds(folder_of(ask))
        ),
        tuple((name, title_of(files.text("designs", name), name)) for name in files.names("designs")),
        wrong.complaints if wrong else (),
        ask.typed("design"),
        ask.typed("title"),
    )
    return answer(ask, "builds.html", page, NAV, 400 if wrong else 200)


def begin(ask: Ask) -> Response:
    """Begin a build of a design in the shop, at the scale and with the pins that are chosen for it."""
    name = ask.typed("design")
    try:
        choices = ask.desk.files.choices(name)
        design = design_of(ask.desk.files.text("designs", name))
        build = start_build(
            folder_of(ask),
            name,
            choices.shop,
            title=" ".join(ask.typed("title").split())[:80],
            scale=scale_of(choices.scale),
            pins=pins_of(choices.pins, design),
            stock=choices.stock,
        )
    except Refusal as refusal:
        return list_of_builds(ask, refusal)
    return go_to(f"/builds/{build.id}", "begun")


def one_build(ask: Ask) -> Response:
    """How far a build is, what was measured, what that changed, where devices disagree."""
    build, reader = build_of(ask), ask.reader
    plan, stand = plan_now(ask, build), standing(build.entries)
    in_unit = partial(spoken, unit=reader.unit)
    steps = [(card, step) for part in plan.parts for card in part.cards for step in card.steps]
    done = sum(1 for card, step in steps if is_ticked(card, step, stand.ticks))
    stale = stale_cards(plan_as_printed(ask, build), stand)
    built = differences(build, plan)
    page = BuildPage(
        build.id,
        build.title,
        f"{build.design_name} in {build.shop_name}, begun {build.begun[:10]}",
        plan.plan_id,
        told(plan.stops),
        f"{done} of {len(steps)} steps",
        tuple(
            (
                one.size.replace("_", " ").replace(".", " "),
                reader.length(one.drawn, 3),
                reader.length(one.built, 3),
                one.instrument,
                one.by,
                one.on,
                in_unit(one.words),
            )
            for one in built
        ),
        tuple(
            Disagreement(
                in_unit(one.words),
                tuple((each.id, f"{device_words(each)}: {_side(each, reader)}") for each in one.entries),
            )
            for one in stand.conflicts
        ),
        tuple((one.size, in_unit(one.words)) for one in built if one.can_accept),
        tuple(
            (one.size, in_unit(one.why_not))
            for one in built
            if one.verdict not in ("as drawn", "within") and one.why_not
        ),
        tuple(in_unit(one.words) for one in proposals(observed(build, plan), build.shop_text)),
        tuple((one.part.name, in_unit(one.changed)) for one in plan.parts if one.changed),
        tuple(f"{one.key}, printed {one.printed_on[:10]} from plan {one.plan_id}" for one in stale),
        tuple(str(one.said.get("words", "")) for one in stand.notes),
        build.id in ask.desk.extra.get("build packs", {}),
        reader.unit,
    )
    return answer(ask, "build.html", page, NAV)


def _side(one: Entry, reader: Reader) -> str:
    """What one device says, in the reader's unit."""
    value = one.said.get("value")
    return one.kind if value is None else f"{reader.length(float(value), 3)} {reader.unit}"


def print_cards(ask: Ask) -> Response:
    """Write the pack of a build to be printed; the journal then knows which cards hang at the machine."""
    build, reader, desk = build_of(ask), ask.reader, ask.desk
    folder = folder_of(ask)

    def deed(tell: Tell) -> None:
        from tommybar.pack.pdf import pdf_bytes
        from tommybar.pack.write import pack_sheets
        from tommybar.planning import with_assembly

        plan = plan_of(build, tell, reader.unit)
        tell("sheets")
        data = pdf_bytes(
            pack_sheets(with_assembly(plan, reader.unit), reader), f"{plan.title}, plan {plan.plan_id}"
        )
        compared = plan_of(build, tell)
        receive(folder, build.id, [printed_entry(compared, device="the PC", number=len(build.entries))])
        desk.extra.setdefault("build packs", {})[build.id] = data

    work = desk.works.begin("The pack of the build", f"/builds/{build.id}#paper", deed)
    return go_to(f"/work/{work.name}")


def printed_pack(ask: Ask) -> Response:
    """The pack that was written last."""
    build = build_of(ask)
    data: bytes | None = ask.desk.extra.get("build packs", {}).get(build.id)
    if data is None:
        raise Refusal("No pack of this build was written since the page was started.", "Write it first.")
    return Response(
        data, media_type="application/pdf", headers={"content-disposition": 'attachment; filename="pack.pdf"'}
    )


def made_file(ask: Ask) -> Response:
    """The build as a made file, to take away."""
    build = build_of(ask)
    return PlainTextResponse(
        made_text(build),
        media_type="application/yaml",
        headers={"content-disposition": 'attachment; filename="made.yaml"'},
    )
