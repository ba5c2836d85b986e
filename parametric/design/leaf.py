"""A leaf as written: its timber, its stiles, and what it is made of from top to bottom."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import Annotated, Any, Literal, Self, get_args

from pydantic import (
    Field,
    ModelWrapValidatorHandler,
    PlainValidator,
    TypeAdapter,
    WithJsonSchema,
    model_validator,
)

from parametric.figures import Figure
from parametric.names import nearest
from parametric.written import (
    Block,
    Branch,
    Count,
    Equal,
    Group,
    Length,
    Name,
    Parts,
    Pins,
    Rest,
    Share,
    Text,
    refuse,
    text_of,
)

RAILS: tuple[str, ...] = (
    "top rail",
    "dividing rail",
    "lock rail",
    "mid rail",
    "frieze rail",
    "bottom rail",
    "rail",
)
INFILLS: tuple[str, ...] = ("lite", "panel")
"""What this version can put between two rails."""
INFILLS_NOT_BUILT: tuple[str, ...] = ("planks", "slats")
PinKey = Literal["centre", "top", "bottom"]
PIN_KEYS: tuple[PinKey, ...] = get_args(PinKey)
"""What a rail may be held by."""
_BESIDE_RAIL: tuple[str, ...] = (*PIN_KEYS, "tenons", "underside")
_BESIDE_INFILL: tuple[str, ...] = ("wide", "high", "of")


_LENGTH: TypeAdapter[Figure] = TypeAdapter(Length)
_NAME: TypeAdapter[Text] = TypeAdapter(Name)


def _height(value: object) -> Figure | Text:
    text = text_of(value, "a height, or a line of the survey by name")
    return (_NAME if re.match(r"[a-z]", text) else _LENGTH).validate_python(text)


Height = Annotated[
    Figure | Text,
    PlainValidator(_height),
    WithJsonSchema(
        {
            "type": ["string", "number"],
            "description": "a height, or a line of the survey by name",
        }
    ),
]
"""A height in mm, or a line of the room by its name."""

MOST_PANES = 12
"""In a row or a column; more is a slip of the pen. Common practice, no source."""


class Band(Group):
    """One line of a leaf's list: a rail with its size, or what stands between two rails."""

    top_rail: Length | None = None
    dividing_rail: Length | None = None
    lock_rail: Length | None = None
    mid_rail: Length | None = None
    frieze_rail: Length | None = None
    bottom_rail: Length | None = None
    rail: Length | None = None
    lite: Share | None = None
    panel: Share | None = None
    centre: Height | None = Field(default=None, description="held at this height: its middle")
    top: Height | None = Field(default=None, description="held at this height: its upper edge")
    bottom: Height | None = Field(default=None, description="held at this height: its lower edge")
    tenons: Count | None = None
    underside: Literal["straight", "arch"] | None = None
    wide: Count | None = Field(default=None, description="panes side by side")
    high: Count | None = Field(default=None, description="panes one over the other")
    of: Name | None = Field(default=None, description="the panel or glass block it is made by")

    @model_validator(mode="wrap")
    @classmethod
    def _one_thing(cls, data: Any, handler: ModelWrapValidatorHandler[Self]) -> Self:
        if isinstance(data, (dict, Branch)):
            _names_one_thing(list(data))
        elif isinstance(data, str):
            raise _no_colon(data)
        return handler(data)

    @property
    def kind(self) -> str:
        """What the line names: `lock rail`, `lite`."""
        return next(word for word in (*RAILS, *INFILLS) if self._written(word) is not None)

    @property
    def pin(self) -> tuple[PinKey, Figure | Text] | None:
        """What the rail is held by, and at which height or line of the room."""
        for key in PIN_KEYS:
            if (at := getattr(self, key)) is not None:
                return key, at
        return None

    @property
    def is_rail(self) -> bool:
        """True for wood across the leaf, False for what stands between."""
        return self.kind in RAILS

    @property
    def size(self) -> Figure | Equal | Rest | Parts:
        """How high it is, or how it shares."""
        size = self._written(self.kind)
        assert size is not None
        return size

    def _written(self, word: str) -> Figure | Equal | Rest | Parts | None:
        found: Figure | Equal | Rest | Parts | None = getattr(self, word.replace(" ", "_"))
        return found


