"""What cannot be of a case's fronts, whatever its opening: lists, shares, sizes, hinges on nothing."""

from __future__ import annotations

from typing import assert_never

from parametric.figures import exceeds
from parametric.hangings.case_fronts import CaseFronts
from parametric.hangings.front_places import flap_side, hinge_side
from parametric.hangings.fronts import DOORS, Front, Written
from parametric.names import LEAVES
from parametric.problems import Problem
from parametric.written import Equal, Group, Parts, Rest


def front_faults(spec: CaseFronts) -> tuple[Problem, ...]:
    """Every fault of the case's fronts as written."""
    return (
        *_lists(spec),
        *_shares(spec),
        *_sizes(spec),
        *_hinges(spec),
        *_drawers(spec),
    )


def _fault(spec: CaseFronts, code: str, message: str, where: str | Group, allowed: str) -> Problem:
    line = spec.line(where) if isinstance(where, str) else where.here
    return Problem(
        code=code,
        level="stop",
        message=message,
        where=line,
        about=spec.heading,
        found=where if isinstance(where, str) else "nothing",
        allowed=allowed,
        fix=f"Write {allowed}.",
        unreadable=True,
    )


def _lists(spec: CaseFronts) -> list[Problem]:
    """One list, and no more fronts than there are letters."""
    both = "left to right", "top to bottom"
    if (spec.left_to_right is None) == (spec.top_to_bottom is None):
        said = "needs one of them" if spec.left_to_right is None else "takes one of them"
        return [
            _fault(
                spec,
                "two_lists" if spec.left_to_right else "missing_key",
                f'A case is told by "{both[0]}" or by "{both[1]}"; {spec.heading} {said}.',
                both[1] if spec.left_to_right else "kind",
                "one of the two: bays from the left, or the fronts of one bay from the top",
            )
        ]
    if not spec.bays or any(not bay.fronts for bay in spec.bays):
        return [_fault(spec, "wrong_value", "There is nothing in the list.", both[0], "a front")]
    if not spec.leaf_count:
        said = f"{spec.heading} is open throughout: it has no front to make."
        return [_fault(spec, "wrong_value", said, both[0], "a door or a drawer")]
    if spec.leaf_count > len(LEAVES):
        return [
            _fault(
                spec,
                "too_many_fronts",
                f"A case takes up to {len(LEAVES)} fronts, one a letter; {spec.heading} has "
                f"{spec.leaf_count}.",
                both[0],
                f"up to {len(LEAVES)} fronts",
            )
        ]
    return [
        _fault(
            spec,
            "unknown_key",
            f'"{key}" belongs to doors that stand over a floor; these are fronts of a case.'
            + (' Did you mean "front gap"?' if key == "floor gap" else ""),
            key,
            "nothing there",
        )
        for key in ("floor gap", "track", "guide", "lock")
        if spec.origin(key) == "chosen"
    ]


def _shares(spec: CaseFronts) -> list[Problem]:
    """One `rest` at most in a list, and proportions never beside equals."""
    lists: list[list[tuple[Written, Group]]] = [[(bay.size, bay) for bay in spec.bays]]
    lists += [[(front.size, front.line) for front in bay.fronts] for bay in spec.bays]
    found = []
    for lines in lists:
        rests = [line for size, line in lines if isinstance(size, Rest)]
        alike = [line for size, line in lines if isinstance(size, (Rest, Equal))]
        parts = [line for size, line in lines if isinstance(size, Parts)]
        if len(rests) > 1:
            said = '"rest" takes what is left, and only one line can.'
            found.append(_fault(spec, "rest_twice", said, rests[1], '"equal" on each'))
        elif rests and len(alike) > 1:
            said = '"rest" stands beside "equal"; nothing says which takes what is left.'
            found.append(_fault(spec, "shares_mixed", said, rests[0], '"equal" on each'))
        elif parts and alike:
            said = "Parts stand beside equal or rest; they never mix."
            found.append(_fault(spec, "shares_mixed", said, parts[0], "all of them in parts"))
    return found


