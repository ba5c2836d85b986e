"""The milling list: every cut of the job, grouped by the setting of the machine that makes it.

A setting is a cutter, a fence and a depth. Whatever runs at it runs together, a spare first,
so that no setting is ever made twice. Each piece bears with its face on the fence or the
table, and is never turned to its back: what is off the middle is then off alike in all.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from parametric.catalog.bench import (
    BEVEL_TRIAL_RUNS,
    CUT_A_PASS,
    MITRES_IN_A_FRAME,
    SPARES,
    TEST_PIECE,
)
from parametric.figures import Figure, named, whole_up
from parametric.model import (
    Assembly,
    By,
    Drilled,
    Groove,
    Part,
    RaisedBevel,
    ScrewPocket,
    Shaped,
    When,
)
from parametric.names import join
from parametric.trade.cautions import (
    CLAMPED,
    DADO,
    DUST,
    PLUNGED_CUT,
    ROUTER,
    SAW,
    STOPPED_CUT,
    TRACK_SAW,
    Cautions,
)
from parametric.trade.machine_work import Kind, Work, machine_work
from parametric.trade.shaped_sizes import bevel_of

_WHEN: tuple[When, ...] = ("before glue-up", "after glue-up", "on site")


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """What goes through at a setting: pieces of one mark, or glued leaves (no mark).

    `face` is the shop's words for what is cut; `cuts` is how many cuts all its pieces take;
    `covers` are the part and the place of each cut in it, so that none is forgotten.
    """

    mark: str
    noun: str
    face: str
    names: tuple[str, ...]
    cuts: int
    covers: tuple[tuple[str, int], ...]

    @property
    def pieces(self) -> int:
        """How many pieces."""
        return len(self.names)


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialPiece:
    """A piece of the job's own stock, mm, that goes through a setting before the job does.

    `section` is the mark of the part whose thickness and timber it has.
    """

    section: str
    number: Figure
    length: Figure
    width: Figure
    thickness: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """One setting of one machine, mm and degrees.

    `fence` is from the fence to the middle of the cutter, a figure for each pass across;
    `fence_from` says which face bears. `depth` is into the wood, in `depth_passes` steps.
    `length` is how far a slot or pocket runs, `edges` where a pocket begins and ends across,
    from what bears, `corner` the radius in its corners. A figure is None where nothing is set.
    """

    code: str
    kind: Kind
    title: str
    by: By
    when: When
    tool: str
    cutter: Figure | None
    width: Figure | None
    length: Figure | None
    fence: tuple[Figure, ...]
    fence_from: str
    shift: Figure | None
    edges: tuple[Figure, ...]
    corner: Figure | None
    depth: Figure | None
    depth_passes: Figure | None
    stopped: bool
    runs: tuple[Run, ...]
    cuts: Figure
    spares: Figure
    trial: TrialPiece | None
    cautions: Cautions

    @property
    def passes(self) -> int:
        """How many passes across."""
        return max(1, len(self.fence))

    @property
    def marks(self) -> tuple[str, ...]:
        """What runs at it: marks, or leaves."""
        return tuple(dict.fromkeys(run.mark or run.noun for run in self.runs))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Piece:
    """Where a cut was met: its part, the leaf that the part stands in, its place in the part."""

    part: Part
    leaf: str
    index: int
    face: str
    along: str
    """What tells cuts of one glued leaf apart: a groove across three parts is one cut."""


_TURNS: Mapping[Kind, int] = {"edges": 0, "cope": 2, "moulding": 3}
"""Slots are cut while ends and edges are square; ends are coped before edges are moulded, so that
what breaks out is run off. Everything else comes between. Source: common practice, no source."""


def milling_list(assembly: Assembly) -> tuple[Setting, ...]:
    """Every cut of every made part at its setting, in the order the settings are made.

    Before glue-up first, and there in the order of the parts; but the loose tenons come
    before their slots, which are tried with one. Where a leaf is glued, the leaf is the
    piece: a groove that crosses its stiles and rail is one cut.

    Source: arithmetic; one spare a setting and the depth of a pass are common practice.
    """
    works: dict[tuple[object, ...], tuple[Work, list[_Piece]]] = {}
    for group in assembly.groups:
        for part in group.parts:
            # the glazier cuts the glass: no machine of ours is set for it
            if part.supplied or part.material.look == "glass":
                continue
            for index, cut in enumerate(part.cuts):
                for work, face, along in machine_work(cut, part):
                    piece = _Piece(part=part, leaf=group.name, index=index, face=face, along=along)
                    works.setdefault(work.key, (work, []))[1].append(piece)
    ordered = sorted(
        works.values(),
        key=lambda found: (
            _WHEN.index(found[0].when),
            _TURNS.get(found[0].kind, 1),
            _turn(found[0], found[1][0]),
        ),
    )
    return tuple(
        _setting(f"M{number}", work, pieces) for number, (work, pieces) in enumerate(ordered, 1)
    )


def _turn(work: Work, piece: _Piece) -> int:
    """What waits for another in a glued leaf: an edge is planed before anything is let into it.

    A lock's bores come before its mortise, and its plate is marked from the lock in its
    mortise. Source: common practice, no source.
    """
    cut = piece.part.cuts[piece.index]
    if work.when != "after glue-up" or not isinstance(cut, Shaped):
        return 0
    if bevel_of(cut, piece.part.blank) is not None:
        return 1
    if cut.name.endswith("bore"):
        return 2
    return 3 if cut.name in ("lock mortise", "strike box") else 4


# --- counted and named ---------------------------------------------------------------------


def _setting(code: str, work: Work, pieces: list[_Piece]) -> Setting:
    place = join("milling", f"{code} {work.title}")

    def at(quantity: str, value: float | None, unit: str = "mm") -> Figure | None:
        return None if value is None else named(join(place, quantity), value, unit)

    runs = _runs(work, pieces)
    depth = at("depth", work.depth)
    cutter = at("cutter", work.cutter)
    shift, fence = _passes(place, work)
    half = None if work.width is None else work.width / 2
    return Setting(
        code=code,
        kind=work.kind,
        title=work.title,
        by=work.by,
        when=work.when,
        tool=work.tool,
        cutter=cutter,
        width=at("width", work.width),
        length=at("length", work.length),
        fence=fence,
        fence_from=work.fence_from,
        shift=shift,
        edges=()
        if work.kind != "pocket" or half is None
        else (
            named(join(place, "near edge"), fence[0] - half),
            named(join(place, "far edge"), fence[0] + half),
        ),
        corner=at("corner radius", work.corner),
        depth=depth,
        depth_passes=None
        if depth is None or cutter is None
        else at("depth passes", whole_up(depth / (cutter * CUT_A_PASS)), ""),
        stopped=work.stopped or work.kind == "slot",
        runs=runs,
        cuts=named(join(place, "cuts"), Figure(sum(run.cuts for run in runs), unit=""), ""),
        spares=named(join(place, "spares"), _spares(work), ""),
        trial=_trial_piece(place, work, pieces[0].part),
        cautions=_cautions(work),
    )


def _passes(place: str, work: Work) -> tuple[Figure | None, tuple[Figure, ...]]:
    """Fence to the cutter's middle, a pass each; a cutter as wide as its cut needs one.

    One pass clears the cutter's width; each further one at most as much again.
    """
    if work.across is None:
        return None, ()
    middle = named(join(place, "fence to middle"), work.across)
    if work.cutter is None or work.width is None or work.kind != "groove":
        return None, (middle,)
    spare = work.width - named(join(place, "cutter"), work.cutter)
    passes = named(join(place, "passes"), whole_up(spare / work.cutter) + 1, "")
    if int(passes) == 1:
        return None, (middle,)
    shift = named(join(place, "shift a pass"), spare / (passes - 1))
    first = middle - spare / 2
    return shift, tuple(
        named(join(place, f"fence pass {number + 1}"), first + number * shift)
        for number in range(int(passes))
    )


def _runs(work: Work, pieces: list[_Piece]) -> tuple[Run, ...]:
    """Pieces by mark; by leaf once it is glued."""
    found: dict[tuple[str, str], list[_Piece]] = {}
    for piece in pieces:
        early = work.when == "before glue-up"
        key = (piece.part.mark, piece.part.noun) if early else ("", piece.leaf)
        found.setdefault(key, []).append(piece)
    return tuple(_run(work, *key, own) for key, own in found.items())


def _leaf_face(work: Work, piece: _Piece) -> str:
    """The word for a glued leaf's face: its parts each say it their own way."""
    match work.kind:
        case "groove":
            return "foot"
        case "trim":
            return "foot and top"
        case _:
            return piece.face


