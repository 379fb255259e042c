"""The design file: named sizes, expressions, parts, features, relations, purposes."""

from tommybar.design.loaded import Design, design_from_text, design_schema, load_design
from tommybar.design.named_sizes import NamedSize

__all__ = ["Design", "NamedSize", "design_from_text", "design_schema", "load_design"]
