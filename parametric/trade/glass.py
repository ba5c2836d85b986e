"""The glass order: panes that cannot be cut again once they are made."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.glass_facts import SAFETY_KINDS, safety_glazing
from parametric.model import Assembly
from parametric.resolve.door import Resolved


@dataclass(frozen=True, slots=True, kw_only=True)
class GlassRow:
    """One size of pane: width x height x thickness, mm; kg each."""

    mark: str
    number: int
    kind: str
    width: float
    height: float
    thickness: float
    weight: float
    safety_class: str
    note: str
    names: tuple[str, ...]


def glass_order(resolved: Resolved, assembly: Assembly) -> tuple[GlassRow, ...]:
    """Panes by mark, with the class the opening asks for and the mark it must carry."""
    panes = {
        pane.name: pane
        for leaf in resolved.door.leaves
        for lite in leaf.lites
        for pane in lite.panes
    }
    types: dict[str, list[str]] = {}
    for part in assembly.parts:
        if part.name in panes:
            types.setdefault(part.mark, []).append(part.name)
    rows = []
    for mark, names in types.items():
        pane = panes[names[0]]
        asked = safety_glazing(
            pane.width, pane.height, opening_width=pane.opening[0], opening_height=pane.opening[1]
        )
        safe = pane.kind in SAFETY_KINDS
        rows.append(
            GlassRow(
                mark=mark,
                number=len(names),
                kind=pane.kind,
                width=pane.width,
                height=pane.height,
                thickness=pane.thickness,
                weight=pane.weight,
                safety_class="exempt" if asked.category is None else f"category {asked.category}",
                note="maker's safety mark on each pane; made to size, cannot be cut again"
                if safe
                else "not safety glass",
                names=tuple(names),
            )
        )
    return tuple(rows)
