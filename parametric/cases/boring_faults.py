"""What cannot be bored, or is left out: pins without room, plates on something else, joints too short."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from parametric.cases.boring import Bite, BoringSpec, clashes
from parametric.cases.butt_joints import CarcassScrews, Dowels
from parametric.cases.case_tenons import Tenons
from parametric.cases.fixings import TooShort
from parametric.cases.hinge_blocks import HingeBlocks
from parametric.cases.pin_rows import NoPins, PinRows
from parametric.cases.plate_holes import PlateHoles
from parametric.cases.pocket_screws import PocketScrews
from parametric.cases.slide_screws import SlideScrews
from parametric.figures import Figure, exceeds, origin_line
from parametric.problems import Level, Problem

Said = Callable[[float], str]
"""How a length is said, in the design's unit."""


def pin_faults(
    rows: PinRows | NoPins, spec: BoringSpec, said: Said, *, case: str
) -> Iterator[Problem]:
    """A bay without pins is a stop; heights that are left out, and shallow pins, are a note.

    Args:
        rows: of one bay.
        spec: how the workshop bores.
        said: how a length is said.
        case: its case, of which every bay is alike in how deep its pins go.
    """
    if isinstance(rows, NoPins):
        yield _no_pins(rows, spec, said)
        return
    if exceeds(rows.asked, rows.deep):
        yield _problem(
            "pins_shallow",
            "note",
            f"{case}: pins are bored {said(rows.deep)} deep, not {said(rows.asked)}: the board "
            "that has them, or has them on both of its faces, is too thin for more.",
            rows.asked,
            case,
            spec,
            found=said(rows.asked),
            allowed=f"at most {said(rows.deep)}",
            fix=f"Buy pins that go in no more than {said(rows.deep)}.",
        )
    if rows.left_out:
        heights = ", ".join(said(one.height) for one in rows.left_out)
        beside = ", ".join(dict.fromkeys(one.beside for one in rows.left_out))
        yield _problem(
            "pins_left_out",
            "note",
            f"{rows.name}: no pins at {heights} from the foot of the case: less than "
            f"{said(spec.web)} of wood would be left beside {beside}.",
            spec.web,
            rows.name,
            spec,
            found=heights,
            allowed=f"at least {said(spec.web)} of wood",
            fix="Nothing, or move what is there.",
        )


def _no_pins(rows: NoPins, spec: BoringSpec, said: Said) -> Problem:
    words = {
        "low": f"is {said(rows.has)} high and the first and the last pin want {said(rows.needs)}",
        "shallow": f"is {said(rows.has)} deep and two lines of pins want {said(rows.needs)}",
        "thin": f"has a board of {said(rows.has)} where pins want {said(rows.needs)}",
        "few": f"has fewer heights for pins, {said(rows.has)}, than shelves, {said(rows.needs)}",
        "crowded": f"has no height that is {said(rows.needs)} clear of {rows.beside}",
    }
    return _problem(
        "no_pins",
        "stop",
        f"{rows.name} {words[rows.why]}: not every shelf has something to lie on.",
        rows.has,
        rows.name,
        spec,
        found=said(rows.has),
        allowed=f"at least {said(rows.needs)}",
        fix="Make its shelves fixed ones, or give the pins room under `boring`.",
    )


