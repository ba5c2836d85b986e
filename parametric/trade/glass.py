"""The glass order: panes that cannot be cut again once they are made.

A pane that is no rectangle goes to the glazier as a page of full-size templates and as an
outline that a machine cuts from. Which page and which file, the order says.
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.glass_facts import SAFETY_KINDS, safety_glazing
from parametric.figures import Figure, exceeds
from parametric.infill.glass import Pane, SpacerGrid, glass_name
from parametric.model import Assembly
from parametric.outlines import Outline
from parametric.resolve.door import Resolved

TEMPLATES = "glass-templates"
"""The file of the full-size templates of shaped panes, without its ending."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PaneTemplate:
    """What a shaped pane is cut by, mm.

    `outline` is its edge seen from the front, from the low left corner of the rectangle it
    is cut from, as the first pane of its size stands; `edges` are the heights of its left and
    right edge so seen. `turned_over` are those of its size that stand the other way about.
    """

    page: int
    outline_file: str
    outline: Outline
    edges: tuple[Figure, Figure]
    turned_over: tuple[str, ...]

    @property
    def words(self) -> str:
        """Where the glazier finds it."""
        return f"page {self.page} of {TEMPLATES}.pdf, outline {self.outline_file}"


@dataclass(frozen=True, slots=True, kw_only=True)
class GlassRow:
    """One size of pane: width x height x thickness, mm; kg each.

    Of a shaped pane they are those of the rectangle it is cut from. `name` is what it is in full,
    sizes in mm. `nominal` is the thickness people say; `unit` the two panes of an insulated unit
    with the space between them, `grid` the bars in that.
    """

    mark: str
    number: int
    kind: str
    name: str
    width: float
    height: float
    nominal: float
    thickness: float
    weight: float
    safety_class: str
    note: str
    names: tuple[str, ...]
    template: PaneTemplate | None = None
    unit: tuple[float, float, float] | None = None
    grid: SpacerGrid | None = None

    @property
    def called(self) -> str:
        """What the glazier calls it."""
        return self.kind if self.unit is None else f"{self.kind} unit"


def outline_file(mark: str) -> str:
    """What the outline of a shaped pane is called."""
    return f"glass-{mark}.dxf"


def glass_order(resolved: Resolved, assembly: Assembly) -> tuple[GlassRow, ...]:
    """Panes by mark, with the class the opening asks for and the mark it must carry."""
    panes = {
        pane.name: pane for leaf in resolved.leaves for lite in leaf.lites for pane in lite.panes
    }
    types: dict[str, list[str]] = {}
    for part in assembly.parts:
        if part.name in panes:
            types.setdefault(part.mark, []).append(part.name)
    rows: list[GlassRow] = []
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
                name=glass_name(pane),
                width=pane.width,
                height=pane.height,
                nominal=pane.nominal,
                thickness=pane.thickness,
                weight=pane.weight,
                safety_class="exempt" if asked.category is None else f"category {asked.category}",
                note=_note(pane, safe=safe),
                names=tuple(names),
                template=_template(
                    mark,
                    [panes[name] for name in names],
                    page=1 + sum(row.template is not None for row in rows),
                ),
                unit=pane.unit,
                grid=pane.grid,
            )
        )
    return tuple(rows)


def _note(pane: Pane, *, safe: bool) -> str:
    """What is said beside a size."""
    if not safe:
        return "not safety glass"
    if pane.unit is not None:
        return "both panes; maker's safety mark on each; made to size, cannot be cut again"
    return "maker's safety mark on each pane; made to size, cannot be cut again"


def _template(mark: str, panes: list[Pane], *, page: int) -> PaneTemplate | None:
    """Of the panes of one size; None for rectangles."""
    first = panes[0]
    if first.outline is None:
        return None
    rises = _rises(first)
    return PaneTemplate(
        page=page,
        outline_file=outline_file(mark),
        outline=first.outline,
        edges=(first.edges[0], first.edges[1]),
        turned_over=tuple(pane.name for pane in panes if _rises(pane) != rises),
    )


def _rises(pane: Pane) -> int:
    """Which of its upright edges is the higher, seen from the front: 1 right, -1 left, 0 neither."""
    left, right = pane.edges[:2]
    return int(exceeds(right, left)) - int(exceeds(left, right))
