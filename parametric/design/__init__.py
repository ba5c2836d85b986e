"""The design file and the house file: read, put in layers, understood."""

from parametric.design.loading import Design, Loaded, load

__all__ = ["Design", "Loaded", "load"]
