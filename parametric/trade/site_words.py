"""Words that the sheets for the site share: where heights start from, and what gaps are called."""

from __future__ import annotations

from parametric.figures import Figure
from parametric.resolve.door import Door
from parametric.trade.printed import Printed

Said = tuple[str, str]
"""What is done, and what is checked before the next."""


def datum(door: Door) -> str:
    """Where all heights are measured from."""
    if door.opening.foot is not None:
        return "the floor under the case"
    high = [place for place, below in door.opening.floor.items() if float(below) == 0.0]
    where = f", at the {' and '.join(high)}" if high and len(high) < 3 else ""
    return f"the highest point of the floor under the door{where}"


def by_data_sheet(door: Door) -> bool:
    """Whether only the track's data sheet knows how high its screws stand: over the leaves' top,
    on a wall or in a pocket. Under a head they go up into it.
    """
    return door.hanging.on_wall or over_the_head(door)


def over_the_head(door: Door) -> bool:
    """Whether leaves in the thickness of the wall reach past the head of the opening."""
    top = max(float(leaf.hung.foot + leaf.height) for leaf in door.leaves)
    return not door.hanging.on_wall and top > float(door.opening.head)


def edge_gaps(door: Door) -> tuple[tuple[str, Figure], ...]:
    """The gaps that leaves keep beside and above themselves, mm; none of leaves that only cover."""
    hanging = door.hanging
    if hanging.case is not None:
        return (("between fronts", hanging.case.gap),)
    found = (
        ("at the hinges", hanging.hinge_gap),
        ("at the jambs", hanging.jamb_gap),
        ("at the lock", hanging.lock_gap),
        ("where leaves fold", hanging.fold_gap),
        ("where leaves meet", hanging.meeting_gap),
        ("at the split", hanging.split_gap),
        ("under the head", hanging.head_gap),
    )
    return tuple((where, gap) for where, gap in found if gap is not None)


def gap_words(door: Door, said: Printed) -> str:
    """`3/32 at the hinges, 1/8 where leaves meet, 1/8 under the head`."""
    return ", ".join(f"{said.fine(gap)} {where}" for where, gap in edge_gaps(door))


def leaf_names(names: list[str]) -> str:
    """`leaf A`, `leaves A and B`, `leaves A, B and C`."""
    letters = [name.removeprefix("leaf ") for name in names]
    if len(letters) == 1:
        return names[0]
    return f"leaves {', '.join(letters[:-1])} and {letters[-1]}"
