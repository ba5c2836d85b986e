"""What one block calls: by name, or the unnamed one, or none at all."""

from __future__ import annotations

from typing import TypeVar

from parametric.design import Design
from parametric.design.language import SQUARE
from parametric.written import Block

Kind = TypeVar("Kind", bound=Block)


def called(design: Design, block: Block, kind: str, spec: type[Kind]) -> Kind | None:
    """The block of a kind that this one uses; None when it does without, or there is none.

    That a name which is written exists has been seen to by the reader.
    """
    name = getattr(block, kind)
    if name == (SQUARE if kind == "sticking" else "none"):
        return None
    found = design.block(kind, name)
    return found if isinstance(found, spec) else None
