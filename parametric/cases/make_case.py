"""One case from its outside: box, bays, spaces, boards."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.cases.back import BackSpec, size_back
from parametric.cases.back_pieces import BackPiece, SheetRoom, back_pieces
from parametric.cases.boards import Boards
from parametric.cases.cabinet import CabinetSpec
from parametric.cases.case import (
    Case,
    CaseBay,
    CaseBox,
    bay_places,
    front_opening,
    partition_lefts,
    size_box,
)
from parametric.cases.face_frame import FaceFrame
from parametric.cases.hung_fronts import hung_fronts, site_of
from parametric.cases.plan_boards import PlanBoards, turned_fronts
from parametric.cases.plan_shape import Corner, size_plan
from parametric.cases.services import services
from parametric.cases.shelf import ShelfSpec
from parametric.cases.slope import Under
from parametric.cases.spaces import Lapped, spaces, stretches
from parametric.figures import Figure, named
from parametric.hangings.cabinet import CabinetSpec as FrontsSpec
from parametric.hangings.cabinet import measures_of
from parametric.hangings.front_places import Measures, bay_widths, front_stacks
from parametric.names import join


@dataclass(frozen=True, slots=True, kw_only=True)
class Outside:
    """What a case is made from, mm: its outside, and its foot above the highest floor."""

    name: str
    width: Figure
    height: Figure
    foot: Figure
    thickness: Figure
    front_thickness: Figure | None
    """Of its fronts; None where it has none."""
    corner: Corner | None = None
    """Of one that stands in a corner."""
    under: Under | None = None
    """Where a top that follows a slope ends; None for a level one."""


def front_back(spec: CabinetSpec, outside: Outside, frame: FaceFrame | None) -> Figure:
    """Where the backs of the fronts stand, from the front edges of the case's boards, mm.

    Fronts within a face frame are flush with its face, those within a case with its edges.
    """
    if outside.front_thickness is None:
        return Figure(0.0)
    thick = outside.front_thickness if spec.fronts == "inset" else Figure(0.0)
    back = thick if frame is None else thick - frame.thickness
    return named(join(outside.name, "backs of its fronts"), back)


def front_out(spec: CabinetSpec, outside: Outside, frame: FaceFrame | None) -> Figure:
    """Where the faces of the fronts, or of a face frame, stand before the case's boards, mm."""
    over = outside.front_thickness if spec.fronts != "inset" else None
    out = Figure(0.0) if over is None else over
    return named(
        join(outside.name, "fronts before it"), out if frame is None else out + frame.thickness
    )


def fronts_and_box(
    spec: CabinetSpec,
    outside: Outside,
    frame: FaceFrame | None,
    frame_left: Figure,
    travel: Figure | None = None,
) -> tuple[CaseBox, FrontsSpec]:
    """The box and its fronts as they are hung, before anything is placed.

    Args:
        spec: the cabinet as written.
        outside: its name and size.
        frame: the face frame before it, if any.
        frame_left: the left of the frame's opening in the case's frame, mm.
        travel: how far its drawers draw out, mm.
    """
    box = size_box(
        spec,
        name=outside.name,
        width=outside.width,
        height=outside.height,
        foot=outside.foot,
        thickness=outside.thickness,
        frame=frame,
        under=outside.under,
    )
    opening = front_opening(box, frame, frame_left)
    fronts = hung_fronts(spec, edge=opening.edge, partition=opening.partition, travel=travel)
    return box, fronts


