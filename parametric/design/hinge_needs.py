"""Hinges of a kind that cannot carry the door that calls them."""

from __future__ import annotations

from parametric.design.answers import stop
from parametric.hangings import DoorSpec
from parametric.hardware.hinge_kinds import HINGE_KINDS
from parametric.problems import Problem
from parametric.written import Block


def hinge_needs(door: DoorSpec, hinge: Block | None) -> list[Problem]:
    """A stop where the hinges that a door calls are of no kind that it hangs on."""
    if hinge is None or door.hangs_on is None or "hinge" not in door.needs:
        return []
    kind = next((word for word, spec in HINGE_KINDS.items() if isinstance(hinge, spec)), "")
    if kind in door.hangs_on:
        return []
    return [
        stop(
            "hinge_of_another_kind",
            f"{door.heading} cannot hang on {kind} hinges: {' or '.join(door.hangs_on)} hinges "
            "carry it.",
            hinge.line("kind"),
            about=door.heading,
            found=kind,
            allowed=", ".join(door.hangs_on),
            fix=f"Write `kind: {door.hangs_on[0]}`, with its sizes from the data sheet.",
        )
    ]
