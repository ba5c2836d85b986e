"""Cabinets stood where they belong, one after the other: from the design's blocks to a Casework."""

from __future__ import annotations

from parametric.cases.at_least import AtLeast, least_of
from parametric.cases.cabinet import CabinetSpec
from parametric.cases.face_frame import FaceFrame, FaceFrameSpec, size_face_frame
from parametric.cases.hung_fronts import fronts_of, site_of
from parametric.cases.make_case import Outside, fronts_and_box, make_case
from parametric.cases.plan_shape import Corner
from parametric.cases.run import RunSpec, run_misfits, share_run
from parametric.cases.services import service_faults
from parametric.cases.shelf import ShelfSpec
from parametric.catalog.shop import Shop
from parametric.design import Design
from parametric.design.survey import SurveySpec
from parametric.figures import Figure, exceeds, largest, named, smallest
from parametric.names import join
from parametric.problems import Problem, stops
from parametric.resolve.case_backs import back_board, back_of, sheet_room
from parametric.resolve.case_blocks import frame_timber, front_thickness, travel_of
from parametric.resolve.case_edges import Ends, lowest_ceiling, own_edges, run_edges, walls
from parametric.resolve.case_misfits import case_misfits
from parametric.resolve.case_sizes import (
    impossible_case,
    let_in_from_both,
    no_height_left,
    no_width_left,
)
from parametric.resolve.case_slope import gap_under, slope_faults, slope_over
from parametric.resolve.casework import Casework, Edges, StandingCase, StandingRun
from parametric.resolve.corners import WallCorner, in_a_corner
from parametric.resolve.opening import Opening, resolve_opening
from parametric.resolve.panel_field import board_thickness, resolve_board
from parametric.resolve.rooms import Rooms
from parametric.resolve.stand_corners import Corners
from parametric.resolve.told_apart import placed_in


def resolve_casework(
    design: Design, shop: Shop, *, begins: float
) -> tuple[Casework | None, tuple[Problem, ...]]:
    """Every cabinet that stands; None where there is none, or a stop leaves nothing to go on with.

    Args:
        design: the blocks.
        shop: the workshop.
        begins: how far right in the room the first opening with cabinets begins, mm.
    """
    return _Cabinets(design, shop, begins).resolved()


