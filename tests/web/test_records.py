"""Every page's record is what its template shows: no field that is not used, none that is not there."""

from __future__ import annotations

import dataclasses
import importlib
import re
from pathlib import Path

import pytest

import tommybar.web
from tommybar.web.ways import WAYS

WEB = Path(tommybar.web.__file__).parent
PAGES = sorted((WEB / "pages").glob("*.py"))


def records():
    """Every record that a page hands to a template: (record, template)."""
    found = []
    for path in [*PAGES, WEB / "ask.py"]:
        text = path.read_text()
        package = "tommybar.web.pages." if path.parent.name == "pages" else "tommybar.web."
        for record in re.findall(r"(?m)^class (\w+Page)\b", text):
            for template in set(re.findall(r'"(\w+\.html)"', text)):
                if (WEB / "templates" / template).exists():
                    found.append((getattr(importlib.import_module(package + path.stem), record), template))
    return found


def used(template):
    """The names that a template, and what it includes, takes from its page."""
    text = (WEB / "templates" / template).read_text()
    for included in re.findall(r'include "(\w+\.html)"', text):
        text += (WEB / "templates" / included).read_text()
    return set(re.findall(r"\bpage\.(\w+)", text))


def test_a_template_takes_what_its_record_has():
    """For each record there is a template that uses every field, and it asks for no other."""
    by_record = {}
    for record, template in records():
        by_record.setdefault(record, []).append(template)

    assert len(by_record) > 15
    for record, templates in by_record.items():
        fields = {one.name for one in dataclasses.fields(record)}
        assert any(used(one) == fields for one in templates), (record.__name__, templates, fields)


@pytest.mark.parametrize("way", WAYS, ids=lambda way: f"{way.does} {way.path}")
def test_every_address_has_its_function(way):
    """The table of addresses names functions that are there and say what they do."""
    handler = getattr(importlib.import_module(f"tommybar.web.pages.{way.page}"), way.handler)

    assert handler.__doc__


def test_no_address_stands_twice():
    """One answer for one address."""
    assert len({(one.does, one.path) for one in WAYS}) == len(WAYS)
