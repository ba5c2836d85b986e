"""What a case's front is shared out into, as written: bays beside one another, fronts in each.

left to right:                      one bay a line, a partition of the case between each two
  - door: equal                     a bay with one front in it
  - bay drawers: 400                a bay as its own block says
  - {bay: equal, top to bottom: [drawer: 140, door pair: rest]}
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, ClassVar, Literal, Self

from pydantic import ConfigDict, Field, ModelWrapValidatorHandler, model_validator

from parametric.figures import Figure
from parametric.names import nearest
from parametric.written import (
    Branch,
    Equal,
    Group,
    Name,
    Parts,
    Rest,
    Share,
    refuse,
    spoken,
)

FrontKind = Literal["door", "door pair", "drawer", "fixed front", "open", "flap"]
FRONTS: tuple[FrontKind, ...] = ("door", "door pair", "drawer", "fixed front", "open")
"""What may stand in a bay of any case; `open` leaves its share of the bay without a front."""
CASE_FRONTS: tuple[FrontKind, ...] = (*FRONTS, "flap")
"""The same of a case that is made with them: a flap's hinges and stays are bored in its boards."""
FRONTS_NOT_BUILT: tuple[str, ...] = ("flap",)
DOORS: tuple[FrontKind, ...] = ("door", "door pair")
"""Doors, which hang by an upright edge."""
HINGED: tuple[FrontKind, ...] = (*DOORS, "flap")
"""Those that hang on hinges."""
Written = Figure | Equal | Rest | Parts
"""A share as it is written."""
HingeSide = Literal["left", "right", "top", "bottom"]
"""The edge that a front hangs by: a door by an upright one, a flap by a level one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Front:
    """One front of a bay as it is asked for; `line` is where it is written."""

    kind: FrontKind
    size: Written
    leaf: Name | None
    hinge: HingeSide | None
    line: Group
    stay: Name | None = None


class FrontLine(Group):
    """One line of a bay's list: a front with its height, or how it shares."""

    words: ClassVar[tuple[str, ...]] = FRONTS
    not_built: ClassVar[tuple[str, ...]] = FRONTS_NOT_BUILT
    keys_beside: ClassVar[tuple[str, ...]] = ("leaf", "hinge side")

    door: Share | None = None
    door_pair: Share | None = None
    drawer: Share | None = None
    fixed_front: Share | None = None
    open: Share | None = None
    flap: Share | None = None
    leaf: Name | None = None
    hinge_side: HingeSide | None = Field(
        default=None,
        description="of a single door, seen from the front, or top or bottom of a flap",
    )
    stay: Name | None = Field(default=None, description="what holds a flap open")

    @model_validator(mode="wrap")
    @classmethod
    def _one_front(cls, data: Any, handler: ModelWrapValidatorHandler[Self]) -> Self:
        names_one_thing(data, cls.words, cls.keys_beside, cls.not_built)
        return handler(data)

    @property
    def front(self) -> FrontKind:
        """What the line names."""
        return next(word for word in CASE_FRONTS if self._share(word) is not None)

    @property
    def size(self) -> Written:
        """Its height or width, or how it shares."""
        size = self._share(self.front)
        assert size is not None
        return size

    def _share(self, word: str) -> Written | None:
        found: Written | None = getattr(self, word.replace(" ", "_"))
        return found