def _sizes(spec: CaseFronts) -> list[Problem]:
    """Gaps, reveals and edges that contradict each other."""
    gap, reveal, edge = spec.front_gap, spec.edge_reveal, spec.case_edge
    partition = spec.partition if spec.partition is not None else edge
    found = []
    if float(gap) <= 0:
        said = "Fronts with no gap between them bind."
        found.append(_fault(spec, "no_front_gap", said, "front gap", "a gap, 2 or 3 mm as a rule"))
    if spec.fronts == "inset":
        if spec.origin("edge reveal") == "chosen":
            said = (
                'An "edge reveal" is what fronts over a case leave of its edge; inset fronts '
                'leave all of it, and stand off it by "front gap".'
            )
            found.append(
                _fault(spec, "fronts_contradict", said, "edge reveal", "`front gap` alone")
            )
        return found
    if not exceeds(edge, reveal):
        said = "The reveal is all of the case's edge: the fronts would not lie over it."
        found.append(_fault(spec, "fronts_contradict", said, "edge reveal", "less than the edge"))
    if spec.fronts == "half overlay" and not exceeds(edge, gap):
        said = "Two fronts share the case's edge, and the gap between them is all of it."
        found.append(_fault(spec, "fronts_contradict", said, "front gap", "less than the edge"))
    if len(spec.bays) > 1 and float(partition) > 0 and not exceeds(partition, gap):
        said = "Two fronts share a partition, and the gap between them is all of it."
        found.append(_fault(spec, "fronts_contradict", said, "front gap", "less than a partition"))
    return found


def _hinges(spec: CaseFronts) -> list[Problem]:
    """A single door says its side where neither end of the case does, a flap says its own, and
    a door hangs on wood.
    """
    found = []
    count = len(spec.bays)
    none = spec.partition is not None and float(spec.partition) == 0
    for index, bay in enumerate(spec.bays):
        for front in bay.fronts:
            found += _side_said(spec, front)
            if front.kind not in DOORS:
                continue
            side = hinge_side(front, index, count)
            if front.kind == "door" and side is None:
                said = "A single door says by which side it hangs" + (
                    " where it stands between two others." if count > 1 else "."
                )
                found.append(
                    _fault(
                        spec,
                        "missing_key",
                        said,
                        front.line,
                        "`hinge side: left`, or right, on its line",
                    )
                )
            sides = ("left", "right") if front.kind == "door pair" else (side,)
            off = [s for s in sides if none and s == "left" and index > 0]
            off += [s for s in sides if none and s == "right" and index < count - 1]
            if off:
                said = (
                    f"A door hangs by its {off[0]} side, and there is no partition behind it: "
                    "nothing carries it."
                )
                found.append(
                    _fault(
                        spec,
                        "no_wood_to_hang_on",
                        said,
                        front.line,
                        "a partition, or the other side",
                    )
                )
    return found


def _side_said(spec: CaseFronts, front: Front) -> list[Problem]:
    """A word of another edge than a front can hang by, or none of a flap."""
    written = front.line.origin("hinge side") != "assumed"
    match front.kind:
        case "door":
            if not written or front.hinge in ("left", "right"):
                return []
            said = "A door hangs by its left or its right side; what hangs by another is a flap."
            allowed = "`hinge side: left`, or right; or `flap` in place of `door`"
            return [_fault(spec, "fronts_contradict", said, front.line, allowed)]
        case "flap":
            if flap_side(front) is not None:
                return []
            said = (
                "A flap hangs by its top or its bottom; what hangs by a side is a door."
                if written
                else "A flap says by which edge it hangs: it lifts up by its top, and drops down by "
                "its bottom."
            )
            code = "fronts_contradict" if written else "missing_key"
            allowed = "`hinge side: top`, or bottom, on its line"
            return [_fault(spec, code, said, front.line, allowed)]
        case "drawer":
            said = "A drawer front has no hinges."
        case "fixed front":
            said = "A fixed front has no hinges."
        case "open":
            said = "There is no front where a bay is open."
        case "door pair":
            said = "A pair hangs by both its sides, one leaf on each."
        case _:
            assert_never(front.kind)
    if not written:
        return []
    return [_fault(spec, "fronts_contradict", said, front.line, "no hinge side")]


def _drawers(spec: CaseFronts) -> list[Problem]:
    """Drawers say how far they draw out."""
    drawers = any(front.kind == "drawer" for bay in spec.bays for front in bay.fronts)
    if not drawers or spec.drawer_travel is not None:
        return []
    said = f"{spec.heading} has drawers, and does not say how far they draw out."
    return [_fault(spec, "missing_key", said, "kind", "`drawer travel: 450`, from the slides")]
