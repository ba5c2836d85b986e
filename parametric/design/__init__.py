"""The design file and the house file: read, put in layers, understood."""

from parametric.design.design import Design
from parametric.design.loading import Loaded, load, load_options
from parametric.design.options import Option

__all__ = ["Design", "Loaded", "Option", "load", "load_options"]
