"""The design file and the house file: read, put in layers, understood."""

from parametric.design.design import Design
from parametric.design.loading import Loaded, load

__all__ = ["Design", "Loaded", "load"]
