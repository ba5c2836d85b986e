"""What each cut asks of a machine: the cutter, the fence, the depth that must be set for it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal, assert_never

from parametric.model import (
    By,
    Cut,
    Drilled,
    Face,
    Groove,
    Island,
    Mitre,
    Moulded,
    Part,
    Pocket,
    RaisedBevel,
    RoundArrises,
    RoundCorners,
    ScrewPocket,
    Shaped,
    Slot,
    Tongue,
    Trim,
    When,
)
from parametric.trade.cutlist import mitred_ends
from parametric.trade.groove_ends import runs_out
from parametric.trade.moulded_runs import run_sizes
from parametric.trade.shaped_sizes import bevel_of

Kind = Literal[
    "slot",
    "groove",
    "squaring",
    "pocket",
    "bore",
    "screw pocket",
    "trim",
    "mitre",
    "bevel",
    "tongue",
    "back rebate",
    "edges",
    "shape",
    "cope",
    "moulding",
]

_THICKNESS_FACES: tuple[Face, ...] = ("low end", "high end", "low edge", "high edge")


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """One cut at one setting, before it is counted: what must be equal for two to share it."""

    kind: Kind
    title: str
    by: By
    when: When
    tool: str
    cutter: float | None = None
    width: float | None = None
    length: float | None = None
    across: float | None = None
    fence_from: str = ""
    depth: float | None = None
    corner: float | None = None
    stopped: bool = False

    @property
    def key(self) -> tuple[object, ...]:
        """Equal for cuts that one setting makes; floats that differ in their last bits are equal."""
        sizes = (self.cutter, self.width, self.length, self.across, self.depth, self.corner)
        rounded = tuple(None if s is None else round(float(s), 6) for s in sizes)
        return (self.kind, self.title, self.by, self.when, self.tool, self.fence_from, *rounded)


def machine_work(cut: Cut, part: Part) -> Iterator[tuple[Work, str, str]]:
    """The settings that a cut needs, each with the word for its face and its place along it."""
    making = cut.making
    work = Work(
        kind="edges",
        title=cut.name.replace(",", ""),
        by=making.by,
        when=making.when,
        tool=making.tool,
        cutter=making.cutter,
    )
    match cut:
        case Slot():
            across, bears = _bearing(cut.face, cut.v, part)
            yield (
                replace(
                    work,
                    kind="slot",
                    title="loose-tenon slots",
                    width=cut.width,
                    length=cut.u1 - cut.u0,
                    across=across,
                    fence_from=bears,
                    depth=cut.depth,
                ),
                face_word(part, cut.face),
                "",
            )
        case Groove():
            yield from _groove(cut, part, work)
        case Pocket() if slot_across(cut, part):
            across, bears = _from_nearer_end(cut.u, part)
            yield (
                replace(
                    work,
                    kind="pocket",
                    title=f"{cut.name}s across the face",
                    width=cut.length,
                    length=cut.width,
                    across=across,
                    fence_from=bears,
                    depth=cut.depth,
                    corner=cut.corner,
                ),
                face_word(part, cut.face),
                f"{cut.face} {cut.u} {cut.v}",
            )
        case Pocket():
            yield (
                replace(
                    work,
                    kind="pocket",
                    title=f"{cut.name} pocket",
                    width=cut.width,
                    length=cut.length,
                    across=cut.v,
                    fence_from=face_word(part, "low edge"),
                    depth=cut.depth,
                    corner=cut.corner,
                ),
                face_word(part, cut.face),
                f"{cut.face} {cut.u} {cut.v}",
            )
        case Drilled():
            across, bears = _bearing(cut.face, cut.v, part)
            if cut.count > 1 and cut.along == "v":
                across, bears = _beside_row(cut, part)
            yield (
                replace(
                    work,
                    kind="bore",
                    width=cut.diameter,
                    across=across,
                    fence_from=bears,
                    depth=cut.depth - cut.surface,
                ),
                face_word(part, cut.face),
                f"{cut.face} {cut.u} {cut.v}",
            )
        case ScrewPocket():
            yield (
                replace(
                    work,
                    kind="screw pocket",
                    width=cut.wide,
                    length=cut.pilot,
                    across=cut.mouth,
                    fence_from="the end",
                    depth=cut.deep,
                ),
                face_word(part, cut.face),
                f"{cut.face} {cut.end} {cut.v}",
            )
        case Trim():
            yield (
                replace(work, kind="trim", title="trim the ends", depth=cut.length),
                face_word(part, cut.end),
                cut.end,
            )
        case Mitre():
            ends = "both ends" if mitred_ends(part) > 1 else "one end"
            yield replace(work, kind="mitre", title=f"mitre {ends}"), ends, cut.end
        case RaisedBevel():
            yield replace(work, kind="bevel", depth=cut.run), "all four edges", ""
        case Tongue():
            high = part.blank.thickness - cut.back - cut.thickness
            yield (
                replace(
                    work, kind="tongue", title="tongue face side", width=cut.length, depth=high
                ),
                "all four edges, face down",
                "",
            )
            if float(cut.back) > 0:
                yield (
                    replace(
                        work,
                        kind="back rebate",
                        title="tongue back rebate",
                        width=cut.length,
                        depth=cut.back,
                    ),
                    "all four edges, back down",
                    "",
                )
        case RoundArrises():
            yield replace(work, width=cut.radius), "four long edges", ""
        case RoundCorners():
            yield replace(work, width=cut.radius), "four corners", ""
        case Shaped():
            bevel = bevel_of(cut, part.blank)
            yield (
                replace(work, kind="shape", depth=cut.depth - cut.surface),
                # a bevel is outlined on the end, and planed along the edge
                face_word(part, cut.face if bevel is None else bevel.edge),
                # each is a cut of its own, however many a leaf has
                f"{part.name} {cut.face} {cut.outline[0][:2]}",
            )
        case Moulded():
            own = run_sizes(cut, part.blank)
            across = own.beside in ("low end", "high end")
            yield (
                replace(
                    work,
                    kind="cope" if across else "moulding",
                    width=own.width,
                    depth=own.depth,
                ),
                f"{face_word(part, own.beside)}, {face_word(part, cut.face)}",
                "",
            )
        case Island():
            yield replace(work, depth=cut.depth), face_word(part, cut.face), ""
        case _:
            assert_never(cut)


def _beside_row(cut: Drilled, part: Part) -> tuple[float, str]:
    """How far a row that runs across is from the edge or the nearer end, and the word for that."""
    if cut.face in ("low end", "high end"):
        return cut.u, face_word(part, "low edge")
    return _from_nearer_end(cut.u, part)


def _from_nearer_end(along: float, part: Part) -> tuple[float, str]:
    """How far what lies across a piece is from the nearer end of it, and the word for that."""
    if float(along) <= float(part.blank.length) / 2:
        return along, face_word(part, "low end")
    return part.blank.length - along, face_word(part, "high end")


def slot_across(cut: Pocket, part: Part) -> bool:
    """Whether a pocket is a slot with round ends, across a broad face and not through it."""
    broad = cut.face in ("low face", "high face")
    round_ended = abs(float(cut.length) - 2 * float(cut.corner)) < 1e-6
    return (
        broad
        and round_ended
        and float(cut.width) > float(cut.length)
        and float(cut.depth) < float(part.blank.thickness) - 1e-6
    )


def _groove(cut: Groove, part: Part, work: Work) -> Iterator[tuple[Work, str, str]]:
    across, bears = _bearing(cut.face, cut.v, part)
    word = face_word(part, cut.face)
    yield (
        replace(
            work,
            kind="groove",
            width=cut.width,
            across=across,
            fence_from=bears,
            depth=cut.depth - cut.surface,
            stopped=stopped(cut, part),
        ),
        word,
        "foot",
    )
    if cut.squared:
        yield (
            Work(
                kind="squaring",
                title=f"square the ends of the {cut.name}",
                by="bench",
                when=work.when,
                tool="chisel",
                width=cut.width,
                depth=cut.depth - cut.surface,
            ),
            word,
            "",
        )


def stopped(cut: Groove, part: Part) -> bool:
    """Whether a groove ends inside the wood at either end."""
    if cut.face in ("low end", "high end"):
        return False
    return not all(runs_out(cut, part.blank, part.cuts))


def _bearing(face: Face, across: float, part: Part) -> tuple[float, str]:
    """How far a cut's middle is from the face of the piece, and the word for what bears.

    Through the thickness it is measured from the face; across a broad face, from its edge.
    """
    if face not in _THICKNESS_FACES:
        return across, face_word(part, "low edge")
    if part.faces.get("high face") == "face":
        return part.blank.thickness - across, "face"
    return across, face_word(part, "low face")


def face_word(part: Part, face: Face) -> str:
    """The shop's word for a face, else the plain one."""
    return part.faces.get(face, face)
