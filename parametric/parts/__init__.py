"""Resolved -> Parts: every piece where it stands, with every cut that it takes."""

from parametric.parts.assembly import make_parts, parts_of

__all__ = ["make_parts", "parts_of"]
