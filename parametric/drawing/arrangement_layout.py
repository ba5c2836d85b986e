"""Where the views of an arrangement stand on a sheet: a pure function of sizes and paper.

Every margin is reserved before anything is drawn. Views that share a direction share its
coordinates: elevation and plan across, elevation and upright section up.
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.drawing.case import case_outline
from parametric.drawing.chains import FIRST
from parametric.drawing.column import GUTTER, WIDTH
from parametric.drawing.frame import title_block_box
from parametric.drawing.pieces import silhouette
from parametric.drawing.plane import Box, Point, around_boxes
from parametric.drawing.plane import around as around_points
from parametric.drawing.sheet import Paper, TitleBlock
from parametric.drawing.subject import Subject

STUB = 5.0
"""How much wall and floor is drawn beyond the leaves, mm on paper."""
WALL = 5.5
"""How much wall is drawn behind its face, mm on paper."""
GROUND = 3.0
"""How deep the floor is hatched, mm on paper."""
PLAN_FIRST, PLAN_CLOSER = 7.5, 1.0
"""Chains under a plan stand a little closer."""
MARK = 6.5
"""What a section mark takes beside a view."""
HEAD_ROW = 7.5
"""Captions and section marks over the views."""
CLOSE = 2.5
"""From the frame line to the nearest thing."""
SIDE = 5.5
"""The same at the left, where the centring mark reaches in."""
PLAN_WORDS = 47.0
"""Ordinates and caption beside the plan."""
DATUM_WORDS = 22.0
"""The datum's name between section and column."""
HEAD_WORDS, HEAD_WORDS_CLOSE = 11.0, 15.0
"""What the words beside the head take below their middle; more where the head is drawn small
and they must spread."""
_NAME_OVER = 6.5
"""A row for the section's name over the words beside its head."""
WORDS = 72.0
"""How far the words beside the section reach."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Extent:
    """What the views must show, mm in the world: across, up, and off the wall face."""

    x0: float
    x1: float
    low: float
    high: float
    off_least: float
    off_most: float
    head: float
    foot: float
    plan_chains: int
    on_wall: bool
    next_chain: float
    third_angle: bool
    tracks: bool

    @property
    def plan_next(self) -> float:
        """From one chain under the plan to the next, mm on paper."""
        return self.next_chain - PLAN_CLOSER

    def beside(self, off: float) -> float:
        """Where a distance off the wall lies across the upright section: its front stands away
        from the elevation in first angle, towards it in third.
        """
        return -off if self.third_angle else off

    @property
    def wall_over(self) -> float:
        """How much wall is drawn over the highest thing, mm on paper."""
        return 2.0 if self.on_wall else 8.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Placing:
    """A layout that fits: the scale, where each view's zero lies, and the columns left over."""

    paper: Paper
    scale: float
    elevation: Point
    plan: Point
    upright: Point
    section_right: float
    columns: tuple[Box, ...]


def extent_of(job: Subject) -> Extent:
    """Measure the job for its arrangement."""
    door = job.resolved.door
    everything = around_boxes(around_points(silhouette(p)) for p in job.shut)
    outline = case_outline(door) or around_points(door.opening.outline())
    faces = [
        float(leaf.hung.plane) + way * float(leaf.thickness) / 2
        for leaf in door.leaves
        for way in (-1.0, 1.0)
    ]
    return Extent(
        x0=min(everything.x0, 0.0, outline.x0),
        x1=max(everything.x1, float(door.opening.widest), outline.x1),
        low=min(z for _, z in door.opening.floor_line()),
        high=max(everything.y1, outline.y1),
        off_least=min(faces),
        off_most=max(0.0, *faces),
        head=float(door.opening.head),
        foot=float(door.hanging.floor_gap),
        plan_chains=3 if door.hanging.on_wall else 2,
        on_wall=door.hanging.on_wall,
        next_chain=job.rules.arrangement.next_chain,
        third_angle=job.third_angle,
        tracks=bool(door.hanging.tracks),
    )


def place(paper: Paper, scale: float, extent: Extent, title: TitleBlock) -> Placing | None:
    """Stand the views on a paper at a scale; None when they do not fit.

    Args:
        paper: the sheet.
        scale: model mm to one mm of paper.
        extent: what must be shown.
        title: the title block is an obstacle, and grows with what it has to say.
    """
    frame, block = paper.frame, title_block_box(paper, title)
    wall = max(WALL, -extent.off_least / scale + 3.0)

    left = frame.x0 + SIDE + MARK + 3.5 + FIRST - 1.0 + STUB
    elevation_x = left - extent.x0 / scale
    right = elevation_x + extent.x1 / scale
    leaves = max(extent.off_most, 0.0) / scale + STUB
    section_left = right + STUB + FIRST - 1.0 + extent.next_chain + MARK + 3.0
    upright_x = section_left + (leaves if extent.third_angle else wall)
    section_right = section_left + wall + leaves
    column_left = frame.x1 - 5.5 - WIDTH
    if section_right + DATUM_WORDS > column_left or right + 14.0 + PLAN_WORDS - 14.0 > block.x0:
        return None

    below = CLOSE + 1.5 + extent.plan_next * (extent.plan_chains - 1) + PLAN_FIRST
    plan = below + extent.off_most / scale
    used = (
        plan
        + wall
        + GROUND
        + (extent.high - extent.low) / scale
        + (HEAD_ROW - 2.0 + extent.wall_over)
        + CLOSE / 2
    )
    spare = frame.height - used - 3.0
    if spare < 0:
        return None
    # A little air goes between floor and plan; the rest of the spare height goes under the plan.
    air = min(spare * 0.7, 12.0)
    # In third angle the head's words are led over the section: its name goes above them.
    over = min(spare - air, _NAME_OVER) if extent.third_angle else 0.0
    plan_y = frame.y0 + plan + (spare - air - over)
    elevation_y = plan_y + wall + 3.0 + air + GROUND - extent.low / scale
    words = elevation_y + (extent.head + extent.high) / 2 / scale
    top = words - (HEAD_WORDS if scale <= 10.0 else HEAD_WORDS_CLOSE)
    columns = []
    at = column_left
    while at > section_right + DATUM_WORDS:
        # Beside the section what is said of the tracks stands above a column.
        beside = extent.tracks and at < section_right + WORDS
        columns.append(Box(at, block.y1 + 4.0, at + WIDTH, top if beside else frame.y1 - 6.0))
        at -= WIDTH + GUTTER
    return Placing(
        paper=paper,
        scale=scale,
        elevation=(elevation_x, elevation_y),
        plan=(elevation_x, plan_y),
        upright=(upright_x, elevation_y),
        section_right=section_right,
        columns=tuple(reversed(columns)),
    )
