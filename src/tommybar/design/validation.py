"""A file's data checked against a model: all faults in one refusal, each with its place."""

from __future__ import annotations

import typing
from collections.abc import Iterator, Mapping
from typing import Annotated, Any, Literal, TypeVar, Union

from pydantic import BaseModel, ConfigDict, Strict, Tag, ValidationError

from tommybar.design.yaml_file import Place, YamlFile
from tommybar.refusals import Complaint, Refusal, nearest


class Entry(BaseModel):
    """Base of every group of keys in a file: unknown keys are refused, what is read never changes."""

    model_config = ConfigDict(extra="forbid", frozen=True, populate_by_name=True, defer_build=True)


YesNo = Annotated[bool, Strict()]
"""true or false, written so; "yes" and 1 are refused."""

Model = TypeVar("Model", bound=BaseModel)


def validated(
    model: type[Model], file: YamlFile, unit: str = "mm", context: Mapping[str, Any] | None = None
) -> Model:
    """The file's data as ``model``; raises :class:`Refusal` with every complaint at once.

    ``unit`` ("mm" or "in") is what bare figures are in. ``context`` is handed
    on to the validators of the model.
    """
    try:
        return model.model_validate(file.data, context={"unit": unit, **(context or {})})
    except ValidationError as error:
        complaints = [one for fault in error.errors() for one in _complaints(model, file, fault)]
        raise Refusal(in_file_order(complaints)) from None


def in_file_order(complaints: list[Complaint]) -> list[Complaint]:
    """Complaints in the order of the file, doubles said once."""
    return sorted(dict.fromkeys(complaints), key=lambda one: (one.file, one.line, one.column))


def _complaints(model: type[BaseModel], file: YamlFile, fault: Any) -> Iterator[Complaint]:
    place = _in_document(file, fault["loc"])
    given, kind = fault["input"], fault["type"]
    if kind == "value_error" and isinstance(fault["ctx"]["error"], Refusal):
        yield from file.complaints(place, fault["ctx"]["error"])
    elif kind == "extra_forbidden":
        known = known_keys(model, fault["loc"])
        remedy = nearest(str(place[-1]), known) or f"Known here: {', '.join(known)}."
        yield file.complaint(place, f'The key "{place[-1]}" is not known here.', remedy, at_key=True)
    elif kind == "missing":
        key = str(fault["loc"][-1])
        yield file.complaint(place, f'The key "{key}" is missing.', "Add it.", missing=key)
    elif kind == "too_short" and _holds(file, place):
        return  # its entries are wrong, which is told of each
    else:
        what, remedy = _words(kind, fault, given)
        yield file.complaint(place, what, remedy)


def _holds(file: YamlFile, place: Place) -> bool:
    return any(one[:-1] == place for one in file.places if one)


def _words(kind: str, fault: Any, given: Any) -> tuple[str, str]:
    shown = (
        "a group of entries" if isinstance(given, dict) else "a list" if isinstance(given, list) else given
    )
    if kind == "literal_error":
        allowed = fault["ctx"]["expected"].replace("'", "")
        remedy = nearest(str(given), allowed.replace(" or ", ", ").split(", "))
        return f"It is {shown}; it must be {allowed}.", remedy
    if kind in ("bool_type", "bool_parsing"):
        return f"It is {shown}; it must be true or false.", ""
    if kind in ("string_type",):
        return f"It is {shown}; it must be text.", "Put it in quotes if it is meant so."
    if kind in ("model_type", "dict_type", "model_attributes_type"):
        return f"It is {shown}; it must be a group of entries, key: value.", ""
    if kind in ("list_type", "tuple_type"):
        return f"It is {shown}; it must be a list.", "Put it in [ ] or after dashes."
    if kind in ("int_type", "int_parsing", "float_type", "float_parsing"):
        return f"It is {shown}; it must be a plain number.", ""
    if kind == "too_short":
        return f"It has {fault['ctx']['actual_length']} entries; at least {fault['ctx']['min_length']}.", ""
    return f"It is {shown}: {fault['msg']}.", ""


def _in_document(file: YamlFile, loc: Place) -> Place:
    """The steps of pydantic's location that the document has (it also names tags of unions)."""
    place: Place = ()
    for step in loc:
        if (*place, step) in file.places:
            place = (*place, step)
    return place


def known_keys(annotation: Any, loc: Place) -> list[str]:
    """The keys that a model knows where ``loc`` points; the last step is the unknown key."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        fields = {field.alias or name: field.annotation for name, field in annotation.model_fields.items()}
        if len(loc) <= 1:
            return list(fields)
        return known_keys(fields.get(str(loc[0])), loc[1:])
    origin, inside = typing.get_origin(annotation), typing.get_args(annotation)
    if origin is typing.Annotated:
        tags = [one.tag for one in inside[1:] if isinstance(one, Tag)]
        return known_keys(inside[0], loc[1:] if tags and loc[0] == tags[0] else loc)
    if origin in (list, tuple):
        return known_keys(inside[0], loc[1:])
    if origin is dict:
        return known_keys(inside[1], loc[1:])
    if origin is Union or type(annotation).__name__ == "UnionType":
        options = [one for one in inside if _tagged(one, loc[0])] or list(inside)
        found = [key for one in options for key in known_keys(one, loc)]
        return list(dict.fromkeys(found))
    return []


def _tagged(annotation: Any, step: str | int) -> bool:
    marks = typing.get_args(annotation)[1:] if typing.get_origin(annotation) is typing.Annotated else ()
    return any(isinstance(one, Tag) and one.tag == step for one in marks)


def unit_of(file: YamlFile, key: str = "units") -> Literal["mm", "in"]:
    """The unit that the file says it is in; "mm" when it says none or another (the model then complains)."""
    data = file.data
    return "in" if isinstance(data, dict) and data.get(key) == "in" else "mm"


def schema_of(model: type[BaseModel]) -> dict[str, Any]:
    """JSON Schema of a file; a key without a value is refused, so null is never offered."""
    schema: dict[str, Any] = _without_null(model.model_json_schema(by_alias=True))
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    return schema


def _without_null(node: Any) -> Any:
    if isinstance(node, list):
        return [_without_null(one) for one in node if one != {"type": "null"}]
    if not isinstance(node, dict):
        return node
    found = {key: _without_null(one) for key, one in node.items() if not (key == "default" and one is None)}
    options = found.get("anyOf")
    if isinstance(options, list) and len(options) == 1:
        del found["anyOf"]
        found = {**options[0], **found}
    return found