def _no_colon(written: str) -> Exception:
    things = "|".join((*RAILS, *INFILLS, *INFILLS_NOT_BUILT))
    if loose := re.fullmatch(rf"({things})(?: ?[:=]? ?(\S.*))?", written):
        fix = f"- {loose[1]}: {loose[2] or 'its size'}"
        return refuse(
            "no_colon",
            f"A colon is missing: write `{fix}`.",
            found=written,
            allowed="- key: value",
            fix=f"Write `{fix}`.",
        )
    return refuse(
        "no_colon",
        f'"{written}" is no line of this list: each line is `- lock rail: 150`.',
        found=written,
        allowed="- key: value",
    )


def _names_one_thing(keys: list[str]) -> None:
    """Refuse a line that names nothing that a leaf has, or two things at once."""
    named = [key for key in keys if key in (*RAILS, *INFILLS)]
    unbuilt = [key for key in keys if key in INFILLS_NOT_BUILT]
    if unbuilt:
        raise refuse(
            "not_built_yet",
            f'"{unbuilt[0]}" in a leaf cannot be built by this version yet.',
            found=unbuilt[0],
            allowed=", ".join((*RAILS, *INFILLS)),
        )
    if len(named) > 1:
        raise refuse(
            "two_things",
            f"One line names one thing; this one names {' and '.join(named)}.",
            found=", ".join(named),
            allowed="one of them",
            fix="Begin each with its own dash.",
        )
    if not named:
        allowed = (*RAILS, *INFILLS)
        odd = next((key for key in keys if key not in (*_BESIDE_RAIL, *_BESIDE_INFILL)), None)
        close = nearest(odd, allowed, 0.5) if odd else None
        raise refuse(
            "unknown_key",
            f'No such thing as "{odd}" in the list of {{heading}}.'
            + (f' Did you mean "{close}"?' if close else "")
            if odd
            else "This line of the list does not say what it is: begin with a rail, a lite or a panel.",
            found=odd or "",
            allowed=", ".join(allowed),
        )
    beside = _BESIDE_RAIL if named[0] in RAILS else _BESIDE_INFILL
    other = _BESIDE_INFILL if named[0] in RAILS else _BESIDE_RAIL
    if wrong := next((key for key in keys if key in other), None):
        raise refuse(
            "unknown_key",
            f'A {named[0]} takes no "{wrong}".',
            found=wrong,
            allowed=", ".join(beside),
        )


class Stiles(Group):
    """Stiles of different widths: by side, or by what their edges do."""

    left: Length | None = None
    right: Length | None = None
    hinge: Length | None = None
    meeting: Length | None = None
    closing: Length | None = None
    back: Length | None = None

    @model_validator(mode="after")
    def _both(self) -> Self:
        given = [word for word in type(self).model_fields if getattr(self, word) is not None]
        pairs = ({"left", "right"}, {"hinge", "meeting"}, {"hinge", "closing"}, {"closing", "back"})
        if set(given) in pairs:
            return self
        raise refuse(
            "two_stiles",
            "A leaf has two stiles; {key} takes both: `{left: 120, right: 110}`, or by what "
            "their edges do.",
            found=", ".join(given) or "nothing",
            allowed="left and right, hinge and meeting, hinge and closing, closing and back",
        )