def _run(work: Work, mark: str, noun: str, own: list[_Piece]) -> Run:
    early = work.when == "before glue-up"
    faces = dict.fromkeys(piece.face if early else _leaf_face(work, piece) for piece in own)
    names = tuple(dict.fromkeys(piece.part.name if early else piece.leaf for piece in own))
    return Run(
        mark=mark,
        noun=noun,
        face=" and ".join(sorted(faces) if work.kind == "pocket" else faces),
        names=names,
        cuts=sum(_strokes(work, piece) for piece in own)
        if early
        else len({piece.along for piece in own}),
        covers=tuple((piece.part.name, piece.index) for piece in own),
    )


def _strokes(work: Work, piece: _Piece) -> int:
    """How often one piece meets the cutter for one cut."""
    match work.kind:
        case "bevel" | "tongue" | "back rebate" | "edges":
            return 4
        case "squaring":
            cut = piece.part.cuts[piece.index]
            assert isinstance(cut, Groove)
            return (float(cut.u0) > 1e-6) + (float(cut.u1) < float(piece.part.blank.length) - 1e-6)
        case "bore":
            cut = piece.part.cuts[piece.index]
            assert isinstance(cut, Drilled)
            return cut.count
        case "screw pocket":
            cut = piece.part.cuts[piece.index]
            assert isinstance(cut, ScrewPocket)
            return cut.count
        case "slot" | "groove" | "pocket" | "trim" | "mitre" | "shape" | "cope" | "moulding":
            return 1


