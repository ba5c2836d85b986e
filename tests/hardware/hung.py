"""Hinges and locks as a maker writes them, in mm but for what the brief gives in inches."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeVar

from parametric.figures import Figure
from parametric.hardware.butt_hinge import ButtHinges, ButtHingeSpec, size_butt_hinges
from parametric.hardware.cup_hinge import CupHinges, CupHingeSpec, size_cup_hinges
from parametric.hardware.hinge import HungEdge
from parametric.hardware.lock import (
    Lock,
    MortiseLatchSpec,
    MortiseLockSpec,
    size_lock,
)
from parametric.hardware.pivot import Pivots, PivotSpec, size_pivots
from parametric.units import Unit
from parametric.written import Block, Branch, Text

INCH = 25.4
POUND = 0.45359237
CUTTERS = (Figure(6.0), Figure(8.0), Figure(12.0))

BUTT = {
    "kind": "butt",
    "length": "100",
    "thick": "3",
    "knuckle": "12",
    "behind": "6",
    "from top": "150",
    "from bottom": "225",
    "corners": "square",
}
FEN_ROAD_STEPS = {"900": "2", "1600": "3", "2000": "4", "2400": "5"}
CUP = {
    "kind": "cup",
    "cup": "35",
    "cup from edge": "5",
    "from ends": "100",
    "depth": "13",
    "pilot": "2.5 x 10",
}
LOCK = {
    "kind": "mortise lock",
    "body": "150 x 16 x 80",
    "faceplate": "200 x 22 x 3",
    "faceplate corner": "0",
    "backset": "55",
    "height": "1000",
    "above spindle": "45",
    "spindle": "20",
    "keyhole": "16",
    "keyhole below": "72",
    "fit": "0.5",
    "extra depth": "2",
}


def steps(of: Mapping[str, str], unit: Unit = "mm") -> Branch:
    """Braces as the reader hands them on."""
    branch = Branch("steps", None)
    branch.update({height: Text(count, unit=unit) for height, count in of.items()})
    return branch


Spec = TypeVar("Spec", bound=Block)


def spec_of(kind: type[Spec], keys: Mapping[str, object], **of: object) -> Spec:
    """The keys with some of them written otherwise; `from_top` is `from top`."""
    return kind.model_validate(
        {**keys, **{key.replace("_", " "): value for key, value in of.items()}}
    )


def mm(value: float, name: str) -> Figure:
    return Figure(value, name)


def edge(
    *,
    height: float = 2000.0,
    width: float = 800.0,
    thickness: float = 44.0,
    gap: float = 3.0,
    foot: float = 10.0,
    head_gap: float | None = 3.0,
    weight: float = 40.0,
    density: float = 750.0,
) -> HungEdge:
    """The hinge edge of a leaf 800 x 2000 x 44 that weighs 40 kg, or of another."""
    return HungEdge(
        leaf="leaf A",
        height=mm(height, "leaf height"),
        width=mm(width, "leaf width"),
        thickness=mm(thickness, "leaf thickness"),
        gap=mm(gap, "hinge gap"),
        foot=mm(foot, "floor gap"),
        head_gap=None if head_gap is None else mm(head_gap, "head gap"),
        weight=Figure(weight, "weight", unit="kg"),
        cutters=CUTTERS,
        density=Figure(density, "density", unit="kg/m3"),
    )


def butts(hung: HungEdge | None = None, **of: object) -> ButtHinges:
    """Butt hinges of a leaf 800 x 2000 x 44, or of another."""
    written = {"steps": steps({"1524": "2", "2286": "3"}), **BUTT}
    return size_butt_hinges(spec_of(ButtHingeSpec, written, **of), edge() if hung is None else hung)


def cups(*, height: float, weight: float, **of: object) -> CupHinges:
    """Cup hinges of a Fen Road door, 391.5 wide and 22 thick."""
    written = {"steps": steps(FEN_ROAD_STEPS), "carries": "4.5 kg", **CUP}
    hung = edge(height=height, width=391.5, thickness=22.0, weight=weight)
    return size_cup_hinges(spec_of(CupHingeSpec, written, **of), hung)


def pivots(**of: object) -> Pivots:
    """Pivots of a leaf 800 x 2000 x 44 that weighs 40 kg."""
    written = {"kind": "pivot", "pin": "12 x 30", "from edge": "40"}
    return size_pivots(spec_of(PivotSpec, written, **of), edge())


def lock(*, foot: float = 10.0, bevel: float | None = None, **of: object) -> Lock:
    """A lock, or a latch, in a leaf 44 thick."""
    keys: dict[str, object] = {**LOCK, **{k.replace("_", " "): v for k, v in of.items()}}
    latch = keys["kind"] == "mortise latch"
    if latch:
        keys = {key: value for key, value in keys.items() if not key.startswith("keyhole")}
    return size_lock(
        spec_of(MortiseLatchSpec, keys) if latch else spec_of(MortiseLockSpec, keys),
        leaf="leaf A",
        foot=mm(foot, "floor gap"),
        thickness=mm(44.0, "leaf thickness"),
        cutters=CUTTERS,
        bevel=None if bevel is None else Figure(bevel, "edge bevel", unit="deg"),
    )
