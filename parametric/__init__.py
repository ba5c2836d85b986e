"""stilewright: one measured design file for made-to-measure doors, to everything a shop needs.

The public interface, all of it::

    loaded = load(Path("design.yaml"))            # text to Spec and Shop
    resolved, problems = resolve(loaded.design, loaded.shop)
    assembly = make_parts(resolved)               # every piece with its cuts
    job = check(Path("design.yaml"))              # all of these, and the rules
    built = build(Path("design.yaml"))            # and the job pack on disk

Nothing here loads the CAD kernel until `build` needs a solid.
"""

from parametric.design import load
from parametric.job import build, check
from parametric.parts import make_parts
from parametric.resolve.door import resolve

__all__ = ["build", "check", "load", "make_parts", "resolve"]