class _Cabinets:
    """The cabinets of one design as they are worked out, one after the other."""

    def __init__(self, design: Design, shop: Shop, begins: float) -> None:
        self.design, self.shop = design, shop
        self.rooms = Rooms(begins)
        self.problems: list[Problem] = []
        self.cases: dict[str, StandingCase] = {}
        self.runs: list[StandingRun] = []
        self.edges: list[tuple[str, Edges]] = []
        self.openings: dict[str, Opening | None] = {}
        self.written = {
            name: block
            for name, block in design.named("cabinet").items()
            if isinstance(block, CabinetSpec)
        }
        depths = [
            named("depth of the deepest cabinet", depth)
            for spec in self.written.values()
            for depth in (spec.depth, spec.right_depth)
            if depth is not None
        ]
        self.corners = Corners(design, self._opening, self.problems)
        self.depth = max(depths, key=float) if depths else Figure(0.0)

    def resolved(self) -> tuple[Casework | None, tuple[Problem, ...]]:
        """All of them."""
        runs = {
            name: block
            for name, block in self.design.named("run").items()
            if isinstance(block, RunSpec)
        }
        in_runs = {
            str(line.called)
            for run in runs.values()
            for line in run.left_to_right
            if line.called is not None
        }
        for name, run in runs.items():
            self._run(name, run)
        waiting = [name for name in self.written if name not in in_runs]
        while waiting and not stops(self.problems):
            ready = [name for name in waiting if self._may_stand(name)]
            if not ready:
                break
            for name in ready:
                self._alone(name, self.written[name])
                waiting.remove(name)
        if not self.cases or stops(self.problems):
            return None, tuple(self.problems)
        return (
            Casework(
                cases=tuple(self.cases.values()),
                runs=tuple(self.runs),
                edges=tuple(self.edges),
                depth=self.depth,
            ),
            tuple(self.problems),
        )

    def _may_stand(self, name: str) -> bool:
        """Whether what it stands on stands already."""
        on = self.written[name].stands_on
        return on is None or str(on) == "floor" or f"cabinet {on}" in self.cases

    def _opening(self, survey: str | None) -> tuple[SurveySpec, Opening | None]:
        """A survey, worked out, and its wall given a place among those that it turns from."""
        found = self.design.block("survey", survey)
        assert isinstance(found, SurveySpec), "the reader has seen that it is there"
        key = found.heading
        if key not in self.openings:
            self.openings[key], told = resolve_opening(
                found, self.shop, fit="fits", unit=self.design.unit
            )
            self.problems += told
            opening = self.openings[key]
            if found.right_of is not None or found.left_of is not None:
                other, beside = self._opening(str(found.right_of or found.left_of))
                if opening is not None and beside is not None:
                    self.rooms.turn(found, opening, other, beside, self.depth)
            elif opening is not None:
                self.rooms.apart(found, opening)
        return found, self.openings[key]

    def _run(self, name: str, spec: RunSpec) -> None:
        survey, opening = self._opening(None if spec.in_ is None else str(spec.in_))
        if opening is None:
            return
        place = join(f"run {name}".strip())
        corners = self.corners.of_run(spec, survey)
        if corners is None:
            return
        begins, room = opening.clear_left, opening.clear
        if 0 in corners and corners[0].right is survey and exceeds(corners[0].late, 0.0):
            begins, room = begins + corners[0].late, room - corners[0].late
        across = share_run(spec, name=place, left=begins, room=room)
        misfits = run_misfits(spec, across, room=room, unit=self.design.unit)
        if misfits:
            self.problems += misfits
            return
        raised = spec.plinth if spec.above_floor is None else spec.above_floor
        foot = named(join(place, "foot of the cases"), raised)
        off = next((corner.off(survey) for corner in corners.values()), Figure(0.0))
        board = resolve_board(self.design, str(spec.board))
        thick = board_thickness(self.design, str(spec.board))
        names = self._names(spec)
        made: list[StandingCase] = []
        for at, (line, own, left, width) in enumerate(
            zip(spec.left_to_right, names, across.lefts, across.widths, strict=True)
        ):
            corner = corners.get(at)
            if line.called is None or (corner is not None and corner.right is survey):
                continue
            cabinet = self.written[str(line.called)]
            ceiling = lowest_ceiling(opening, left, left + width)
            high = self._height(cabinet, own, ceiling - foot, spec.top_filler, spec.counter)
            if high is None:
                return
            case = self._stand(
                cabinet,
                own,
                survey,
                opening,
                left=left,
                width=width,
                height=high,
                foot=foot,
                run=place,
                on="",
                counter=spec.counter,
                filler=spec.top_filler,
                off=off,
                corner=corner,
            )
            if case is None:
                return
            made.append(case)
            if spec.top_filler is not None and opening.slopes:
                self.edges.append((own, own_edges(own, opening, case, self.shop.blanks.filler)))
        first, last = made[0], made[-1]
        left = named(join(place, "cases begin"), first.left)
        right = named(join(place, "cases end"), last.left + last.case.box.width)
        head = named(join(place, "top of the cases"), smallest(*(case.top for case in made)))
        ends = Ends(name=place, opening=opening, left=left, right=right, foot=foot, head=head)
        self.runs.append(
            StandingRun(
                name=place,
                spec=spec,
                board=board,
                thickness=named(join(place, "board"), thick),
                opening=opening,
                stands=self.rooms.of(survey),
                cases=tuple(case.name for case in made),
                across=across,
                left=left,
                right=right,
                foot=foot,
                head=head,
                front=min(case.front for case in made),
                depth=named(join(place, "depth"), largest(*(c.case.box.depth for c in made))),
                edges=run_edges(spec, ends, self.shop.blanks.filler),
                corners=tuple(
                    at
                    for at, line in enumerate(spec.left_to_right)
                    if line.called is not None and self.written[str(line.called)].plan is not None
                ),
            )
        )

    def _names(self, spec: RunSpec) -> tuple[str, ...]:
        """What each line's cabinet is called: numbered from the left where it stands twice."""
        called = [
            str(line.called)
            for run in self.design.named("run").values()
            if isinstance(run, RunSpec)
            for line in run.left_to_right
            if line.called is not None
        ]
        found = []
        for line in spec.left_to_right:
            if line.called is None:
                found.append("")
                continue
            name = f"cabinet {line.called}"
            # a case in a corner stands in two runs, once
            twice = in_a_corner(self.written[str(line.called)])
            if called.count(str(line.called)) > (2 if twice else 1):
                number = 1
                while f"{name} {number}" in (*self.cases, *found):
                    number += 1
                name = f"{name} {number}"
            found.append(name)
        return tuple(found)

    def _height(
        self,
        spec: CabinetSpec,
        name: str,
        room: Figure,
        filler: Figure | AtLeast | None,
        counter: Figure | None,
    ) -> Figure | None:
        """As it is written, else what a ceiling and a filler leave of it.

        Args:
            spec: the cabinet as written.
            name: of this one.
            room: from its foot to the ceiling where that is lowest over it, mm.
            filler: what closes its run to the ceiling.
            counter: on it, mm.
        """
        if isinstance(spec.height, Figure):
            return spec.height
        filling = spec.top_filler if spec.top_filler is not None else filler
        if spec.top == "follows rake":
            return room - gap_under(spec, filler)
        if filling is None:
            self.problems.append(
                Problem(
                    code="no_height",
                    level="stop",
                    message=f"{spec.heading} says neither how high it is nor what closes it to the "
                    "ceiling.",
                    where=spec.here,
                    about=name,
                    found="no height",
                    allowed="`height`, or `top filler`",
                    fix="Write `height: ` and its size, or `top filler: at least 30`.",
                )
            )
            return None
        left = room - least_of(filling)
        if counter is not None:
            left = left - counter
        if not exceeds(left, 0.0):
            self.problems.append(no_height_left(spec, name, left, filling, self.design.unit))
            return None
        return left

    def _alone(self, name: str, spec: CabinetSpec) -> None:
        """A cabinet that no run calls."""
        survey, opening = self._opening(None if spec.in_ is None else str(spec.in_))
        if opening is None:
            return
        own = f"cabinet {name}".strip()
        below = self.cases.get(f"cabinet {spec.stands_on}")
        if below is not None:
            foot = named(join(own, "stands at"), below.top)
        else:
            raised = spec.plinth if spec.above_floor is None else spec.above_floor
            foot = named(join(own, "stands at"), raised)
        frame = self._frame(spec, own, opening)
        if frame is not None and not exceeds(frame.opening, 0.0):
            self.problems.append(no_width_left(spec, frame, self.design.unit))
            return
        wide = spec.width if isinstance(spec.width, Figure) else opening.clear
        wide = named(join(own, "width of the case"), wide)
        corner = self.corners.of(spec, survey) if in_a_corner(spec) else None
        if in_a_corner(spec) and corner is None:
            return
        if corner is not None:
            left: Figure = opening.clear_left + opening.clear - wide
        elif spec.from_left is not None:
            left = opening.clear_left + spec.from_left
        elif below is not None:
            left = below.left + (below.case.box.width - wide) / 2
        elif frame is not None:
            left = frame.opening_left + frame.opening / 2 - wide / 2
        else:
            left = opening.clear_left + (opening.clear - wide) / 2
        left = named(join(own, "left of the case"), left)
        ceiling = lowest_ceiling(opening, left, left + wide)
        high = self._height(spec, own, ceiling - foot, None, spec.counter)
        if high is None:
            return
        case = self._stand(
            spec,
            own,
            survey,
            opening,
            left=left,
            width=wide,
            height=high,
            foot=foot,
            run="",
            on="" if below is None else below.name,
            counter=spec.counter,
            frame=frame,
            off=None if corner is None else corner.off_left,
            corner=corner,
        )
        if case is not None and spec.top_filler is not None:
            self.edges.append((own, own_edges(own, opening, case, self.shop.blanks.filler)))

    def _frame(self, spec: CabinetSpec, own: str, opening: Opening) -> FaceFrame | None:
        if spec.kind != "face frame":
            return None
        written = self.design.block("face frame", spec.face_frame)
        assert isinstance(written, FaceFrameSpec), "every job has one"
        left, right = walls(opening)
        return size_face_frame(
            written, name=own, left_wall=tuple(left.items()), right_wall=tuple(right.items())
        )

    def _stand(
        self,
        spec: CabinetSpec,
        name: str,
        survey: SurveySpec,
        opening: Opening,
        *,
        left: Figure,
        width: Figure,
        height: Figure,
        foot: Figure,
        run: str,
        on: str,
        counter: Figure | None,
        frame: FaceFrame | None = None,
        filler: Figure | AtLeast | None = None,
        off: Figure | None = None,
        corner: WallCorner | None = None,
    ) -> StandingCase | None:
        """One case, made and stood.

        `filler` closes its run to the ceiling; `off` is how far all that is beside it stands off its
        wall, mm.
        """
        board = resolve_board(self.design, str(spec.board))
        frame_left = Figure(0.0) if frame is None else frame.opening_left - left
        outside = Outside(
            name=name,
            width=width,
            height=height,
            foot=foot,
            thickness=board_thickness(self.design, str(spec.board)),
            front_thickness=front_thickness(self.design, spec) if spec.has_fronts else None,
            under=slope_over(spec, opening, left, width, foot, gap_under(spec, filler)),
            corner=None
            if corner is None
            else Corner(angle=corner.angle, right_width=self.corners.right_width(spec, corner)),
        )
        back = back_of(self.design, spec)
        behind = back_board(self.design, spec, back)
        if faults := slope_faults(spec, opening, back, counter):
            self.problems += faults
            return None
        box, _ = fronts_and_box(spec, outside, frame, frame_left)
        wrong = impossible_case(spec, box, back, self.design.unit)
        travel = None if wrong else travel_of(self.design, spec, outside, box, back, frame)
        _, fronts = fronts_and_box(spec, outside, frame, frame_left, travel)
        if spec.has_fronts and not wrong:
            wrong = fronts.faults()
        if wrong:
            self.problems += wrong
            return None
        shelf = self.design.block("shelf", spec.shelf)
        assert isinstance(shelf, ShelfSpec), "every job has one"
        case = make_case(
            spec,
            outside,
            frame=frame,
            frame_left=frame_left,
            back=back,
            shelf=shelf,
            sheet=sheet_room(behind, self.shop),
        )
        case = placed_in(case, name, (outside, frame, frame_left))
        unit = self.design.unit
        amiss = case_misfits(case, shelf, counter, unit) or let_in_from_both(case, unit)
        if no_room := amiss or service_faults(spec, case, unit):
            self.problems += no_room
            return None
        hung = fronts_of(spec, case, fronts)
        for own, opening_of in hung:
            if misfits := own.misfits(site_of(opening_of), self.design.unit):
                self.problems += misfits
                return None
        standing = StandingCase(
            case=case,
            board=board,
            back_board=behind,
            left=left,
            front=float(self.depth - spec.depth - (off or 0.0)),
            room=self.rooms.of(survey),
            fronts=hung[0][0] if hung else None,
            beyond=hung[1][0] if len(hung) > 1 else None,
            returns_in="" if corner is None or not run else self.corners.returns_in(spec, corner),
            survey=survey,
            opening=opening,
            run=run,
            on=on,
            counter=counter,
            frame_timber=None if frame is None else frame_timber(self.design, spec),
        )
        self.cases[name] = standing
        return standing
