"""What shuts a leaf: a lock or latch by the size of its body and plate, and where its strike goes."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.hardware.lock import Lock, MortiseLockSpec
from parametric.resolve.door import Resolved
from parametric.trade.hardware_item import DESIGN, HardwareItem, counted, whole
from parametric.trade.printed import Printed


def hardware_for_locks(resolved: Resolved, said: Printed) -> Iterator[HardwareItem]:
    """One line for every lock of other sizes; nothing where no leaf has one."""
    lots: dict[tuple[str, bool], list[Lock]] = {}
    for door in resolved.doors:
        let_in = any(leaf.strike is not None for leaf in door.leaves)
        for leaf in door.leaves:
            if leaf.lock is not None:
                lots.setdefault((_size(leaf.lock, said), let_in), []).append(leaf.lock)
    for index, ((size, let_in), locks) in enumerate(lots.items()):
        lock = locks[0]
        mark = lock.written.maker_mark
        yield HardwareItem(
            what=lock.kind,
            number=counted("locks" if len(lots) == 1 else f"locks {index + 1}", whole(len(locks))),
            unit="off",
            size=f"{size}{f', {mark}' if mark else ''}",
            length=None,
            known_by=DESIGN,
            asked=f"with {_with(lock, said)}; {_strike(lock, said, let_in=let_in)}; measure the "
            "real one before anything is cut",
        )


def _size(lock: Lock, said: Printed) -> str:
    long, wide, deep = (said.fine(size) for size in lock.written.body)
    plate = " × ".join(said.fine(size) for size in lock.written.faceplate)
    return (
        f"body {long} × {wide} × {deep} deep, faceplate {plate}, backset {said.fine(lock.backset)}"
    )


def _with(lock: Lock, said: Printed) -> str:
    if isinstance(lock.written, MortiseLockSpec):
        below = said.fine(lock.written.keyhole_below)
        return f"key, keyhole {below} below the spindle, handles and strike"
    return "handles and strike"


def _strike(lock: Lock, said: Printed, *, let_in: bool) -> str:
    """Where the strike's middle goes, and into what."""
    where = "the other leaf" if let_in else "the jamb"
    return f"the strike's middle {said.fine(lock.strike_above_floor)} above the floor, in {where}"
