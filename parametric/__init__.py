"""stilewright: one measured design file for made-to-measure doors, to everything a shop needs.

The public interface, all of it::

    loaded = load(Path("design.yaml"))            # text to Spec and Shop
    resolved, problems = resolve(loaded.design, loaded.shop)
    assembly = make_parts(resolved)               # every piece with its cuts
    job = check(Path("design.yaml"))              # all of these, and the rules
    built = build(Path("design.yaml"))            # and the job pack on disk

Nothing here loads the CAD kernel until `build` needs a solid. Names are looked up when
they are first used, so that importing the package costs nothing.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from parametric.design import load
    from parametric.job import build, check
    from parametric.parts import make_parts
    from parametric.resolve.door import resolve

__all__ = ["build", "check", "load", "make_parts", "resolve"]

_HOMES = {
    "load": "parametric.design",
    "resolve": "parametric.resolve.door",
    "make_parts": "parametric.parts",
    "check": "parametric.job",
    "build": "parametric.job",
}


def __getattr__(name: str) -> Any:
    """The public functions, found when first asked for."""
    if name in _HOMES:
        import importlib

        return getattr(importlib.import_module(_HOMES[name]), name)
    raise AttributeError(f"module 'parametric' has no attribute {name!r}")
