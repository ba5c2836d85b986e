"""The words of the language: which blocks there are, which of them build, and which not yet.

A legal word that this version cannot build is answered as such, never ignored and never
called a spelling mistake.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType

from parametric.cases.back import BackSpec
from parametric.cases.boring import BoringSpec
from parametric.cases.cabinet import CabinetSpec
from parametric.cases.drawer_written import DRAWER_KINDS
from parametric.cases.face_frame import FaceFrameSpec
from parametric.cases.lines import BaySpec, CaseBayLine, CaseLine, InsideLine
from parametric.cases.run import RunLine, RunSpec
from parametric.cases.shelf import ShelfSpec
from parametric.design.layer_names import LayerNamesSpec
from parametric.design.leaf import Band, LeafSpec
from parametric.design.records import ApprovedSpec
from parametric.design.settings import (
    AccuracySpec,
    BlanksSpec,
    BoardSpec,
    ClampsSpec,
    ClientSpec,
    FinishSpec,
    LimitsSpec,
    MakerSpec,
    MoistureSpec,
    OffcutsSpec,
    PaperSpec,
    RouterSpec,
    SawSpec,
    SheetSpec,
    TimberSpec,
)
from parametric.design.survey import Diagonals, InTheWay, Rake, SurveySpec
from parametric.hangings import DOOR_KINDS
from parametric.hangings.fronts import BayLine, FrontLine
from parametric.hardware.guide import GuideSpec
from parametric.hardware.handle import HandleSpec
from parametric.hardware.hinge_kinds import HINGE_KINDS
from parametric.hardware.lock import LOCK_KINDS
from parametric.hardware.pull import PullSpec
from parametric.hardware.stay_kinds import STAY_KINDS
from parametric.hardware.track import TrackSpec
from parametric.infill.glass import GlassSpec
from parametric.infill.panel_kinds import PANEL_KINDS
from parametric.joints.joint_kinds import JOINT_KINDS
from parametric.profiles.kinds import STICKING_KINDS
from parametric.shapes.arch import ArchSpec
from parametric.written import Block, Group, spoken

NEWEST = 1
"""The version of the language that this tool writes and reads."""

FILE_KEYS: tuple[str, ...] = ("stilewright", "job", "units")

KINDS: Mapping[str, Mapping[str, type[Block]]] = MappingProxyType(
    {
        "door": MappingProxyType(dict[str, type[Block]](DOOR_KINDS)),
        "cabinet": MappingProxyType(dict.fromkeys(("frameless", "face frame"), CabinetSpec)),
        "panel": MappingProxyType(dict[str, type[Block]](PANEL_KINDS)),
        "joint": MappingProxyType(dict[str, type[Block]](JOINT_KINDS)),
        "sticking": MappingProxyType(dict[str, type[Block]](STICKING_KINDS)),
        "pull": MappingProxyType({"recessed": PullSpec, "bar": HandleSpec, "knob": HandleSpec}),
        "hinge": MappingProxyType(dict[str, type[Block]](HINGE_KINDS)),
        "lock": MappingProxyType(dict[str, type[Block]](LOCK_KINDS)),
        "stay": MappingProxyType(dict[str, type[Block]](STAY_KINDS)),
        "drawer": MappingProxyType(dict[str, type[Block]](DRAWER_KINDS)),
    }
)
"""Blocks that are read by their `kind`, and the Spec of each kind that builds."""

PLAIN: Mapping[str, type[Block]] = MappingProxyType(
    {
        "survey": SurveySpec,
        "leaf": LeafSpec,
        "run": RunSpec,
        "bay": BaySpec,
        "back": BackSpec,
        "face frame": FaceFrameSpec,
        "glass": GlassSpec,
        "arch": ArchSpec,
        "track": TrackSpec,
        "guide": GuideSpec,
        "shelf": ShelfSpec,
        "finish": FinishSpec,
        "timber": TimberSpec,
        "board": BoardSpec,
        "sheet": SheetSpec,
        "client": ClientSpec,
        "maker": MakerSpec,
        "shop": PaperSpec,
        "saw": SawSpec,
        "router": RouterSpec,
        "boring": BoringSpec,
        "layer names": LayerNamesSpec,
        "clamps": ClampsSpec,
        "blanks": BlanksSpec,
        "accuracy": AccuracySpec,
        "moisture": MoistureSpec,
        "limits": LimitsSpec,
        "offcuts": OffcutsSpec,
    }
)
"""Blocks with one Spec."""

RECORDS: tuple[str, ...] = ("revisions", "approved", "accepted", "as built", "cut")
RECORD_SPECS: Mapping[str, type[Group]] = MappingProxyType({"approved": ApprovedSpec})
BESIDE: tuple[str, ...] = ("approved", "accepted", "as built", "cut")
"""Records that may stand in NAME.records.yaml beside the design."""

NOT_BUILT_BLOCKS: tuple[str, ...] = (
    "planks",
    "slats",
    "counter",
    "rates",
)
ONCE: tuple[str, ...] = (
    *("sheet", "client", "maker", "shop", "saw", "router", "layer names", "clamps", "blanks"),
    *("boring", "accuracy", "moisture", "limits", "rates", "offcuts", *RECORDS),
)
"""Blocks that stand once in a file and take no name."""
HOUSE_NEVER: tuple[str, ...] = ("job", "survey", "client", "option", *RECORDS)
"""What belongs to one job, and never to a house file."""
ALWAYS: tuple[str, ...] = (
    *("sheet", "client", "maker", "shop", "saw", "router", "layer names", "clamps", "blanks"),
    *("accuracy", "moisture", "limits", "finish", "offcuts"),
)
"""Blocks that every job has, written or not."""
ALWAYS_OF_CASES: tuple[str, ...] = ("back", "boring", "face frame", "shelf")
"""Blocks that every job with a cabinet has."""
BLANK_ALLOWED: tuple[str, ...] = ("maker", "client", "sheet")
"""Blocks whose words may be left blank, to be filled in by hand on the paper."""

HARDWARE: tuple[str, ...] = ("track", "guide", "pull", "hinge", "lock", "stay")

OPTION_TAKES: tuple[str, ...] = (
    *(
        "door",
        "cabinet",
        "run",
        "bay",
        "back",
        "face frame",
        "leaf",
        "panel",
        "joint",
        "sticking",
        "glass",
        "arch",
        "track",
        "guide",
        "hinge",
        "pull",
        "lock",
        "stay",
        "shelf",
        "finish",
        "timber",
        "board",
        "drawer",
    ),
)
"""Blocks that may differ from one option of a design to another: those that make the doors."""

BLOCKS: tuple[str, ...] = (*KINDS, *PLAIN, *RECORDS, *NOT_BUILT_BLOCKS, "option")

_DOOR_ALL = "kind in leaf floor_gap track guide hinge pull lock finish pinned like note"
_SLIDES = f"{_DOOR_ALL} hung side_lap head_lap track_allowance"
_SWINGS = f"{_DOOR_ALL} opens hinge_gap head_gap"


def _words(written: str) -> tuple[str, ...]:
    return tuple(spoken(word) for word in written.split())


DOOR_KEYS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "sliding": _words(f"{_SLIDES} opens_to"),
        "biparting": _words(f"{_SLIDES} meeting_gap astragal"),
        "bypass": _words(f"{_SLIDES} leaves overlap tracks between_leaves beside_leaves"),
        "pocket": _words(
            f"{_DOOR_ALL} pocket enters_jamb stays_in_pocket above_head left_out buffer "
            "buffer_clearance"
        ),
        "bifold": _words(
            f"{_DOOR_ALL} leaves folds_to jamb_gap fold_gap meeting_gap track_allowance pivot_in"
        ),
        "hinged": _words(f"{_SWINGS} hinge_side lock_gap edge_bevel"),
        "hinged pair": _words(
            f"{_SWINGS} edge_bevel meeting_gap left_leaf right_leaf first_to_open "
            "meeting_stiles meeting_rebate astragal"
        ),
        "dutch": _words(
            f"{_SWINGS} hinge_side lock_gap edge_bevel split split_gap split_joint split_rebate upper_leaf lower_leaf"
        ),
        "cabinet": _words(
            f"{_DOOR_ALL} fronts fronts_matched front_gap edge_reveal case_edge partition "
            "drawer_leaf drawer_travel left_to_right top_to_bottom"
        ),
    }
)
"""Every kind of door there is, with its keys; KINDS says which build."""

MOVES: Mapping[str, str] = MappingProxyType(
    {
        **dict.fromkeys(("sliding", "biparting", "bypass", "pocket"), "slide"),
        "bifold": "fold",
        **dict.fromkeys(("hinged", "hinged pair", "dutch"), "swing"),
        "cabinet": "are fronts of a case",
    }
)
"""How each kind of door moves."""

COUNTERPARTS: Mapping[str, str] = MappingProxyType(
    {
        "side lap": "hinge gap",
        "head lap": "head gap",
        "hinge gap": "side lap",
        "head gap": "head lap",
        "hinge side": "opens to",
        "opens to": "hinge side",
        "overlap": "meeting gap",
        "meeting gap": "overlap",
    }
)
"""What a key of one way to hang a door is called in another."""

OTHER_KINDS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "door": tuple(DOOR_KEYS),
        "panel": tuple(PANEL_KINDS),
        "joint": (
            *("loose tenon", "mortise and tenon", "haunched tenon", "stub tenon"),
            *("bridle", "half lap", "dowel", "mitre"),
        ),
        "sticking": tuple(STICKING_KINDS),
        "pull": ("recessed", "edge", "bar", "knob"),
        "hinge": tuple(HINGE_KINDS),
        "lock": tuple(LOCK_KINDS),
        "stay": tuple(STAY_KINDS),
        "drawer": tuple(DRAWER_KINDS),
        "cabinet": ("frameless", "face frame"),
    }
)
"""Every kind there is; KINDS says which build."""

NOT_BUILT_KEYS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "leaf": ("mullions",),
        "glass": ("weight",),
        "joint": ("pegs",),
        "blanks": ("rough",),
    }
)
"""Keys of blocks that build which do not build themselves."""

NOT_BUILT_VALUES: Mapping[tuple[str, str], tuple[str, ...]] = MappingProxyType(
    {
        ("pull", "stile"): ("meeting", "both", "closing"),
    }
)
"""Legal values of keys that build which do not build themselves."""

NOT_BUILT_SHAPES: Mapping[tuple[str, str], str] = MappingProxyType(
    {
        ("door", "pull"): "two pulls on one door",
    }
)
"""Keys that may hold a list or braces in the language, but not in this version."""

KEPT_ONLY: Mapping[str, tuple[str, ...]] = MappingProxyType({"survey": _words("depth studs")})
"""Keys that are read and kept, though this version works nothing out from them."""

NESTED: Mapping[tuple[str, str], type[Group]] = MappingProxyType(
    {
        ("leaf", "top to bottom"): Band,
        ("door", "left to right"): BayLine,
        ("door", "top to bottom"): FrontLine,
        ("cabinet", "left to right"): CaseBayLine,
        ("run", "left to right"): RunLine,
        **{(kind, "top to bottom"): CaseLine for kind in ("cabinet", "bay")},
        **{(kind, "inside"): InsideLine for kind in ("cabinet", "bay")},
        ("survey", "diagonals"): Diagonals,
        ("survey", "in the way"): InTheWay,
        ("survey", "rake"): Rake,
    }
)
"""What stands in a list, or in the braces, of a block's key."""

