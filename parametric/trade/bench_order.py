"""The order of work in the shop: which list or set-up comes when, and what passes it.

Timber at rest, blanks, panels glued, pieces to length, then every machine setting once, the
glue-up, and what is run on the glued leaf.
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.figures import Figure
from parametric.model import Assembly, By
from parametric.names import SEPARATOR
from parametric.parts.behind_frames import BLOCK, PACKING
from parametric.parts.drawer import MARK as BOXES
from parametric.parts.face_frames import FRAME_NOUNS
from parametric.trade.case_names import together
from parametric.trade.cutlist import cut_list, of_solid, of_timber
from parametric.trade.glazing import PLANT
from parametric.trade.glue_up import first_coats
from parametric.trade.milling import Setting
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import several

BEHIND_FRAME = (BLOCK, PACKING)
MITRE_ANGLE = Figure(
    45.0,
    "mitre",
    origin="catalogue",
    unit="deg",
    source="half of a right angle: both pieces of a corner alike",
)

CUTTING_PLAN = "cutting plan"
"""The page of steps that are done from the cutting plan."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ShopStep:
    """One step: what is done, the number of its set-up, what passes it.

    `page` is the list or the set-up whose sheet it is done from: a set-up's number, or one
    of "cut list", "by door", "rough sizes", "stop blocks", "finish", "glue-up P1"; `CUTTING_PLAN`
    is drawn by itself.
    """

    work: str
    page: str
    code: str = ""
    marks: tuple[str, ...] = ()


