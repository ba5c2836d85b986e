"""A run of cabinets along a wall, with fillers, so that it always adds up to the wall.

seen from the front
    wall                                                    wall
     |~~| cabinet outer | cabinet middle | cabinet outer |~~|
     |~~|_______________|________________|_______________|~~|   ~ filler, scribed to the wall
     |~~|     plinth, levelled to the floor              |~~|

A `space` stands between two cabinets where nothing is: room for knees, for a machine. A counter
goes over it; the plinth does not go through it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal, Self

from pydantic import ConfigDict, Field, ModelWrapValidatorHandler, model_validator

from parametric.cases.at_least import AtLeast, Filling, least_of
from parametric.figures import Figure, exceeds, named, origin_line, whole_down
from parametric.hangings.fronts import names_one_thing
from parametric.names import join
from parametric.problems import Problem
from parametric.units import Unit, length_text
from parametric.written import Block, Equal, Group, Length, Name, Parts, Pins, Rest, Share

_WORDS = ("filler", "cabinet", "space")


class RunLine(Group):
    """One line of a run: a filler, a cabinet by its heading with its width, or a space left free."""

    model_config = ConfigDict(
        json_schema_extra={"patternProperties": {"^cabinet .+$": {"type": ["string", "number"]}}}
    )

    filler: Filling | None = None
    cabinet: Share | None = None
    space: Share | None = None
    called: Name | None = None

    @property
    def share(self) -> Figure | Equal | Rest | Parts | None:
        """The width of its cabinet or its space as it is written; None for a filler."""
        return self.cabinet if self.space is None else self.space

    @model_validator(mode="wrap")
    @classmethod
    def _one_thing(cls, data: Any, handler: ModelWrapValidatorHandler[Self]) -> Self:
        names_one_thing(data, _WORDS, keys_beside=("called",))
        return handler(data)


class RunSpec(Block):
    """A run as written."""

    in_: Name | None = None
    above_floor: Length | None = Field(default=None, description="where it hangs on the wall")
    plinth: Length = Field(description="separate and levelled; above the highest floor")
    levelled_by: Literal["plinth", "legs"] = Field(
        description="a plinth of boards, or adjustable legs behind a plinth board"
    )
    plinth_back: Length = Field(description="how far its front stands back from the cases' fronts")
    top_filler: Filling | None = None
    round_widths: Length | None = Field(default=None, description="widths down to a whole of this")
    counter: Length | None = Field(default=None, description="how thick the counter on it is")
    overhang: Length = Field(description="of a counter past the fronts")
    cornice: Length | None = Field(default=None, description="how high a plain one over it is")
    board: Name | None = None
    left_to_right: tuple[RunLine, ...]
    pinned: Pins | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Across:
    """A run shared out, mm: each line's width, and where it begins from the left of the opening."""

    widths: tuple[Figure, ...]
    lefts: tuple[Figure, ...]
    over: Figure
    """What is left over, or missing, when nothing can take it."""


def share_run(spec: RunSpec, *, name: str, left: Figure, room: Figure) -> Across:
    """Share the plumb clear width out over a run's lines.

    Fillers take their least; cabinets that share are equal, or in parts, and rounded down;
    what rounding leaves goes to the fillers that say `at least`, alike.

    Args:
        spec: the run as written.
        name: what its numbers begin with (`run`).
        left: where the plumb clear width begins, mm.
        room: the plumb clear width, mm.
    """
    lines = spec.left_to_right
    given = room
    for line in lines:
        if line.filler is not None:
            given = given - least_of(line.filler)
        elif isinstance(line.share, Figure):
            given = given - line.share
    sharing = [line.share for line in lines if isinstance(line.share, (Equal, Rest, Parts))]
    parts = sum(float(share.count) if isinstance(share, Parts) else 1.0 for share in sharing)
    widths: list[Figure] = []
    for index, line in enumerate(lines):
        if line.filler is not None:
            widths.append(least_of(line.filler))
            continue
        share = line.share
        assert share is not None
        if isinstance(share, Figure):
            wide: Figure = share
        else:
            wide = given * share.count / parts if isinstance(share, Parts) else given / parts
            if spec.round_widths is not None and float(spec.round_widths) > 0:
                wide = whole_down(wide / spec.round_widths) * spec.round_widths
        widths.append(named(join(name, _place(lines, index), "width"), wide))
    over = room
    for wide in widths:
        over = over - wide
    flexible = [i for i, line in enumerate(lines) if isinstance(line.filler, AtLeast)]
    if flexible and not exceeds(0.0, over):
        for i in flexible:
            widths[i] = widths[i] + over / len(flexible)
        over = Figure(0.0)
    lefts: list[Figure] = []
    at = left
    for i, (line, wide) in enumerate(zip(lines, widths, strict=True)):
        if line.filler is not None:
            widths[i] = named(join(name, _filler(lines, i), "at the tightest"), wide)
        lefts.append(named(join(name, _place(lines, i), "begins"), at))
        at = at + widths[i]
    return Across(widths=tuple(widths), lefts=tuple(lefts), over=over)


