"""Settling a build: which of two devices counts, which built sizes become the next revision, what tools told."""

from __future__ import annotations

from starlette.responses import Response

from tommybar.bench.as_built import accept, differences
from tommybar.bench.builds import load_build
from tommybar.bench.folder import Folder
from tommybar.bench.journal import receive
from tommybar.bench.standing import settled, standing
from tommybar.bench.tool_log import apply_proposal, observed, proposals
from tommybar.refusals import Refusal
from tommybar.web.ask import Ask, go_to

PC = "the PC"


def settle(ask: Ask) -> Response:
    """Let the entry of one device stand; the others are taken out, and can be put back."""
    folder = Folder(ask.desk.files.path)
    build = load_build(folder, str(ask.path["build"]))
    keep = ask.typed("keep")
    conflict = next(
        (one for one in standing(build.entries).conflicts if keep in {each.id for each in one.entries}), None
    )
    if conflict is None:
        raise Refusal("There is no such disagreement any more.", "Look at the build again.")
    receive(folder, build.id, settled(conflict, keep, device=PC, number=len(build.entries)))
    return go_to(f"/builds/{build.id}", "saved")


def next_revision(ask: Ask) -> Response:
    """Take built sizes over into the design's file as its next revision; undo puts the earlier one back."""
    build = load_build(Folder(ask.desk.files.path), str(ask.path["build"]))
    wanted = {str(one) for one in ask.form.getlist("size")}
    taken = accept(build, [one for one in differences(build) if one.size in wanted])
    files = ask.desk.files
    if (
        files.has("designs", build.design_name)
        and files.text("designs", build.design_name) != build.design_text
    ):
        raise Refusal(
            f"The design {build.design_name} was edited since this build was begun.",
            "Take the sizes over by hand, so that neither is lost.",
        )
    files.save("designs", build.design_name, taken.text)
    return go_to(f"/designs/{build.design_name}", "revised")


def use_tools(ask: Ask) -> Response:
    """Write what the tools of a build really did into the person's own shop file."""
    build = load_build(Folder(ask.desk.files.path), str(ask.path["build"]))
    files = ask.desk.files
    if not files.has("shops", build.shop_name):
        raise Refusal(
            f"{build.shop_name} is an example shop; it is not written.", "Copy it to be your own first."
        )
    text = files.text("shops", build.shop_name)
    found = proposals(observed(build), text)
    if not found:
        raise Refusal("The readings of this build say nothing new of its tools.", "Measure reamed bores.")
    for one in found:
        text = apply_proposal(text, one)
    files.save("shops", build.shop_name, text)
    return go_to("/shops", "saved")