WAYS: Mapping[str, str] = MappingProxyType(
    {
        "hung": "a way to hang",
        "grain": "a way for the grain to run",
        "sawn": "a way to saw a log",
        "held by": "a way to hold glass",
        "bars": "a way to make bars",
        "ordered": "a way to order panes",
        "bar crossings": "a way for bars to cross",
        "groove by": "a machine for a groove",
        "faces": "a face",
        "stile": "a stile",
        "fixing": "a fixing",
        "tilts": "a way for a blade to tilt",
        "marked": "a way to mark",
        "order": "an order of layer names",
        "between": "a thing to stand between words",
        "decimal sign": "a decimal sign",
        "inside corners": "a way with inside corners",
        "bench paper": "a paper",
        "drawing paper": "a paper",
        "corners": "a way for mouldings to meet",
        "underside": "an underside",
        "fronts": "a way for fronts to lie",
        "fronts matched": "a way for the grain of fronts to run on",
        "held": "a way to hold a back",
        "levelled by": "a thing to level a run by",
        "joined by": "a way to join a face frame",
    }
)
"""What a word under a key is, for `"inside" is not a way to hang`."""

CALLS: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "door": MappingProxyType(
            {
                **{
                    word: word
                    for word in ("leaf", "track", "guide", "hinge", "pull", "lock", "finish")
                },
                "upper leaf": "leaf",
                "lower leaf": "leaf",
                "drawer leaf": "leaf",
                "in": "survey",
            }
        ),
        "leaf": MappingProxyType(
            {word: word for word in ("panel", "glass", "joint", "arch", "sticking")}
        ),
        "cabinet": MappingProxyType(
            {
                **{
                    word: word
                    for word in (
                        *("leaf", "hinge", "pull", "finish", "back", "shelf", "drawer"),
                        "stay",
                    )
                },
                "drawer leaf": "leaf",
                "face frame": "face frame",
                "in": "survey",
            }
        ),
        "run": MappingProxyType({"in": "survey"}),
        "survey": MappingProxyType({"left of": "survey", "right of": "survey"}),
    }
)
"""Keys that call another block by its name, and the kind they call."""
OWN_NAMES: Mapping[str, tuple[str, ...]] = MappingProxyType({"sticking": tuple(STICKING_KINDS)})
"""Blocks that may be called though nobody wrote them, by the name of their kind: all of such a
block has a usual size. One that is written under such a name is of that kind."""
SQUARE = "square"
"""What a leaf calls its sticking that has none: its sight edges are left as they are sawn."""
MAY_DO_WITHOUT: tuple[str, ...] = (
    *("track", "guide", "hinge", "pull", "lock", "finish", "back", "stay"),
)
"""Calls that may say `none`."""


def specs(kind: str) -> tuple[type[Block], ...]:
    """Every Spec that a block of this kind may be read by."""
    if kind in KINDS:
        return tuple(KINDS[kind].values())
    return (PLAIN[kind],) if kind in PLAIN else ()


def keys_of(spec: type[Group]) -> tuple[str, ...]:
    """The keys of a Spec as they are written."""
    return tuple(spoken(field) for field in spec.model_fields)


def split_heading(heading: str, kinds: Iterable[str] = BLOCKS) -> tuple[str, str] | None:
    """A heading's kind and name (`""` without one); the longest kind wins; None for neither."""
    for kind in sorted(kinds, key=len, reverse=True):
        if heading == kind:
            return kind, ""
        if heading.startswith(f"{kind} "):
            return kind, heading[len(kind) + 1 :].strip()
    return None


def full_heading(kind: str, name: str) -> str:
    """The heading of a kind and a name."""
    return f"{kind} {name}" if name else kind
