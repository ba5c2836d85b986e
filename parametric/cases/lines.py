"""What stands in a case, as written: its bays from the left, its fronts from the top, its inside.

top to bottom: [door pair: rest, drawer: 220]            fronts, by their heights
inside: [shelf space: 350, hanging: rest, drawer: 200]   behind doors; a fixed shelf between each two
                                                         that are not both drawers
left to right: [bay: equal, bay drawers: 400]            a partition between each two
"""

from __future__ import annotations

from typing import Any, ClassVar, Literal, Self

from pydantic import Field, ModelWrapValidatorHandler, model_validator

from parametric.hangings.fronts import (
    CASE_FRONTS,
    BayLine,
    FrontLine,
    Written,
    names_one_thing,
)
from parametric.written import Block, Count, Group, Share

InsideKind = Literal["shelf space", "hanging", "drawer", "equipment"]
INSIDE: tuple[InsideKind, ...] = ("shelf space", "hanging", "drawer", "equipment")
"""What a case may hold behind its doors."""


class CaseLine(FrontLine):
    """One front of a case, or a stretch left open, with the shelves behind it."""

    words: ClassVar[tuple[str, ...]] = CASE_FRONTS
    not_built: ClassVar[tuple[str, ...]] = ()
    keys_beside: ClassVar[tuple[str, ...]] = ("leaf", "hinge side", "stay", "shelves")

    shelves: Count | None = Field(default=None, description="adjustable, behind this front")


class InsideLine(Group):
    """One space inside a case: what it is for, with its clear height, or how it shares."""

    shelf_space: Share | None = None
    hanging: Share | None = None
    drawer: Share | None = None
    equipment: Share | None = None
    shelves: Count | None = Field(default=None, description="adjustable, in a shelf space")

    @model_validator(mode="wrap")
    @classmethod
    def _one_space(cls, data: Any, handler: ModelWrapValidatorHandler[Self]) -> Self:
        names_one_thing(data, INSIDE, keys_beside=("shelves",))
        return handler(data)

    @property
    def space(self) -> InsideKind:
        """What the space is for."""
        return next(word for word in INSIDE if self._share(word) is not None)

    @property
    def size(self) -> Written:
        """Its clear height, or how it shares."""
        size = self._share(self.space)
        assert size is not None
        return size

    def _share(self, word: str) -> Written | None:
        found: Written | None = getattr(self, word.replace(" ", "_"))
        return found


class CaseBayLine(BayLine):
    """One bay of a case: its clear width, or how it shares, and what stands in it."""

    words: ClassVar[tuple[str, ...]] = ("bay", *CASE_FRONTS)
    not_built: ClassVar[tuple[str, ...]] = ()
    keys_beside: ClassVar[tuple[str, ...]] = (
        "leaf",
        "hinge side",
        "stay",
        "top to bottom",
        "inside",
        "shelves",
    )

    top_to_bottom: tuple[CaseLine, ...] | None = Field(
        default=None, description="the fronts of the bay"
    )
    inside: tuple[InsideLine, ...] | None = None
    shelves: Count | None = Field(default=None, description="adjustable, in the whole bay")

    @model_validator(mode="after")
    def _has_fronts(self) -> Self:
        """A bay of a case may be open: it needs no list."""
        return self


class BaySpec(Block):
    """A bay as its own block: what stands in it, one thing over the other."""

    top_to_bottom: tuple[CaseLine, ...] | None = None
    inside: tuple[InsideLine, ...] | None = None
    shelves: Count | None = None