def _spares(work: Work) -> Figure:
    """One through every setting of a machine; a chisel sets nothing."""
    return Figure(0, unit="") if work.kind == "squaring" else SPARES


def _trial_piece(place: str, work: Work, part: Part) -> TrialPiece | None:
    """Long and wide enough to be held; between stop blocks as long as the piece itself.

    None where waste of the cut itself serves, or nothing is set. Source: common practice,
    no source.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(place, "test piece", quantity), value, unit)

    number = SPARES
    length: float = TEST_PIECE
    width: float = part.blank.width
    match work.kind:
        case "squaring" | "edges" | "trim" | "shape":
            return None
        case "groove" if work.stopped:
            length = part.blank.length
        case "bevel" | "tongue" | "back rebate":
            bevel = next(cut for cut in part.cuts if isinstance(cut, RaisedBevel))
            width = BEVEL_TRIAL_RUNS * bevel.run
        case "mitre":
            number = MITRES_IN_A_FRAME
        case "slot" | "groove" | "pocket" | "bore" | "screw pocket" | "cope" | "moulding":
            pass
    return TrialPiece(
        section=part.mark,
        number=at("number", number, ""),
        length=at("length", length),
        width=at("width", width),
        thickness=at("thickness", part.blank.thickness),
    )


def trial_stock(settings: tuple[Setting, ...]) -> tuple[tuple[TrialPiece, tuple[str, ...]], ...]:
    """What to saw for trying the settings: settings that want the same piece share it.

    Returns:
        each with the codes of the settings that it serves.
    """
    found: dict[tuple[object, ...], tuple[TrialPiece, list[str]]] = {}
    for setting in settings:
        trial = setting.trial
        if trial is not None:
            sizes = (trial.number, trial.length, trial.width)
            key = (trial.section, *(round(float(size), 6) for size in sizes))
            found.setdefault(key, (trial, []))[1].append(setting.code)
    return tuple((trial, tuple(codes)) for trial, codes in found.values())


_OF_THE_SAW: Mapping[Kind, Cautions] = {
    "tongue": DADO,
    "back rebate": DADO,
    "groove": DADO,
    "trim": TRACK_SAW,
}


def _cautions(work: Work) -> Cautions:
    stop = STOPPED_CUT if work.stopped else PLUNGED_CUT if work.kind == "slot" else ()
    match work.by:
        case "saw":
            own = DADO if "dado set" in work.tool else _OF_THE_SAW.get(work.kind, ())
            return (*stop, *own, *SAW, *DUST)
        case "router":
            return (*stop, *ROUTER, *DUST)
        case "bench":
            powered = "cutter" in work.tool or work.cutter is not None
            return (*ROUTER, *CLAMPED, *DUST) if powered else CLAMPED
