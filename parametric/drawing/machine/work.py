"""What the pages of the machine print: each set-up as its file has it, and what no file makes."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.figures import Figure

Corner = tuple[float, float, float]
"""x, y and the bulge of the side that leaves it: the tangent of a quarter of its arc's angle."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MachineCut:
    """One outline of a file, from its datum, mm: where it begins and ends each way.

    `beyond` is from its far end to the right end of the piece. Of bored holes it is the first;
    the row's `others` go with it, and `middles` are those of the first and the last, x and y.
    """

    number: int
    name: str
    layer: str
    outline: tuple[Corner, ...]
    x: tuple[Figure, Figure]
    y: tuple[Figure, Figure]
    length: Figure
    width: Figure
    beyond: Figure
    others: tuple[tuple[Corner, ...], ...] = ()
    middles: tuple[tuple[Figure, ...], tuple[Figure, ...]] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class MachineTool:
    """One cutter at one depth, mm: the numbers of its cuts, and in how many passes.

    `corner` is the smallest inside corner it leaves, 0 where all are open; `across` the
    passes side by side that a groove wider than its cutter takes.
    """

    layer: str
    cuts: tuple[int, ...]
    cutter: Figure
    depth: Figure
    passes: Figure
    across: Figure
    corner: Figure
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Lies:
    """The shop's words for the six sides of the piece as it lies on the bed."""

    up: str
    down: str
    left: str
    right: str
    near: str
    away: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MachineSetUp:
    """One file: `length` along x, `width` along y and `thickness` of the stock, mm.

    `names` are the pieces it is run on, `turned` says of each that lies otherwise how;
    `clear` are the stretches along x in which no cutter comes within its own diameter.
    """

    number: int
    file: str
    title: str
    names: tuple[str, ...]
    turned: tuple[str, ...]
    length: Figure
    width: Figure
    thickness: Figure
    lies: Lies
    leaf: bool
    cuts: tuple[MachineCut, ...]
    tools: tuple[MachineTool, ...]
    clear: tuple[tuple[Figure, Figure], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ByHand:
    """A cut that no file makes, as the saw and bench list has it, its sizes as the job prints."""

    mark: str
    part: str
    count: int
    cut: str
    what: str
    by: str
    when: str
    tool: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MachineWork:
    """All set-ups of a job, and all that is left for saw and bench."""

    set_ups: tuple[MachineSetUp, ...]
    by_hand: tuple[ByHand, ...]
