"""Bar handles and knobs to buy, with their screws."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.hardware.handle import Handle
from parametric.resolve.door import Resolved
from parametric.trade.hardware_item import DESIGN, HardwareItem, counted, whole
from parametric.trade.printed import Printed


def hardware_for_handles(resolved: Resolved, said: Printed) -> Iterator[HardwareItem]:
    """One line for every handle of other sizes."""
    lots: dict[tuple[str, str], list[Handle]] = {}
    for leaf in resolved.leaves:
        handle = leaf.handle
        if handle is not None:
            size = f"{said.fine(handle.across)} across, stands out {said.fine(handle.stands_out)}"
            if handle.kind == "bar":
                size = f"holes {said.fine(handle.apart)} apart, {size}"
            lots.setdefault((handle.kind, size), []).append(handle)
    for index, ((kind, size), handles) in enumerate(lots.items(), 1):
        what = "bar handle" if kind == "bar" else "knob"
        yield HardwareItem(
            what=what,
            number=counted(
                "handles" if len(lots) == 1 else f"handles {index}", whole(len(handles))
            ),
            unit="off",
            size=size,
            length=None,
            known_by=DESIGN,
            asked="with screws for what each stands on; measure the real one before it is drilled",
        )