def plate_faults(
    plates: PlateHoles,
    spec: BoringSpec,
    said: Said,
    *,
    taken: Sequence[Bite],
    thickness: Figure,
    depth: Figure,
    case: str,
) -> Iterator[Problem]:
    """Plates on something else that is cut there, through the side, or past the back.

    Args:
        plates: of one leaf.
        spec: how the workshop bores.
        said: how a length is said.
        taken: what is cut into the same face, the plates of other leaves too.
        thickness: of the side, mm.
        depth: from its front edge to what is behind, mm.
        case: the case that it is of.
    """
    for hole, other in clashes(plates.bites, taken, spec.web):
        up = (hole.low + hole.high) / 2
        yield _problem(
            "plate_meets",
            "stop",
            f"{hole.name} at {said(up)} from {plates.begins} leaves less than "
            f"{said(spec.web)} of wood beside {other.name}.",
            plates.line,
            plates.name,
            spec,
            found=said(up),
            allowed=f"at least {said(spec.web)} of wood",
            fix="Move the hinge up or down, or what it meets.",
        )
    if exceeds(plates.asked, plates.deep):
        yield _problem(
            "plates_shallow",
            "caution",
            f"{case}: where hinge plates stand on both faces of one board their screws go "
            f"{said(plates.deep)} deep, not {said(plates.asked)}.",
            plates.asked,
            case,
            spec,
            found=said(plates.asked),
            allowed=f"at most {said(plates.deep)}",
            fix="Use screws that hold in that, or a thicker board.",
        )
    if exceeds(plates.deep + spec.behind, thickness):
        yield _problem(
            "plate_through",
            "stop",
            f"{plates.name}: holes {said(plates.deep)} deep leave less than {said(spec.behind)} "
            f"in a side of {said(thickness)}.",
            plates.deep,
            plates.name,
            spec,
            found=said(plates.deep),
            allowed=f"at most {said(thickness - spec.behind)}",
            fix="Write shallower `plate holes` under `boring`.",
        )
    if exceeds(plates.line + plates.across / 2 + spec.web, depth):
        yield _problem(
            "plate_past_back",
            "stop",
            f"{plates.name}: their screws stand {said(plates.line)} from the front edge, and the "
            f"side is {said(depth)} deep.",
            plates.line,
            plates.name,
            spec,
            found=said(plates.line),
            allowed=f"at most {said(depth - plates.across / 2 - spec.web)}",
            fix="Make the case deeper.",
        )


def block_faults(
    blocks: HingeBlocks, spec: BoringSpec, said: Said, crossing: Sequence[Bite]
) -> Iterator[Problem]:
    """A hinge's block where another board stands.

    Args:
        blocks: of one leaf.
        spec: how the workshop bores.
        said: how a length is said.
        crossing: the boards that stand against the same one.
    """
    if blocks.left_out:
        heights = ", ".join(map(said, blocks.left_out))
        yield _problem(
            "hinge_in_packing",
            "caution",
            f"{blocks.name}: at {heights} over the foot of the case the packing of drawers stands "
            "where a block would, and no hole is bored for the hinge's plate.",
            blocks.left_out[0],
            blocks.name,
            spec,
            found=heights,
            allowed="clear of the packing",
            fix="Move the hinge off the drawers, or notch the packing round a block on site.",
        )
    for block in blocks.bites(0.0):
        other = next(
            (
                one
                for one in crossing
                if min(block.high, one.high) - max(block.low, one.low) > 1e-6
                and min(block.far, one.far) - max(block.near, one.near) > 1e-6
            ),
            None,
        )
        if other is None:
            continue
        low, high = said(block.low), said(block.high)
        yield _problem(
            "hinge_block_meets",
            "stop",
            f"{blocks.name}: a block from {low} to {high} over the foot of the case stands where "
            f"{other.name} is, {said(other.low)} to {said(other.high)}.",
            blocks.heights[0],
            blocks.name,
            spec,
            found=f"{low} to {high}",
            allowed=f"clear of {other.name}",
            fix="Move the hinge, or the board.",
        )
        return


def slide_faults(
    screws: SlideScrews, spec: BoringSpec, said: Said, taken: Sequence[Bite], *, case: str
) -> Iterator[Problem]:
    """A slide's screws on something else that is cut there, wherever the slide is moved.

    Args:
        screws: of one slide.
        spec: how the workshop bores.
        said: how a length is said.
        taken: what else is cut into the same face.
        case: the case that it is of.
    """
    for hole, other in clashes(screws.bites(), taken, spec.web):
        up, back = (hole.low + hole.high) / 2, (hole.near + hole.far) / 2
        yield _problem(
            "slide_meets",
            "stop",
            f"{hole.name} at {said(up)} from the foot of {case}, {said(back)} from its front, leaves "
            f"less than {said(spec.web)} of wood beside {other.name}.",
            screws.first,
            screws.name,
            spec,
            found=said(up),
            allowed=f"at least {said(spec.web)} of wood",
            fix="Make the drawer higher or lower, or move what it meets.",
        )
        return


