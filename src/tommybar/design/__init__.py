"""The design file: named sizes, expressions, parts, features, relations, purposes."""
