"""Additions to a design's text: a feature of a part, by the answers to its questions."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any

from tommybar.design.yaml_file import yaml_from_text
from tommybar.refusals import Refusal, nearest
from tommybar.web.splice import appended, as_written


@cache
def features() -> tuple[dict[str, Any], ...]:
    """Everything that may be added, in the order of the list."""
    text = (Path(__file__).parent / "features.toml").read_text(encoding="utf-8")
    return tuple(tomllib.loads(text)["feature"])


def feature_named(name: str) -> dict[str, Any]:
    """The feature of that name."""
    for one in features():
        if one["name"] == name:
            return one
    raise Refusal(
        f'"{name[:40]}" is nothing that can be added here.', nearest(name, [f["name"] for f in features()])
    )


def with_feature(text: str, part: str, name: str, typed: Mapping[str, str]) -> str:
    """The text with one more feature of a part, at the end of its list."""
    feature = feature_named(name)
    lacking = [
        field["ask"]
        for field in feature["fields"]
        if not field.get("may_lack") and not typed.get(field["key"], "").strip()
    ]
    if lacking:
        raise Refusal(
            f"Not said: {', '.join(lacking)}.", "Fill every field that is not marked as one that may lack."
        )
    pairs = _pairs(
        {
            field["key"]: as_written(typed[field["key"]])
            for field in feature["fields"]
            if typed.get(field["key"], "").strip() and field["key"] not in ("x", "y")
        }
    )
    pairs += [f"{key}: {value}" for key, value in feature.get("with", {}).items()]
    place = feature["place"]
    if any(field["key"] == "x" for field in feature["fields"]):
        spot = f"[{as_written(typed['x'])}, {as_written(typed['y'])}]"
        pairs.append(f"at: [{spot}]" if place[-1] == "holes" else f"at: {spot}")
    if place[0] == "plate" and "block" in yaml_from_text(text).data["parts"][part]:
        place = ["block", *place[1:]]
    return appended(text, ("parts", part, *place), f"{{{', '.join(pairs)}}}")


def _pairs(written: Mapping[str, str]) -> list[str]:
    """Keys and values as they stand in the file; "cone.large" is large within cone."""
    groups: dict[str, list[str]] = {}
    for key, value in written.items():
        outer, _, inner = key.partition(".")
        groups.setdefault(outer, []).append(f"{inner}: {value}" if inner else value)
    within = {key.partition(".")[0] for key in written if "." in key}
    return [
        f"{key}: {{{', '.join(all_of)}}}" if key in within else f"{key}: {all_of[0]}"
        for key, all_of in groups.items()
    ]