def joint_faults(
    held: Dowels | CarcassScrews | PocketScrews | Tenons | TooShort,
    spec: BoringSpec,
    said: Said,
    *,
    taken: Sequence[Bite] = (),
    own: Sequence[Bite] = (),
    end: Figure,
    covered: str = "",
) -> Iterator[Problem]:
    """A joint too short for two fixings, wood too thin beside one, holes on something else.

    Args:
        held: what holds the joint.
        spec: how the workshop bores.
        said: how a length is said.
        taken: what else is cut into the face.
        own: its own holes there, as `bites_of` gives them.
        end: thickness of the board that is bored in its end, mm.
        covered: the board whose end stands where its screws go in; empty where none does.
    """
    if isinstance(held, TooShort):
        yield _problem(
            "joint_short",
            "stop",
            f"{held.name}: {said(held.has)} of joint is too short for "
            + ("a tenon." if held.one else "two, and one alone lets the board turn."),
            held.has,
            held.name,
            spec,
            found=said(held.has),
            allowed=f"at least {said(held.needs)}",
            fix="Make the board wider, or let it in.",
        )
        return
    name = held.places.name
    for hole, other in clashes(own, taken, spec.web):
        back = (hole.near + hole.far) / 2
        yield _problem(
            "joint_meets",
            "stop",
            f"{hole.name} {said(back)} from the front leaves less than {said(spec.web)} of wood "
            f"beside {other.name}.",
            spec.dowel_from_edge,
            name,
            spec,
            found=said(back),
            allowed=f"at least {said(spec.web)} of wood",
            fix="Write another `dowel from edge` or `dowel pitch` under `boring`.",
        )
    if isinstance(held, PocketScrews):
        yield from _pocket_faults(held, spec, said, end=end)
        return
    if covered:
        yield _problem(
            "screws_covered",
            "stop",
            f"{name}: its screws go in where the end of {covered} stands on the other side: one of "
            "the two cannot be driven.",
            spec.screw[0],
            name,
            spec,
            found="an end over the heads",
            allowed="heads that stay free",
            fix="Let them in (`dado`) and glue them, dowel them (`corners: dowel`), or move one up "
            "or down.",
        )
    across = held.thread if isinstance(held, CarcassScrews) else held.thick
    beside = (end - across) / 2
    if exceeds(spec.behind, beside):
        yield _problem(
            "end_splits",
            "stop",
            f"{name}: what is {said(across)} wide leaves {said(beside)} on either side in the end of a "
            f"board of {said(end)}.",
            across,
            name,
            spec,
            found=said(beside),
            allowed=f"at least {said(spec.behind)}",
            fix="Use thinner ones, or a thicker board.",
        )


def _pocket_faults(
    held: PocketScrews, spec: BoringSpec, said: Said, *, end: Figure
) -> Iterator[Problem]:
    """A board too thin to hold a screw's head, a screw too short to hold, or out of the other side."""
    name = held.places.name
    if exceeds(held.least, held.seat):
        yield _problem(
            "pocket_thin",
            "stop",
            f"{name}: pockets {said(held.wide)} wide leave {said(held.seat)} along a screw in a board "
            f"of {said(end)}: its head pulls through.",
            held.wide,
            name,
            spec,
            found=said(held.seat),
            allowed=f"at least {said(held.least)}",
            fix="Use a thicker board, narrower pockets, or another way to hold it.",
        )
    elif exceeds(held.into + spec.behind, held.face):
        yield _problem(
            "pocket_screw_long",
            "stop",
            f"{name}: screws {said(held.long)} long go {said(held.into)} into a board of "
            f"{said(held.face)}, and leave less than {said(spec.behind)} behind.",
            held.long,
            name,
            spec,
            found=said(held.into),
            allowed=f"at most {said(held.face - spec.behind)}",
            fix="Use shorter ones, or a thicker board.",
        )
    elif exceeds(held.least, held.into):
        yield _problem(
            "pocket_screw_short",
            "stop",
            f"{name}: screws {said(held.long)} long go only {said(held.into)} into the other board.",
            held.long,
            name,
            spec,
            found=said(held.into),
            allowed=f"at least {said(held.least)}",
            fix="Use longer ones, or another way to hold it.",
        )


def _problem(
    code: str,
    level: Level,
    message: str,
    blame: Figure,
    about: str,
    spec: BoringSpec,
    *,
    found: str,
    allowed: str,
    fix: str,
) -> Problem:
    return Problem(
        code=code,
        level=level,
        message=message,
        where=origin_line(blame) or spec.here,
        about=about,
        found=found,
        allowed=allowed,
        fix=fix,
    )