def shop_order(paper: Paperwork, assembly: Assembly) -> tuple[ShopStep, ...]:
    """Every step from the timber rack to the finished leaves.

    Source: common practice, no source.
    """
    rows = of_timber(cut_list(assembly))
    marks = tuple(row.mark for row in rows)
    planed = tuple(row.mark for row in of_solid(rows))
    glued = tuple(one.mark for one in paper.panel_glue_ups if int(one.boards) > 1)
    slotted = tuple(
        dict.fromkeys(
            mark
            for line in paper.stops
            if line.cut.startswith("slot") or line.blocks
            for mark in line.marks
            # no story stick shows a drawer's box
            if not mark.startswith(BOXES)
        )
    )
    early = [s for s in paper.milling if s.when == "before glue-up"]
    later = [s for s in paper.milling if s.when != "before glue-up"]
    steps = [
        ShopStep(
            work="Saw rough blanks"
            + (", bars by the cutting plan" if paper.bars else "")
            + f"; rest them to {float(paper.timber.moisture):g} %",
            page="rough sizes",
            marks=planed,
        ),
        ShopStep(
            work=f"Plane face and edge, thickness, rip; face mark on each{_but_glued(glued)}",
            page="cut list",
            marks=planed,
        ),
    ]
    steps += [
        ShopStep(
            work="Glue the panel from its boards, plane it, saw it to size"
            if int(one.boards) > 1
            else "Saw the panel to size",
            page=f"glue-up {one.mark}",
            marks=(one.mark,),
        )
        for one in paper.panel_glue_ups
    ]
    boards = tuple(row.mark for lot in paper.boards for row in lot.pieces)
    if boards:
        steps.append(
            ShopStep(
                work="Saw boards from their sheets, grain along, better face up",
                page=CUTTING_PLAN,
                marks=boards,
            )
        )
    matched = tuple(
        row.mark for lot in paper.boards for row in lot.pieces if row.matched is not None
    )
    if matched:
        steps.insert(
            -1,
            ShopStep(
                work="Matched sets: saw each blank whole, draw its triangle, number its panels; "
                "only then saw it apart, and keep them in order",
                page=CUTTING_PLAN,
                marks=matched,
            ),
        )
    rounded = {m for s in paper.milling if s.kind == "edges" for m in s.marks}
    square = tuple(
        dict.fromkeys(
            mark
            for stop in paper.lengths
            if not stop.over_points
            for mark, _, _ in stop.pieces
            if mark not in rounded
        )
    )
    steps += [
        ShopStep(work="Crosscut to length against a stop", page="stop blocks", marks=square),
        ShopStep(
            work=f"Sort by {'cabinet and front' if paper.cases else 'door'}; label each face, arrow "
            "to the top; mark feet",
            page="by door",
            marks=marks,
        ),
    ]
    banded = dict.fromkeys(edge.mark for band in paper.edge_bands for edge in band.edges)
    if banded:
        steps.append(
            ShopStep(
                work="Band the edges that the cut list names; trim flush, then bore and groove",
                page="by door",
                marks=tuple(banded),
            )
        )
    if slotted:
        steps.append(
            ShopStep(
                work="Mark slots and groove ends together, from the story stick",
                page="stop blocks",
                marks=slotted,
            )
        )
    steps.append(ShopStep(work="Cut gauges and templates, full size", page=""))
    steps += [_step(setting) for setting in early]
    steps.append(
        ShopStep(
            work="Smooth panels, inner edges; dry-fit"
            if paper.panel_glue_ups
            else "Smooth inner edges; dry-fit",
            page="",
            marks=tuple(one.leaf for one in paper.leaf_glue_ups),
        )
    )
    if paper.finish.coats and paper.panel_glue_ups:
        steps.append(
            ShopStep(
                work=f"Panel: {first_coats(paper.finish.kind)}",
                page="finish",
                marks=tuple(one.mark for one in paper.panel_glue_ups),
            )
        )
    steps += [
        ShopStep(work=f"Glue up {one.leaf}", page=f"glue-up {one.leaf}", marks=(one.leaf,))
        for one in paper.leaf_glue_ups
    ]
    steps += [
        ShopStep(
            work=f"Glue up {several(len(one.boxes), 'drawer box', 'drawer boxes')}",
            page=f"glue-up {one.box.name}",
            marks=one.marks,
        )
        for one in paper.drawer_glue_ups
    ]
    framed = tuple(dict.fromkeys(part.mark for part in assembly.parts if part.noun in FRAME_NOUNS))
    brought_out = tuple(
        dict.fromkeys(part.mark for part in assembly.parts if part.noun in BEHIND_FRAME)
    )
    if brought_out:
        steps.append(
            ShopStep(
                work="Glue and screw hinge blocks and slide packing to the insides of their cases, "
                "flush with the frame's edges",
                page="",
                marks=brought_out,
            )
        )
    if framed:
        steps.append(
            ShopStep(
                work="Join face frames, glued, with what they are bored for: centre stiles between "
                "rails, rails between wall stiles; diagonals alike",
                page="",
                marks=framed,
            )
        )
    steps += [
        ShopStep(
            work=f"Put {together([case.name for case in one.cases])} together",
            page=f"glue-up {one.first.name}",
            marks=one.marks,
        )
        for one in paper.case_glue_ups
    ]
    steps.append(
        ShopStep(
            work="Level the joints, smooth, ease the arrises",
            page="",
            marks=tuple(one.leaf for one in paper.leaf_glue_ups),
        )
    )
    steps += [_step(setting) for setting in later]
    if paper.finish.coats:
        steps.append(
            ShopStep(
                work="Finish, all sides alike",
                page="finish",
                marks=tuple(one.leaf for one in paper.leaf_glue_ups),
            )
        )
    planted = tuple(
        dict.fromkeys(
            part.mark
            for group in assembly.groups
            for part in group.parts
            if part.noun.endswith("applied bar") and group.name not in paper.delivery.on_site
        )
    )
    bedded = dict.fromkeys(
        pane.name.split(SEPARATOR)[0] for pane in paper.care.panes if pane.stop_width is None
    )
    if bedded:
        steps.append(
            ShopStep(
                work="Rebates sealed: bed the glass, points, compound; leave it to set",
                page="",
                marks=tuple(bedded),
            )
        )
    if planted:
        steps.append(ShopStep(work=PLANT, page="", marks=planted))
    return tuple(steps)


def _but_glued(marks: tuple[str, ...]) -> str:
    """Boards of a panel keep what they lose once it is glued."""
    return f"; boards of {', '.join(marks)} by their sheet" if marks else ""


_WHERE: dict[By, str] = {"saw": "at the saw", "router": "at the router", "bench": "by hand"}


def _step(setting: Setting) -> ShopStep:
    title = setting.title
    if all(run.noun == "loose tenon" for run in setting.runs):
        title = "loose tenons from strips"
    work = f"{title[:1].upper()}{title[1:]}, {_WHERE[setting.by]}"
    return ShopStep(work=work, page=setting.code, code=setting.code, marks=setting.marks)
