"""A shop's answers: read from its file for the form, and written into the file from the form."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from tommybar.design.yaml_file import yaml_from_text
from tommybar.refusals import Refusal, nearest
from tommybar.web.splice import as_written, put, span_of, without
from tommybar.web.table_rows import with_entries

SECTIONS = ("round", "hexagon", "square", "flat", "plate", "sheet", "tube")
Row = dict[str, str]


@cache
def groups() -> tuple[dict[str, Any], ...]:
    """The groups of questions, in the order in which they are asked."""
    text = (Path(__file__).parent / "questions.toml").read_text(encoding="utf-8")
    return tuple(tomllib.loads(text)["group"])


def group_named(name: str) -> dict[str, Any]:
    """The group of that name."""
    for one in groups():
        if one["name"] == name:
            return one
    known = [one["name"] for one in groups()]
    raise Refusal(f'No page of the walk-through is named "{name[:40]}".', nearest(name, known))


def place_of(dotted: str) -> tuple[str, ...]:
    """Where an answer stands in the file."""
    return tuple(dotted.split("."))


def written(data: Any, dotted: str) -> str:
    """An answer as it stands in the file, lists with commas; empty when it was not given."""
    for step in dotted.split("."):
        data = data.get(step) if isinstance(data, dict) else None
    return _shown(data)


def _shown(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, list):
        return ", ".join(_shown(one) for one in value)
    if isinstance(value, dict):
        return _shown(value.get("size"))
    if isinstance(value, bool):
        return "true" if value else "false"
    return f"{value:g}" if isinstance(value, float) else str(value)


def listed(typed: str) -> str:
    """Words with commas as a list of the file.

    Examples
    --------
    >>> listed("1-10 by 0.5, 3.3, #7")
    "[1-10 by 0.5, 3.3, '#7']"
    """
    return f"[{', '.join(as_written(one) for one in typed.split(',') if one.strip())}]"


def with_answer(text: str, question: Mapping[str, Any], typed: str) -> str:
    """The file's text with one answer; an empty field leaves what stands, or takes it out of braces."""
    place = place_of(question["place"])
    data = yaml_from_text(text).data
    if not typed.strip():
        return without(text, place) if span_of(text, place) else text
    if typed.strip() == written(data, question["place"]):
        return text
    return put(text, place, listed(typed) if question["kind"] in ("list", "several") else as_written(typed))


def rows_of(data: Any, table: str) -> list[Row]:
    """A table of the file as rows of words; a jaw set gives one row a range."""
    entries = data.get(table) if isinstance(data, dict) else None
    rows: list[Row] = []
    for entry in entries or []:
        plain = {key: _shown(value) for key, value in entry.items()}
        if table == "jaws":
            for one in entry.get("ranges") or [{}]:
                rows.append({**plain, **{key: _shown(value) for key, value in one.items()}})
        elif table == "rack":
            section = next((one for one in SECTIONS if one in entry), "")
            rows.append({**plain, "section": section, "size": plain.get(section, "")})
        else:
            rows.append(plain)
    return rows


def with_rows(text: str, group: Mapping[str, Any], rows: list[Row]) -> str:
    """The file's text with a whole table."""
    kept = [
        row
        for row in rows
        if any(row.get(one["key"], "").strip() for one in group["columns"] if one["kind"] != "choice")
    ]
    if _same_rows(text, group, kept):
        return text  # comments between the rows stay
    table = group["table"]
    entries = _entries(kept, group)
    by_row = with_entries(text, table, _entries(rows_of(yaml_from_text(text).data, table), group), entries)
    if by_row is not None and entries:
        return by_row
    lines = "".join(f"\n  - {{{one}}}" for one in entries)
    return put(text, (table,), lines if entries else "[]")


def _entries(rows: list[Row], group: Mapping[str, Any]) -> list[str]:
    return _jaws(rows) if group["table"] == "jaws" else [_entry(row, group) for row in rows]


def _same_rows(text: str, group: Mapping[str, Any], rows: list[Row]) -> bool:
    """Whether the file says these very rows already."""
    keys = [one["key"] for one in group["columns"]]

    def plain(given: list[Row]) -> list[list[str]]:
        return [[row.get(key, "").strip() for key in keys] for row in given]

    return plain(rows) == plain(rows_of(yaml_from_text(text).data, group["table"]))


def _pairs(row: Row, columns: list[Mapping[str, Any]]) -> list[str]:
    pairs = []
    for column in columns:
        typed = row.get(column["key"], "").strip()
        if typed:
            pairs.append(
                f"{column['key']}: {listed(typed) if column['kind'] == 'list' else as_written_word(typed)}"
            )
    return pairs


def as_written_word(typed: str) -> str:
    """Like as_written, but true and false stay what they are."""
    return typed if typed in ("true", "false") else as_written(typed)


def _entry(row: Row, group: Mapping[str, Any]) -> str:
    if group["table"] == "rack":
        others = [one for one in group["columns"] if one["key"] not in ("section", "size")]
        pairs = _pairs(row, others)
        pairs.insert(1, f"{row.get('section') or 'round'}: {as_written(row.get('size', '')) or 0}")
        return ", ".join(pairs)
    knurl = row.get("kind") == "knurling"
    columns = [one for one in group["columns"] if knurl or one["key"] not in ("pattern", "pitch")]
    return ", ".join(_pairs(row, columns))


def _jaws(rows: list[Row]) -> list[str]:
    """Jaw sets: rows of one name are the ranges of one set."""
    entries = []
    for name in dict.fromkeys(row.get("name", "") for row in rows):
        same = [row for row in rows if row.get("name", "") == name]
        first = same[0]
        pairs = [f"{key}: {as_written(first[key])}" for key in ("name", "device", "grips") if first.get(key)]
        if first.get("sizes"):
            pairs += [f"sizes: {listed(first['sizes'])}"]
            pairs += [f"{key}: {as_written(first[key])}" for key in ("closes", "depth") if first.get(key)]
        else:
            ranges = [
                "{"
                + ", ".join(
                    f"{key}: {as_written(row[key])}" for key in ("from", "to", "depth") if row.get(key)
                )
                + "}"
                for row in same
            ]
            pairs.append(f"ranges: [{', '.join(ranges)}]")
        pairs += [
            f"{key}: {as_written(first[key])}"
            for key in ("runout", "body", "jaw_height", "top_speed")
            if first.get(key)
        ]
        entries.append(", ".join(pairs))
    return entries
