"""Every address of the page, and which function of which page module answers it.

A page's module is imported when it is first asked for, so that the first page
comes quickly.
"""

from __future__ import annotations

from typing import Literal, NamedTuple


class Way(NamedTuple):
    """One address."""

    does: Literal["get", "post"]
    path: str
    page: str  # module of tommybar.web.pages
    handler: str


WAYS = (
    Way("get", "/", "designs", "gallery"),
    Way("post", "/designs", "designs", "new"),
    Way("get", "/designs/{name}/picture", "designs", "picture"),
    Way("post", "/designs/{name}/remove", "designs", "remove"),
    Way("get", "/examples/{name}/picture", "designs", "example_picture"),
    Way("get", "/designs/{name}", "overview", "overview"),
    Way("post", "/designs/{name}/shop", "overview", "choose_shop"),
    Way("post", "/designs/{name}/undo", "overview", "undo"),
    Way("post", "/designs/{name}/redo", "redo", "design"),
    Way("get", "/designs/{name}/solid.json", "solid", "whole"),
    Way("get", "/designs/{name}/solid/{part}", "solid", "one_part"),
    Way("get", "/designs/{name}/sizes", "sizes", "sizes"),
    Way("post", "/designs/{name}/sizes", "sizes", "hold"),
    Way("post", "/designs/{name}/sizes/scale", "sizes", "take_scale"),
    Way("post", "/designs/{name}/sizes/undo", "sizes", "undo"),
    Way("post", "/designs/{name}/sizes/redo", "redo", "sizes"),
    Way("get", "/designs/{name}/parts", "parts", "parts"),
    Way("get", "/designs/{name}/parts/{part}", "parts", "parts"),
    Way("post", "/designs/{name}/parts/{part}", "parts", "change"),
    Way("post", "/designs/{name}/parts/{part}/add", "parts", "add"),
    Way("get", "/designs/{name}/stock", "stock", "stock"),
    Way("get", "/designs/{name}/route", "route", "route"),
    Way("get", "/designs/{name}/route/{part}", "route", "route"),
    Way("get", "/designs/{name}/route/{part}/instead/{card:int}", "instead", "instead"),
    Way("get", "/designs/{name}/checks", "checks", "checks"),
    Way("get", "/designs/{name}/sheets", "sheets", "sheets"),
    Way("post", "/designs/{name}/sheets", "sheets", "write"),
    Way("get", "/designs/{name}/sheets/{number:int}", "sheets", "one_sheet"),
    Way("get", "/designs/{name}/sheets/{number:int}/picture", "sheets", "sheet_picture"),
    Way("get", "/designs/{name}/pack/{file:path}", "sheets", "take"),
    Way("get", "/designs/{name}/one/{file:path}", "one_file", "one_file"),
    Way("get", "/designs/{name}/text", "text", "design_text"),
    Way("post", "/designs/{name}/text", "text", "save_design"),
    Way("get", "/designs/{name}/file", "text", "design_file"),
    Way("get", "/shops/{name}/text", "text", "shop_text"),
    Way("post", "/shops/{name}/text", "text", "save_shop"),
    Way("get", "/shops/{name}/file", "text", "shop_file"),
    Way("get", "/shops", "shops", "shops"),
    Way("post", "/shops", "shops", "new"),
    Way("post", "/shops/{name}/undo", "shops", "undo"),
    Way("post", "/shops/{name}/redo", "redo", "shop"),
    Way("post", "/shops/{name}/remove", "shops", "remove"),
    Way("get", "/shops/{name}/walk/{group}", "walk", "walk"),
    Way("post", "/shops/{name}/walk/{group}", "walk", "keep"),
    Way("get", "/shops/{name}/calibrate", "calibrate", "calibrate"),
    Way("post", "/shops/{name}/calibrate", "calibrate", "try_it"),
    Way("get", "/builds", "builds", "list_of_builds"),
    Way("post", "/builds", "builds", "begin"),
    Way("get", "/builds/{build}", "builds", "one_build"),
    Way("get", "/builds/{build}/machine", "machine", "at_the_machine"),
    Way("get", "/builds/{build}/entries", "machine", "entries"),
    Way("post", "/builds/{build}/entries", "machine", "take_entries"),
    Way("get", "/builds/{build}/changes", "machine", "changes"),
    Way("get", "/builds/{build}/machine-file", "machine", "machine_file"),
    Way("post", "/builds/{build}/print", "builds", "print_cards"),
    Way("get", "/builds/{build}/pack.pdf", "builds", "printed_pack"),
    Way("get", "/builds/{build}/made", "builds", "made_file"),
    Way("get", "/builds/{build}/rescue", "rescue", "rescue"),
    Way("post", "/builds/{build}/rescue", "rescue", "tell"),
    Way("get", "/builds/{build}/rescue/{work}", "rescue", "ways_out"),
    Way("post", "/builds/{build}/rescue/{work}", "rescue", "take"),
    Way("post", "/builds/{build}/settle", "settle", "settle"),
    Way("post", "/builds/{build}/revision", "settle", "next_revision"),
    Way("post", "/builds/{build}/tools", "settle", "use_tools"),
    Way("get", "/archive", "archive", "archive"),
    Way("post", "/archive", "archive", "bring_in"),
    Way("get", "/archive/tommybar.zip", "archive", "take_away"),
    Way("post", "/archive/copies", "archive", "restore"),
    Way("get", "/static/machine.js", "machine", "machine_script"),
    Way("get", "/static/machine-worker.js", "machine", "machine_worker"),
    Way("get", "/look-up", "lookup", "lookup"),
    Way("get", "/look-up/{topic}", "lookup", "lookup"),
    Way("get", "/work/{work}", "working", "working"),
    Way("get", "/work/{work}/state", "working", "state"),
    Way("post", "/work/{work}/stop", "working", "stop"),
    Way("post", "/look", "look", "switch"),
    Way("get", "/pair", "look", "pair"),
    Way("post", "/pair", "look", "try_code"),
)
