"""The schema in docs/schema is that of the model, and agrees with the design that we ship."""

import importlib.util
import json
from pathlib import Path

import pytest

from tommybar.design.yaml_file import read_yaml

ROOT = Path(__file__).parents[2]
DEMONSTRATOR = ROOT / "examples" / "demonstrator" / "design.yaml"
KINDS = {
    "object": dict,
    "array": list,
    "string": str,
    "number": (int, float),
    "integer": int,
    "boolean": bool,
}


def schema():
    """The schema as it is checked in."""
    return json.loads((ROOT / "docs" / "schema" / "design.json").read_text())


def disagreements(data, node, whole, place=""):
    """Where the data is not what the schema says; the words of the standard that ours use."""
    if "$ref" in node:
        return disagreements(data, whole["$defs"][node["$ref"].rsplit("/", 1)[1]], whole, place)
    options = node.get("anyOf") or node.get("oneOf")
    if options:
        each = [disagreements(data, one, whole, place) for one in options]
        return [] if any(not one for one in each) else [f"{place}: none of {len(options)}: {each}"]
    if "const" in node or "enum" in node:
        allowed = node.get("enum", [node.get("const")])
        return [] if data in allowed else [f"{place}: {data} is not in {allowed}"]
    kind = node.get("type")
    if kind and (not isinstance(data, KINDS[kind]) or (isinstance(data, bool) and kind != "boolean")):
        return [f"{place}: {data!r} is no {kind}"]
    found = []
    if isinstance(data, dict):
        known, further = node.get("properties", {}), node.get("additionalProperties", True)
        found += [f"{place}: {key} is missing" for key in node.get("required", ()) if key not in data]
        for key, one in data.items():
            if key in known or isinstance(further, dict):
                found += disagreements(one, known.get(key, further), whole, f"{place}.{key}")
            elif further is False:
                found.append(f"{place}: {key} is not known")
    if isinstance(data, list):
        first = node.get("prefixItems", [])
        for index, one in enumerate(data):
            rule = first[index] if index < len(first) else node.get("items", {})
            found += disagreements(one, rule if isinstance(rule, dict) else {}, whole, f"{place}.{index}")
    return found


def test_schemas_are_those_of_the_models():
    """tools/write_schemas.py would write what is there."""
    spec = importlib.util.spec_from_file_location("write_schemas", ROOT / "tools" / "write_schemas.py")
    writer = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(writer)

    for name, text in writer.schemas().items():
        assert (ROOT / "docs" / "schema" / name).read_text() == text, "run: python tools/write_schemas.py"


def test_our_own_design_agrees_with_the_schema():
    """An editor finds no fault in a file that the program reads."""
    assert disagreements(read_yaml(DEMONSTRATOR).data, schema(), schema()) == []


@pytest.mark.parametrize(
    ("damage", "said"),
    [
        (lambda data: data.pop("units"), ": units is missing"),
        (lambda data: data.update(units="cm"), "is not in"),
        (lambda data: data["parts"]["wheel"].update(materiel="steel"), ".parts.wheel: materiel is not known"),
        (lambda data: data["sizes"].update(hub=[1]), ".sizes.hub: none of"),
        (lambda data: data["parts"]["bush"].update(count=None), ".parts.bush.count: none of"),
    ],
)
def test_the_schema_finds_what_the_program_refuses(damage, said):
    """Planted: a missing key, a wrong word, an unknown key, a wrong kind, a key without a value."""
    data = read_yaml(DEMONSTRATOR).data
    damage(data)

    assert any(said in one for one in disagreements(data, schema(), schema()))
