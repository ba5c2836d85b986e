"""What does not go into a case, or onto it: spaces that do not add up, shelves, counters, cut-outs."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.cases.case import Case, CaseBay
from parametric.cases.lines import CaseBayLine
from parametric.cases.shelf import ShelfSpec
from parametric.figures import Figure, Where, exceeds, largest, origin_line
from parametric.problems import Problem
from parametric.units import Unit, length_text


def case_misfits(
    case: Case, shelf: ShelfSpec, counter: Figure | None, unit: Unit
) -> tuple[Problem, ...]:
    """All of that, of one case.

    Args:
        case: with everything in it.
        shelf: its shelves as written.
        counter: how thick the counter over it is, mm; None for none.
        unit: what lengths are said in.
    """
    return (
        *_no_thickness(case, counter),
        *_spaces_amiss(case, unit),
        *_too_deep(case, shelf, unit),
        *_cut_too_far(case, unit),
    )


def _stop(case: Case, code: str, says: tuple[str, str, str, str], at: Where | None) -> Problem:
    message, found, allowed, fix = says
    return Problem(
        code=code,
        level="stop",
        message=f"{case.name}: {message}",
        where=at or case.spec.here,
        about=case.name,
        found=found,
        allowed=allowed,
        fix=fix,
    )


def _no_thickness(case: Case, counter: Figure | None) -> Iterator[Problem]:
    for word, thick in (("counter", counter), ("lid", case.spec.lid)):
        if thick is not None and not exceeds(thick, 0.0):
            says = (f"its {word} is 0 thick.", "0", "more than 0", f"Say how thick the {word} is.")
            yield _stop(case, "no_size", says, origin_line(thick))


def _spaces_amiss(case: Case, unit: Unit) -> Iterator[Problem]:
    """Spaces inside that take more than there is behind their front, or leave some of it."""
    for bay, line in zip(case.bays, case.spec.bays, strict=True):
        over = _over(case, bay)
        if line.inside is None or not over:
            continue
        amount = length_text(abs(over), unit)
        if over > 0:
            said = f"the spaces inside leave {amount} of its height over."
            fix = "Write one of them as `rest`, or make one higher."
        else:
            said = f"the spaces inside take {amount} more than its height."
            fix = "Make one of them lower, or leave one out."
        says = (said, amount, "spaces that add up to what there is", fix)
        yield _stop(case, "spaces_do_not_add_up", says, _line(line))


def _line(bay: CaseBayLine) -> Where | None:
    """Where the largest space that is given is written, else the last one."""
    assert bay.inside, "looked at before"
    given = {float(line.size): line for line in bay.inside if isinstance(line.size, Figure)}
    return given[max(given)].here if given else bay.inside[-1].here


def _over(case: Case, bay: CaseBay) -> float:
    """What a bay's spaces leave of its height, mm; less than nothing where they take too much."""
    foot = float(case.box.bottom)
    for space in bay.spaces:
        beneath = float(case.box.thickness) if space.floored else 0.0
        if abs(apart := float(space.foot) - foot - beneath) > _SAME:
            return apart
        if float(space.head - space.foot) <= 0:
            return float(space.head - space.foot)
        foot = float(space.head)
    return 0.0


def _too_deep(case: Case, shelf: ShelfSpec, unit: Unit) -> Iterator[Problem]:
    """Shelves that would stand out of the case, or into its doors."""
    if shelf.depth is None or not case.of_role("shelf"):
        return
    room = case.behind - largest(case.front_back, 0.0)
    if exceeds(shelf.depth, room):
        deep, has = length_text(float(shelf.depth), unit), length_text(float(room), unit)
        said = f"its shelves are {deep} deep, and it has room for {has}."
        says = (said, deep, f"at most {has}", "Make the shelves less deep, or the case deeper.")
        yield _stop(case, "shelf_too_deep", says, origin_line(shelf.depth))


def _cut_too_far(case: Case, unit: Unit) -> Iterator[Problem]:
    """A cut-out that leaves nothing of the counter beside it."""
    size, box = case.spec.cut_out, case.box
    if size is None:
        return
    for word, cut, whole in (("long", size[0], box.width), ("deep", size[1], box.depth)):
        if not exceeds(whole, cut):
            cut_said, has = length_text(float(cut), unit), length_text(float(whole), unit)
            said = f"the cut-out is {cut_said} {word}, and the case under it {has}."
            says = (said, cut_said, f"less than {has}", "Take the sizes from the basin's template.")
            yield _stop(case, "cut_out_too_large", says, origin_line(cut))


_SAME = 1e-6
