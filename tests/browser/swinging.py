"""Pages of the hand-made doors that swing and fold, with what they leave clear worked by hand.

Hinged, open by 95 deg: the back corner of the hinge edge, (1.5, 46) off the pin, goes to
1.5 cos 95 + 46 sin 95 = 45.694 right of it, 47.194 from the jamb: 806 - 47.194 = 758.806.
Folding: the front corner of the second leaf's free edge ends at 133.834 (see
`test_where_leaves_end_by_hand`): 990 - 133.834 = 856.166.
In halves: a quarter turn about (804.5, 46) brings the fronts 46 left of the pin: 758.5.
"""

from __future__ import annotations

from functools import cache

from parametric.model import Group
from parametric.writers.client_page import (
    Chalk,
    Fact,
    PageLeaf,
    PreviewPage,
    Scenery,
    go_together,
    said,
)
from parametric.writers.html import write_html
from tests.browser.standin import standin_page
from tests.solids.swinging import FOLDING, HALVES, HINGED, THICK, solids_of, swinging

CLEAR = {HINGED: 758.806, FOLDING: 856.166, HALVES: 758.5}
RIGHT = {HINGED: 806.0, FOLDING: 990.0, HALVES: 806.0}
HEAD = {HINGED: 2015.0, FOLDING: 2063.0, HALVES: 2003.0}
LABELS = {
    HINGED: ("The door, hung on its left",),
    FOLDING: ("Left door, folds", "Right door, folds"),
    HALVES: ("Lower half", "Upper half"),
}


def _size(group: Group) -> tuple[float, float, float]:
    """Width and height of a leaf, and how far its pull stands across."""
    stile, board, pull = group.parts
    width = float(stile.blank.width + board.blank.width)
    return width, float(stile.blank.length), float(pull.placement.origin[0]) - 15.0


def swinging_page(name: str, **changes: object) -> PreviewPage:
    """The page of one of the hand-made doors."""
    made = swinging(name)
    together = go_together({group.name: group.motion for group in made.groups}, made.states)
    right, head = RIGHT[name], HEAD[name]
    leaves = []
    for group, label in zip(made.groups, LABELS[name], strict=True):
        width, height, pull = _size(group)
        x, front, foot = group.placement.origin
        leaves.append(
            PageLeaf(
                name=group.name,
                label=label,
                width=width,
                height=height,
                x=x,
                foot=foot,
                front=front,
                thickness=THICK,
                motion=group.motion,
                goes_with=together[group.name],
                pull=pull,
                pull_up=foot + height / 2,
            )
        )
    last = leaves[-1]
    facts = (
        Fact(
            label="Each door",
            value=said(f"{last.width:g} wide"),
            chalk=(
                Chalk(
                    start=(last.x, last.front, last.foot + 400),
                    end=(last.x + last.width, last.front, last.foot + 400),
                    text=f"{last.width:g}",
                    leaf=last.name,
                ),
            ),
        ),
        Fact(
            label="Clear to walk through",
            value=said(f"{CLEAR[name]:.0f}"),
            opened={leaf.name: 1.0 for leaf in leaves},
        ),
    )
    fields: dict[str, object] = {
        "job": f"A {name}",
        "subtitle": "Made by hand",
        "leaves": tuple(leaves),
        "opening": ((0, 0), (0, 1000), (0, head), (right, head), (right, 1000), (right, 0)),
        "floor": ((0, 0), (right, 0)),
        "way": (0.0, right),
        "clear_way": CLEAR[name],
        "top": head,
        "facts": facts,
        "thing": said(f"{last.width:g} wide, {name}"),
        "scenery": Scenery(skirting_clear=(0.0, right)),
    }
    return standin_page(**(fields | changes))


@cache
def swinging_glb(name: str) -> bytes:
    """Its model."""
    from parametric.writers.glb import write_glb

    return write_glb(swinging(name), solids_of(name))


@cache
def swinging_html(name: str) -> bytes:
    """Its file, with its own model."""
    return write_html(swinging_page(name), swinging_glb(name))
