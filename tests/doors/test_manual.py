"""The manual is true: its pictures and links are there, its reference is what the schema says."""

import importlib.util
import re
from pathlib import Path

import pytest

from tommybar.sizes.topics import TOPICS
from tommybar.web.answers import groups

ROOT = Path(__file__).parents[2]
DOCS = ROOT / "docs"
PAGES = sorted(DOCS.glob("*.md"))


@pytest.mark.parametrize("page", PAGES, ids=lambda path: path.stem)
def test_every_link_leads_somewhere(page):
    """Pictures and other pages that a page names are there."""
    links = re.findall(r"\]\(([^)#:]+)(?:#[^)]*)?\)", page.read_text())

    assert [link for link in links if not (page.parent / link).exists()] == []


def test_every_picture_is_shown():
    """No picture lies about unused."""
    shown = {link for page in PAGES for link in re.findall(r"\(pictures/([^)]+)\)", page.read_text())}

    assert shown == {path.name for path in (DOCS / "pictures").iterdir()}


def test_the_reference_is_what_the_schema_says():
    """docs/design-reference.md is remade by its tool whenever the design file changes."""
    spec = importlib.util.spec_from_file_location("reference", ROOT / "tools" / "write_design_reference.py")
    tool = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(tool)

    assert (DOCS / "design-reference.md").read_text() == tool.reference()
    assert len(tool.HEADINGS) == len(tool.design_schema()["$defs"])


def test_the_walk_through_of_the_manual_is_that_of_the_page():
    """Each page of the walk-through stands in the table of the manual."""
    manual = (DOCS / "shop-set-up.md").read_text()

    assert [one["title"] for one in groups() if one["title"].split(",")[0] not in manual] == []
    assert len(TOPICS) >= 15