class BayLine(Group):
    """One line of a case's list: a bay with its clear width, or how it shares."""

    model_config = ConfigDict(
        json_schema_extra={
            "patternProperties": {"^bay .+$": {"type": ["string", "number"]}},
        }
    )
    words: ClassVar[tuple[str, ...]] = ("bay", *FRONTS)
    not_built: ClassVar[tuple[str, ...]] = FRONTS_NOT_BUILT
    keys_beside: ClassVar[tuple[str, ...]] = ("leaf", "hinge side", "top to bottom")

    door: Share | None = None
    door_pair: Share | None = None
    drawer: Share | None = None
    fixed_front: Share | None = None
    open: Share | None = None
    flap: Share | None = None
    bay: Share | None = None
    leaf: Name | None = None
    hinge_side: HingeSide | None = Field(
        default=None,
        description="of the single doors in it, seen from the front, or of a flap",
    )
    stay: Name | None = Field(default=None, description="what holds a flap open")
    top_to_bottom: tuple[FrontLine, ...] | None = Field(
        default=None, description="the fronts of a bay"
    )

    @model_validator(mode="wrap")
    @classmethod
    def _one_bay(cls, data: Any, handler: ModelWrapValidatorHandler[Self]) -> Self:
        names_one_thing(data, cls.words, cls.keys_beside, cls.not_built)
        return handler(data)

    @model_validator(mode="after")
    def _has_fronts(self) -> Self:
        if self.bay is not None and not self.top_to_bottom:
            raise refuse(
                "missing_block",
                "A bay stands in {heading}, but there is no block to say what is in it.",
                found="bay",
                allowed="a block `bay:`, or `top to bottom` beside it",
                fix="Write `bay:` at the margin with `top to bottom: [drawer: 140, door: rest]`.",
            )
        if self.bay is None and self.top_to_bottom:
            raise refuse(
                "two_things",
                "A line of one front takes no list of others: begin it with `bay: `.",
                found="top to bottom",
                allowed="bay",
            )
        return self

    @property
    def word(self) -> str:
        """What the line names."""
        words = ("bay", *CASE_FRONTS)
        return next(w for w in words if getattr(self, w.replace(" ", "_")) is not None)

    @property
    def size(self) -> Written:
        """Its clear width, or how it shares."""
        found: Written = getattr(self, self.word.replace(" ", "_"))
        return found

    @property
    def fronts(self) -> tuple[Front, ...]:
        """What stands in it, from the top."""
        if self.top_to_bottom is None:
            kind = next(word for word in CASE_FRONTS if word == self.word)
            return (
                Front(
                    kind=kind,
                    size=Rest(),
                    leaf=self.leaf,
                    hinge=self.hinge_side,
                    line=self,
                    stay=self.stay,
                ),
            )
        return tuple(
            Front(
                kind=line.front,
                size=line.size,
                leaf=line.leaf or self.leaf,
                hinge=line.hinge_side or self.hinge_side,
                line=line,
                stay=line.stay or self.stay,
            )
            for line in self.top_to_bottom
        )


def names_one_thing(
    data: Any,
    words: tuple[str, ...],
    keys_beside: tuple[str, ...],
    not_built: tuple[str, ...] = (),
) -> None:
    """Refuse a line that names nothing a case has, or two things at once."""
    if not isinstance(data, (dict, Branch)):
        raise refuse(
            "no_colon",
            f"A colon is missing: each line of this list is `- {words[0]}: equal`.",
            found=str(data)[:60],
            allowed="- key: value",
            fix=f"Write `- {words[0]}: ` and its size.",
        )
    keys = [spoken(str(key)) for key in data]
    if unbuilt := next((key for key in keys if key in not_built), None):
        raise refuse(
            "not_built_yet",
            f'"{unbuilt}" in a case cannot be built by this version yet.',
            found=unbuilt,
            allowed=", ".join(words),
        )
    of_a_block = tuple(f"{word} " for word in ("bay", "cabinet") if word in words)
    if missing := next((key for key in keys if key.startswith(of_a_block)), None):
        raise refuse(
            "unknown_name",
            f'{{heading}} uses "{missing}", but there is no block "{missing}".',
            found=missing,
            allowed=f"a block `{missing}:`",
            fix=f"Write a block `{missing}:` at the margin, or call one that is there.",
        )
    if odd := next((key for key in keys if key not in (*words, *keys_beside)), None):
        near = nearest(odd, (*words, *keys_beside), 0.5)
        raise refuse(
            "unknown_key",
            f'No such thing as "{odd}" in the list of {{heading}}.'
            + (f' Did you mean "{near}"?' if near else ""),
            found=odd,
            allowed=", ".join((*words, *keys_beside)),
        )
    found = [key for key in keys if key in words]
    if len(found) > 1:
        raise refuse(
            "two_things",
            f"One line names one thing; this one names {' and '.join(found)}.",
            found=", ".join(found),
            allowed="one of them",
            fix="Begin each with its own dash.",
        )
    if not found:
        raise refuse(
            "unknown_key",
            "This line of the list does not say what it is: begin with " + _either(words) + ".",
            found=", ".join(keys),
            allowed=", ".join(words),
        )


def _either(words: tuple[str, ...]) -> str:
    return f"{', '.join(words[:-1])} or {words[-1]}"
