"""The arcs and slopes of a curve as a bench and a glazier read them: radius, joints, centre.

One arc is said in words; of several a table says where each ends and where its centre lies.
Places are read from a corner that the reader can lay a rule on.
"""

from __future__ import annotations

import itertools

from parametric.drawing.plane import Point
from parametric.drawing.printing import Rule
from parametric.drawing.tables import Column, Table, fitted, table_height
from parametric.outlines import Outline, arc_of

ROOM = 84.0
"""How wide words and tables on a template are, mm: between two columns of register crosses."""
_NEAR = 1e-6


def arc_words(chain: Outline, rule: Rule, *, corner: str, level: str) -> tuple[str, ...]:
    """What is said of a curve in words, nothing of one that has a table.

    Args:
        chain: the curve from left to right, its places from the corner, mm.
        rule: how lengths are printed.
        corner: what places along are read from: `the left shoulder`.
        level: what heights are read from: `the springing line`.
    """
    pieces = list(itertools.pairwise(chain))
    if len(pieces) > 1:
        return (f"Curve: see the table. x right of {corner}, y above {level}.",)
    (a, b) = pieces[0]
    arc = arc_of(a, b)
    if arc is None:
        return ("Its upper edge is straight.",) if abs(a.y - b.y) > _NEAR else ()
    along = _off(rule, arc.x, ("right", "left"), corner)
    up = _off(rule, arc.y, ("above", "below"), level)
    return (f"One arc, radius {rule.dimension(arc.radius)}: its centre lies {along} and {up}.",)


def _off(rule: Rule, value: float, sides: tuple[str, str], of: str) -> str:
    """How far something is from a line, and on which side."""
    if abs(value) < _NEAR:
        return f"on {of}" if sides[0] == "above" else f"over {of}"
    side = sides[0] if value > 0 else sides[1]
    return f"{rule.dimension(abs(value))} {side} {of if sides[0] == 'above' else f'of {of}'}"


def arc_table(chain: Outline, rule: Rule) -> Table | None:
    """Every piece of a curve of several, from left to right; it is placed where it is drawn."""
    pieces = list(itertools.pairwise(chain))
    if len(pieces) < 2:
        return None
    rows = []
    for number, (a, b) in enumerate(pieces, 1):
        arc = arc_of(a, b)
        sizes = (
            ("straight", "", "") if arc is None else tuple(map(rule.text, (arc.radius, *arc[:2])))
        )
        rows.append((str(number), sizes[0], rule.text(b.x), rule.text(b.y), *sizes[1:]))
    columns = (
        Column(head="", width=5.0),
        Column(head="radius", width=16.0, anchor="right"),
        Column(head="to x", width=15.0, anchor="right"),
        Column(head="to y", width=15.0, anchor="right"),
        Column(head="centre x", width=16.0, anchor="right"),
        Column(head="centre y", width=17.0, anchor="right"),
    )
    height = table_height(rule.unit)
    return Table(
        at=(0.0, 0.0), columns=fitted(columns, rows, height), rows=tuple(rows), height=height
    )


def top_of(chain: Outline) -> Point:
    """The highest place of a curve."""
    found = [(vertex.x, vertex.y) for vertex in chain]
    for a, b in itertools.pairwise(chain):
        arc = arc_of(a, b)
        if arc is not None and a.x < arc.x < b.x:
            found.append((arc.x, arc.y + arc.radius))
    return max(found, key=lambda point: point[1])
