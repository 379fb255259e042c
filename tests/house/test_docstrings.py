"""Every public calculation says its units, an example that runs, and where it comes from."""

import ast
from pathlib import Path

SRC = Path(__file__).parents[2] / "src" / "tommybar"
FLOORS = ("facts", "sizes", "mechanics")
PLUMBING = (  # these carry figures and give none of their own; a paragraph will do
    "answer",
    "source",
    "sources",
    "read_table",
    "row_of_size",
    "range_row",
    "worked_thread",
    "must_be_above",
    "must_be_within",
)


def calculations():
    """Public functions of the three floors of figures: name, text and whether it takes arguments."""
    for floor in FLOORS:
        for path in sorted((SRC / floor).rglob("*.py")):
            for node in ast.parse(path.read_text()).body:
                if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
                    yield f"{path.relative_to(SRC)}:{node.name}", node


def faults_of(node):
    """What a docstring lacks of the form that a calculation has."""
    text = ast.get_docstring(node) or ""
    takes = [one.arg for one in (*node.args.args, *node.args.kwonlyargs)]
    wanted = {
        "a docstring": text,
        "Parameters": not takes or "Parameters\n---" in text,
        "Returns": "Returns\n---" in text,
        "units in [brackets]": "[" in text and "]" in text,
        "an example": "Examples\n---" in text and ">>>" in text,
        "a source": "References\n---" in text or "source" in text.lower(),
    }
    return [what for what, there in wanted.items() if not there]


def test_calculations_have_the_form_of_the_house():
    """Parameters, Returns, units, a running example and a source, in every one of them."""
    found = {name: faults_of(node) for name, node in calculations() if node.name not in PLUMBING}

    assert len(found) > 50
    assert {name: lacks for name, lacks in found.items() if lacks} == {}


def test_plumbing_has_its_paragraph():
    """What is let off the form still says what it does."""
    silent = [name for name, node in calculations() if node.name in PLUMBING and not ast.get_docstring(node)]

    assert silent == []


def test_a_bare_function_is_found_out():
    """Planted: a calculation without its docstring lacks everything."""
    bare = ast.parse("def speed(v, d):\n    return v / d").body[0]

    assert faults_of(bare) == [
        "a docstring",
        "Parameters",
        "Returns",
        "units in [brackets]",
        "an example",
        "a source",
    ]
