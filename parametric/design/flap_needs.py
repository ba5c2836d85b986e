"""Flaps of a cabinet that cannot be hung, or held by the stays they call."""

from __future__ import annotations

from collections.abc import Mapping

from parametric.cases.cabinet import CabinetSpec
from parametric.design.answers import stop
from parametric.design.understanding import not_built
from parametric.hangings.cabinet import CabinetSpec as FrontsSpec
from parametric.hangings.front_places import flap_side
from parametric.hangings.fronts import Front
from parametric.hardware.stay_kinds import STAY_KINDS, StaySpec, lifts
from parametric.problems import Problem
from parametric.written import Block

Blocks = Mapping[tuple[str, str], Block]


def flap_needs(cabinet: CabinetSpec, fronts: FrontsSpec, blocks: Blocks) -> list[Problem]:
    """A flap in a face frame or under a slope, stays of a kind that cannot hold it, or of nothing.

    Args:
        cabinet: the cabinet as written.
        fronts: the same, as it is hung.
        blocks: every block that is whole.
    """
    flaps = [front for bay in fronts.bays for front in bay.fronts if front.kind == "flap"]
    if not flaps and cabinet.origin("stay") == "chosen":
        return [_holds_nothing(cabinet)]
    if flaps and cabinet.kind == "face frame":
        return [not_built("A flap in a face frame", flaps[0].line.here, about=cabinet.heading)]
    if cabinet.top == "follows rake":
        for front in (bay.fronts[0] for bay in fronts.bays):
            if flap_side(front) == "top":
                what = "A flap that hangs under a top that slopes"
                return [not_built(what, front.line.here, about=cabinet.heading)]
    found: list[Problem] = []
    for front in flaps:
        stay = blocks.get(("stay", str(front.stay or "")))
        if isinstance(stay, StaySpec) and lifts(stay) != (flap_side(front) == "top"):
            found.append(_of_another_kind(cabinet, front, stay))
    return found


def _holds_nothing(cabinet: CabinetSpec) -> Problem:
    return stop(
        "contradicts",
        f"{cabinet.heading} has no flap that its stay could hold.",
        cabinet.line("stay"),
        about=cabinet.heading,
        found="stay",
        allowed="a flap among its fronts",
        fix="Take `stay` out, or write `flap` with its `hinge side`.",
    )


def _of_another_kind(cabinet: CabinetSpec, front: Front, stay: StaySpec) -> Problem:
    up = flap_side(front) == "top"
    kind, right = stay.kind, next(word for word in STAY_KINDS if word != stay.kind)
    said = (
        f"{cabinet.heading} has a flap that lifts up, and a {kind} only keeps one from falling: "
        f"a {right} holds it up."
        if up
        else f"{cabinet.heading} has a flap that drops down, and a {kind} would throw it open: "
        f"a {right} holds it."
    )
    return stop(
        "stay_of_another_kind",
        said,
        stay.line("kind"),
        about=cabinet.heading,
        found=kind,
        allowed=right,
        fix=f"Write `kind: {right}`, or call another stay on the flap's line "
        f"({front.line.here.file}:{front.line.here.line}).",
    )
