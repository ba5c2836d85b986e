"""What is bought for the job beside timber, glass and finish: how many, how long, and by whom known.

What the design does not say is not made up: it is `by supplier`, with what is asked of it.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.hardware.pull import Pull
from parametric.resolve.door import Resolved
from parametric.resolve.told_apart import named_by
from parametric.trade.hardware_for_bolts import hardware_for_bolts
from parametric.trade.hardware_for_cases import hardware_for_cases
from parametric.trade.hardware_for_glass import hardware_for_glass
from parametric.trade.hardware_for_handles import hardware_for_handles
from parametric.trade.hardware_for_hinges import hardware_for_hinges
from parametric.trade.hardware_for_locks import hardware_for_locks
from parametric.trade.hardware_for_slides import hardware_for_slides, on_slides
from parametric.trade.hardware_for_stays import hardware_for_stays
from parametric.trade.hardware_for_tracks import hardware_for_tracks
from parametric.trade.hardware_item import (
    DESIGN,
    HardwareItem,
    counted,
    together,
    whole,
)
from parametric.trade.loads import LeafLoad, loads_of
from parametric.trade.printed import Printed, printed


def hardware_list(resolved: Resolved, loads: tuple[LeafLoad, ...]) -> tuple[HardwareItem, ...]:
    """Tracks, hinges, locks, stays, bolts, slides, what cases take, pulls, handles, what glass takes."""
    said = printed(resolved)
    tracks: list[HardwareItem] = []
    bolts: list[HardwareItem] = []
    for door in resolved.doors:
        own, carried = resolved.of(door), loads_of(door, loads)
        for items, found in (
            (tracks, tuple(hardware_for_tracks(own, carried, said))),
            (bolts, tuple(hardware_for_bolts(own, said))),
        ):
            items += named_by(door, found, resolved.shop)
    return (
        *together(tracks),
        *hardware_for_hinges(resolved, loads, said),
        *hardware_for_locks(resolved, said),
        *hardware_for_stays(resolved, said),
        *together(bolts),
        *hardware_for_slides(on_slides(resolved, loads), said),
        *hardware_for_cases(resolved.casework, said),
        *_pulls(resolved, said),
        *hardware_for_handles(resolved, said),
        *hardware_for_glass(resolved, said),
    )


def _pulls(resolved: Resolved, said: Printed) -> Iterator[HardwareItem]:
    """One line for every pull of other sizes."""
    lots: dict[tuple[float, ...], list[Pull]] = {}
    for leaf in resolved.leaves:
        for hung in leaf.pulls:
            pull = hung.pull
            sizes = (pull.body_length, pull.body_width, pull.body_depth, pull.flange_length)
            lots.setdefault(tuple(map(float, sizes)), []).append(pull)
    for index, pulls in enumerate(lots.values()):
        pull = pulls[0]
        yield HardwareItem(
            what="recessed pull",
            number=counted(
                "pulls" if len(lots) == 1 else f"pulls {index + 1}",
                whole(sum(len(p.faces) for p in pulls)),
            ),
            unit="off",
            size=f"body {said.fine(pull.body_length)} × {said.fine(pull.body_width)} × "
            f"{said.fine(pull.body_depth)}, flange {said.fine(pull.flange_length)} × "
            f"{said.fine(pull.flange_width)} × {said.fine(pull.flange_depth)}",
            length=None,
            known_by=DESIGN,
            asked="measure the real one before its pocket is cut",
        )