def make_case(
    spec: CabinetSpec,
    outside: Outside,
    *,
    frame: FaceFrame | None,
    frame_left: Figure,
    back: BackSpec | None,
    shelf: ShelfSpec,
    sheet: SheetRoom | None = None,
) -> Case:
    """A case with every board of it.

    Args:
        spec: the cabinet as written.
        outside: its name and size.
        frame: the face frame before it, if any.
        frame_left: the left of the frame's opening in the case's frame, mm.
        back: its back as written; None for none.
        shelf: its shelves as written.
        sheet: what its back is sawn from.
    """
    if spec.plan is not None:
        return make_planned(spec, outside, shelf=shelf)
    box, fronts = fronts_and_box(spec, outside, frame, frame_left)
    opening = front_opening(box, frame, frame_left)
    measures = measures_of(fronts, site_of(opening))
    widths = bay_widths(measures, fronts.bays)
    partitions = partition_lefts(box, opening, widths)
    sized = None
    if back is not None:
        sized = size_back(
            back,
            name=box.name,
            clear_width=box.clear_width,
            clear_height=box.clear_height,
            depth=box.depth,
            edge=box.thickness,
        )
    bays = _bays(spec, box, fronts, measures, partitions)
    served = tuple(services(spec, box, bays))
    pieces: tuple[BackPiece, ...] = ()
    if sized is not None:
        holes = [place for one in served for place in one.holes]
        pieces = back_pieces(sized, box, partitions, bays, sheet, holes)
    making = Boards(spec, box, sized, pieces)
    behind_fronts = front_back(spec, outside, frame)
    front = behind_fronts if float(behind_fronts) > 0 else Figure(0.0)
    room = making.behind - front - shelf.set_back
    depth = named(join(box.name, "shelf depth"), room if shelf.depth is None else shelf.depth)
    thick = named(join(box.name, "shelf"), shelf.thickness or box.thickness)
    several = len(bays) > 1
    boards = [*making.carcass(), *making.partitions(partitions)]
    for bay in bays:
        boards += making.fixed_shelves(bay, several, float(front))
        boards += making.packings(bay, several, float(front))
        boards += making.shelves(
            bay,
            several,
            thickness=thick,
            depth=depth,
            clearance=named(join(box.name, "shelf clearance"), shelf.clearance),
            front=float(front + shelf.set_back) if shelf.depth is None else _front(making, depth),
        )
    return Case(
        spec=spec,
        box=box,
        back=sized,
        frame=frame,
        opening=opening,
        bays=bays,
        boards=tuple(boards),
        shelf_depth=depth,
        behind=making.behind,
        front_back=behind_fronts,
        front_out=front_out(spec, outside, frame),
        services=served,
    )


def make_planned(spec: CabinetSpec, outside: Outside, *, shelf: ShelfSpec) -> Case:
    """A case that is no rectangle from above, with every board of it: one bay, and its own backs.

    Args:
        spec: the cabinet as written.
        outside: its name and size, and the corner that it stands in.
        shelf: its shelves as written.
    """
    box, fronts = fronts_and_box(spec, outside, None, Figure(0.0))
    plan = size_plan(spec, name=box.name, width=box.width, corner=outside.corner)
    turned = turned_fronts(spec, plan, box, thickness=outside.front_thickness)
    opening = turned[0].opening
    behind_fronts = front_back(spec, outside, None)
    front = behind_fronts if float(behind_fronts) > 0 else Figure(0.0)
    making = PlanBoards(plan, box)
    boards = list(making.carcass())
    bays = _bays(spec, box, fronts, measures_of(fronts, site_of(opening)), ())
    for bay in bays:
        floored = [space for space in reversed(bay.spaces) if space.floored]
        boards += [
            making.fixed_shelf(
                f"fixed shelf {number}", float(space.foot - box.thickness), float(front)
            )
            for number, space in enumerate(floored, 1)
        ]
        boards += making.shelves(
            bay.spaces,
            thickness=named(join(box.name, "shelf"), shelf.thickness or box.thickness),
            clearance=named(join(box.name, "shelf clearance"), shelf.clearance),
            front=float(front + shelf.set_back),
        )
    behind = named(join(box.name, "faces of its backs"), box.depth - box.thickness)
    return Case(
        spec=spec,
        box=box,
        back=None,
        frame=None,
        opening=opening,
        bays=bays,
        boards=tuple(boards),
        shelf_depth=None,
        behind=behind,
        front_back=behind_fronts,
        front_out=front_out(spec, outside, None),
        plan=plan,
        turned_fronts=turned,
    )


def _front(making: Boards, depth: Figure) -> float:
    """A shelf of a given depth lies against the back."""
    return float(making.behind - depth)


def _bays(
    spec: CabinetSpec,
    box: CaseBox,
    fronts: FrontsSpec,
    measures: Measures,
    partitions: tuple[Figure, ...],
) -> tuple[CaseBay, ...]:
    places = front_stacks(measures, fronts.bays)
    lapped = Lapped(over=measures.over_ends, gap=measures.gap)
    found = []
    for index, (left, width) in enumerate(bay_places(box, partitions)):
        own = [place for place in places if place.bay == index]
        name = box.name if not partitions else join(box.name, f"bay {index + 1}")
        line = spec.bays[index]
        found.append(
            CaseBay(
                number=index + 1,
                left=left,
                width=width,
                spaces=spaces(
                    box,
                    line,
                    stretches(box, line, own),
                    lapped,
                    name,
                    box.top_over(float(left), float(left + width)),
                ),
            )
        )
    return tuple(found)