def _filler(lines: tuple[RunLine, ...], index: int) -> str:
    if index == 0:
        return "left filler"
    if index == len(lines) - 1:
        return "right filler"
    return f"filler {sum(1 for line in lines[: index + 1] if line.filler is not None)}"


def _place(lines: tuple[RunLine, ...], index: int) -> str:
    """What a line's numbers are called by: cabinets and spaces are counted from the left."""
    line = lines[index]
    if line.filler is not None:
        return _filler(lines, index)
    if line.space is not None:
        return f"space {sum(1 for each in lines[: index + 1] if each.space is not None)}"
    return f"cabinet {sum(1 for each in lines[: index + 1] if each.cabinet is not None)}"


def run_faults(spec: RunSpec) -> tuple[Problem, ...]:
    """What cannot be of a run, whatever the wall: no cabinet, shares that do not go together."""
    lines = spec.left_to_right
    cabinets = [line for line in lines if line.cabinet is not None]
    if not cabinets:
        return (_fault(spec, "wrong_value", "A run holds at least one cabinet.", None),)
    unnamed = next((line for line in cabinets if line.called is None), None)
    rests = [line for line in lines if isinstance(line.share, Rest)]
    alike = [line for line in lines if isinstance(line.share, (Rest, Equal))]
    parts = [line for line in lines if isinstance(line.share, Parts)]
    beside = _filler_beside_a_space(lines)
    found = []
    if unnamed is not None:
        said = "A run's line calls a cabinet by its heading: `- cabinet base: 600`."
        found.append(_fault(spec, "unknown_name", said, unnamed))
    if beside is not None:
        said = "A filler stands beside no cabinet, and nothing is there to fix it to."
        found.append(_fault(spec, "filler_beside_space", said, beside))
    if len(rests) > 1:
        said = '"rest" takes what is left, and only one line can; write "equal" on each.'
        found.append(_fault(spec, "rest_twice", said, rests[1]))
    elif rests and len(alike) > 1:
        said = '"rest" stands beside "equal"; nothing says which takes what is left.'
        found.append(_fault(spec, "shares_mixed", said, rests[0]))
    if parts and alike:
        said = "Parts stand beside equal or rest; they never mix."
        found.append(_fault(spec, "shares_mixed", said, parts[0]))
    return tuple(found)


def _filler_beside_a_space(lines: tuple[RunLine, ...]) -> RunLine | None:
    """The first filler with no cabinet beside it."""
    return next(
        (
            line
            for index, line in enumerate(lines)
            if line.filler is not None
            and all(near.cabinet is None for near in lines[max(index - 1, 0) : index + 2])
        ),
        None,
    )


def run_misfits(spec: RunSpec, across: Across, *, room: Figure, unit: Unit) -> tuple[Problem, ...]:
    """A run that does not add up to its wall, or leaves a cabinet nothing."""
    lines = spec.left_to_right
    small = next(
        (
            line
            for line, wide in zip(lines, across.widths, strict=True)
            if line.share is not None and not exceeds(wide, 0.0)
        ),
        None,
    )
    over = float(across.over)
    if small is None and abs(over) <= 1e-6:
        return ()
    has, amount = length_text(float(room), unit), length_text(abs(over), unit)
    if small is not None or over < 0:
        said = f"The run is {amount} longer than the wall's {has}, fillers at their least."
        if small is not None:
            what = "cabinet" if small.space is None else "space"
            said = f"The wall is {has}, and nothing of it is left for a {what} of the run."
        fix = "Make a cabinet narrower, or leave one out."
    else:
        said = f"The run leaves {amount} of the wall's {has} over, and no filler takes it."
        fix = "Write a filler as `at least` a size, or one cabinet as `rest`."
    given = [line.share for line in lines if isinstance(line.share, Figure)]
    where = small.here if small else (origin_line(given[-1]) if given else spec.here)
    return (
        Problem(
            code="run_does_not_add_up",
            level="stop",
            message=said,
            where=where,
            about=spec.heading,
            found=amount,
            allowed=has,
            fix=fix,
        ),
    )


def _fault(spec: RunSpec, code: str, message: str, line: RunLine | None) -> Problem:
    return Problem(
        code=code,
        level="stop",
        message=message,
        where=spec.line("left to right") if line is None else line.here,
        about=spec.heading,
        found="left to right",
        allowed="cabinets by their headings, with fillers",
        fix="Write `- cabinet NAME: equal`, and `- filler: at least 30` at each wall.",
        unreadable=True,
    )