class LeafSpec(Block):
    """A framed leaf as written."""

    timber: Name
    sawn: Literal["flat", "quarter"] = Field(description="how the boards were sawn from the log")
    thickness: Length
    stiles: Length | Stiles = Field(description="width of each stile")
    sticking: Name | None = Field(
        default=None, description="square, a kind of moulding, or the name of a sticking block"
    )
    trim: Length = Field(description="waste on each end, sawn off after glue-up")
    site_trim: Length = Field(description="the most that may be planed off on site")
    top_to_bottom: tuple[Band, ...]
    panel: Name | None = None
    glass: Name | None = None
    joint: Name | None = None
    arch: Name | None = None
    pinned: Pins | None = None

    def stile_widths(self, edges: tuple[str, str]) -> tuple[Figure, Figure]:
        """Left and right stile, by side or by what the leaf's edges do, mm.

        A stile that no edge answers to is as wide as the other: a leaf that hangs between two
        others has a fold on either side.
        """
        if isinstance(self.stiles, Figure):
            return (self.stiles, self.stiles)
        stiles = self.stiles
        if stiles.left is not None and stiles.right is not None:
            return (stiles.left, stiles.right)
        hung = stiles.hinge if stiles.hinge is not None else stiles.back
        other = stiles.meeting if stiles.meeting is not None else stiles.closing
        assert hung is not None, "the reader has seen to that"
        assert other is not None, "the reader has seen to that"
        carries = ("hinge", "pivot", "fold", "back")
        return (
            hung if edges[0] in carries else other,
            hung if edges[1] in carries else other,
        )

    @property
    def rails(self) -> tuple[Band, ...]:
        """The rails, from the top."""
        return tuple(band for band in self.top_to_bottom if band.is_rail)

    @model_validator(mode="after")
    def _reads_as_a_leaf(self) -> Self:
        _shares_once(self.top_to_bottom)
        _rails_at_both_ends(self.top_to_bottom)
        return self


def _lines(bands: list[Band]) -> str:
    lines = [str(band.line(band.kind).line) for band in bands]
    return f"lines {', '.join(lines[:-1])} and {lines[-1]}"


def _shares_once(bands: tuple[Band, ...]) -> None:
    """One `rest` at most, and proportions never beside equals."""
    rests = [band for band in bands if isinstance(band.size, Rest)]
    if len(rests) > 1:
        raise refuse(
            "rest_twice",
            f'"rest" stands on {_lines(rests)}; only one can take what is left. '
            f'Did you mean "equal" on {"both" if len(rests) == 2 else "all"}?',
            found=f"{len(rests)} times rest",
            allowed="rest once",
            fix='Write "equal" on each, or give all but one a size.',
            where=rests[1].line(rests[1].kind),
        )
    parts = [band for band in bands if isinstance(band.size, Parts)]
    others = [band for band in bands if isinstance(band.size, (Rest, Equal))]
    if parts and others:
        first, second = sorted((parts[0], others[0]), key=lambda band: band.line(band.kind).line)
        raise refuse(
            "shares_mixed",
            f"Parts stand beside equal or rest on {_lines([first, second])}; they never mix.",
            found=f"{first.kind} and {second.kind}",
            allowed="all of them in parts, or none",
            fix="Write all of them as parts, or none.",
            where=second.line(second.kind),
        )


def _rails_at_both_ends(bands: tuple[Band, ...]) -> None:
    if len(bands) < 2 or not bands[0].is_rail or not bands[-1].is_rail:
        end = "top" if not bands or not bands[0].is_rail else "bottom"
        raise refuse(
            "no_end_rail",
            f"The list of {{heading}} has no rail at the {end}; a leaf's list begins and ends "
            "with a rail.",
            found=f"no {end} rail",
            allowed="a rail at both ends",
            fix=f"Add `- {end} rail: ` and its size.",
        )
    for above, below in pairwise(bands):
        if not above.is_rail and not below.is_rail:
            raise refuse(
                "no_rail_between",
                f"A {above.kind} and a {below.kind} stand on {_lines([above, below])} with no "
                "rail between them.",
                found=f"{above.kind}, {below.kind}",
                allowed="a rail between",
                fix="Write a rail between the two.",
                where=below.line(below.kind),
            )
