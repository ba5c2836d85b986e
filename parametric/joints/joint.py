"""What is written of every joint between a rail and a stile: its kind, which each kind says itself."""

from __future__ import annotations

from parametric.written import Block


class JointBlock(Block):
    """A joint as written."""

    kind: str
