"""Glue-up sheets: a panel from its boards, a leaf from its rails and stiles, clamps as arrows."""

from __future__ import annotations

from collections.abc import Sequence

from parametric.drawing.bench.saying import Numbers, Said, listed, said
from parametric.drawing.bench.set_up import Key, Row, SetUp
from parametric.drawing.bench.sketch import Sketch, sketch, spread_evenly
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import Bow, end_grain
from parametric.drawing.layers import Layer
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Stroke
from parametric.drawing.subject import Subject
from parametric.resolve.door import Door
from parametric.trade.alignment import StackUp
from parametric.trade.glue_up import LeafGlueUp, PanelGlueUp
from parametric.trade.printed import several

_CLAMP = 11.0
"""Length of a clamp's arrow on paper, mm."""


def panel_sheet(job: Subject, say: Numbers, one: PanelGlueUp) -> SetUp:
    """A panel glued from boards."""
    alone = int(one.boards) == 1
    clamps = (
        ()
        if alone
        else (
            Key(
                number=say.count(one.clamps),
                after="clamps" if int(one.clamps) != 1 else "clamp",
                name="above and below in turn",
            ),
            Key(
                letter="b",
                number=say.fine(one.spacing, down=True),
                name="between clamps, at most",
            ),
        )
    )
    return SetUp(
        title=f"Glue-up: panel {one.mark}",
        under=f"{several(len(one.names), 'panel')} alike · sizes in {job.rules.unit_words}",
        keys=(
            Key(
                letter="a",
                number=say.least(one.board_width),
                after=said("×{}", say.count(one.boards)),
                name=said("boards planed to {}, jointed to width", say.wood(one.planed))
                if not alone
                else "board to width",
            ),
            *clamps,
            Key(letter="c", number=say.wood(one.width), name="wide when glued"),
            Key(letter="d", number=say.wood(one.length), name="long when glued"),
        ),
        rows=(
            Row(
                head="Make",
                text=listed([name.replace(" / ", " ") for name in one.names]),
            ),
            Row(
                head="Stock",
                text=said(
                    "{} wide: {} over a board for jointing; glued, the panel is planed to {}",
                    say.wood(one.stock),
                    say.fine(one.jointing, down=True),
                    say.wood(one.thickness),
                ),
            ),
            Row(
                head="Lay out",
                text="rings up and down in turn at the ends; long grain all one way",
            ),
        ),
        warning=one.cautions[0],
        picture=lambda draft, box: _panel_picture(draft, box, one),
        seen="From above; boards' ends at the right",
    )


def _panel_picture(draft: Draft, box: Box, one: PanelGlueUp) -> None:
    """From above, boards across the page; at the right their ends, the rings in turn."""
    long, wide, thick = float(one.length), float(one.width), float(one.thickness)
    board, count = float(one.board_width), int(one.boards)
    inner = Box(box.x0 + 4.0, box.y0 + _CLAMP + 7.0, box.x1 - 4.0, box.y1 - _CLAMP - 3.0)
    # The ends are shown beside, never thinner than can be seen.
    extent = Box(-0.16 * long, 0.0, 1.62 * long, wide)
    own = sketch(draft, inner, extent, largest=2.0)
    s = own.view.scale
    own.wood([(0.0, 0.0), (long, 0.0), (long, wide), (0.0, wide)], ends=False)
    for joint in range(1, count):
        own.line("cut", (0.0, joint * board), (long, joint * board))
    ends = long + 30.0 * s
    shown = max(thick, 7.0 * s)
    for index in range(count):
        corners = own.path(
            [
                (ends, index * board),
                (ends + shown, index * board),
                (ends + shown, (index + 1) * board),
                (ends, (index + 1) * board),
            ]
        )
        bow: Bow = "left" if index % 2 == 0 else "right"
        draft.add(
            end_grain((corners,), own.view.name, bow, 1.6, 14.0),
            Stroke(layer="cut_heavy", points=corners, closed=True, view=own.view.name),
        )
    if count > 1:
        _clamps_across(own, one, long, wide)
    own.span(((0.0, 0.0), (0.0, board)), "a", out=(-8.0, 0.0))
    own.span(((long, 0.0), (long, wide)), "c", out=(9.0, 0.0))
    own.span(((0.0, 0.0), (long, 0.0)), "d", out=(0.0, -_CLAMP - 4.0))


def _clamps_across(own: Sketch, one: PanelGlueUp, long: float, wide: float) -> None:
    count = int(one.clamps)
    inset = min(0.06 * long, float(one.spacing) / 4)
    places = spread_evenly(inset, long - inset, count)
    for index, x in enumerate(places):
        above, below = own.at((x, wide)), own.at((x, 0.0))
        own.arrow((above[0], above[1] + _CLAMP), above, "cut_heavy")
        own.arrow((below[0], below[1] - _CLAMP), below, "cut_heavy")
        line: Layer = "edge" if index % 2 == 0 else "hidden"
        own.line(line, (x, 0.0), (x, wide))
    if count > 1:
        own.span(((places[0], wide), (places[1], wide)), "b", out=(0.0, 6.0), feet=False)


# --- a leaf --------------------------------------------------------------------------------


def alike(leaves: tuple[LeafGlueUp, ...]) -> tuple[tuple[LeafGlueUp, ...], ...]:
    """Leaves whose numbers are the same share a sheet."""
    found: dict[tuple[object, ...], list[LeafGlueUp]] = {}
    for leaf in leaves:
        key = (
            leaf.steps,
            *((r.noun, *(round(float(place), 6) for place in r.places)) for r in leaf.rails),
            *(
                round(float(v), 6)
                for v in (leaf.clamps, leaf.opens, leaf.spacing, leaf.diagonal, leaf.slots)
            ),
        )
        found.setdefault(key, []).append(leaf)
    return tuple(tuple(own) for own in found.values())


def leaf_sheet(job: Subject, say: Numbers, own: tuple[LeafGlueUp, ...]) -> SetUp:
    """Leaves glued up alike: clamps, opening, diagonal, the minutes there are."""
    one, others = own[0], own[1:]
    clamps = [
        said(
            "{} {} at {}",
            rail.noun,
            say.count(rail.clamps, *(o.rails[index].clamps for o in others)),
            listed(
                [
                    say.wood(place, *(o.rails[index].places[number] for o in others))
                    for number, place in enumerate(rail.places)
                ],
                " and ",
            ),
        )
        for index, rail in reversed(list(enumerate(one.rails)))
    ]
    return SetUp(
        title=f"Glue-up: {' and '.join(leaf.leaf for leaf in own)}",
        under=f"sizes in {job.rules.unit_words}; heights from the finished foot",
        keys=(
            Key(
                number=say.count(one.clamps, *(o.clamps for o in others)),
                after="clamps" if int(one.clamps) != 1 else "clamp",
                name="across the rails",
            ),
            Key(
                letter="a",
                number=say.wood(one.opens, *(o.opens for o in others)),
                name="clamps open, and two cauls",
            ),
            Key(
                letter="b",
                number=say.wood(one.diagonal, *(o.diagonal for o in others)),
                name=said(
                    "both diagonals before trim, alike within {}", say.fine(one.diagonals_differ)
                ),
            ),
            Key(
                number=say.count(one.minutes),
                after="minutes",
                name=said(
                    "open time of the glue, for {} {}",
                    say.count(one.slots, *(o.slots for o in others)),
                    one.goes_in,
                ),
            ),
        ),
        rows=(
            Row(head="Clamps", text=listed(clamps, "; ")),
            Row(
                head="Apart",
                text=said(
                    "{} at most over one rail", say.wood(one.spacing, *(o.spacing for o in others))
                ),
            ),
            Row(head="Check", text="two straight edges across the leaf: no twist; faces flush"),
        ),
        warning=one.cautions[0],
        picture=lambda draft, box: _leaf_picture(draft, job, box, one),
        seen="Foot at the left; arrows are clamps",
    )


def _leaf_picture(draft: Draft, job: Subject, box: Box, one: LeafGlueUp) -> None:
    """The untrimmed leaf lying down, its foot at the left, clamps across it."""
    leaf = next(leaf for leaf in job.resolved.leaves if leaf.name == one.leaf)
    wide, blank, trim = float(leaf.width), float(leaf.stile_blank), float(leaf.trim)
    left, right = float(leaf.left_stile), float(leaf.right_stile)
    inner = Box(box.x0 + 14.0, box.y0 + _CLAMP + 2.0, box.x1 - 11.0, box.y1 - _CLAMP - 2.0)
    own = sketch(draft, inner, Box(-trim, 0.0, blank - trim, wide), largest=5.0)
    for low, high in ((0.0, left), (wide - right, wide)):
        own.wood(
            [(-trim, low), (blank - trim, low), (blank - trim, high), (-trim, high)], ends=False
        )
    for member in leaf.rails:
        foot, top = float(member.foot), float(member.top)
        own.outline([(foot, left), (top, left), (top, wide - right), (foot, wide - right)], "cut")
    for field in leaf.panels:
        foot, top = float(field.foot), float(field.top)
        inset = 0.18 * min(top - foot, wide - left - right)
        own.outline(
            [
                (foot + inset, left + inset),
                (top - inset, left + inset),
                (top - inset, wide - right - inset),
                (foot + inset, wide - right - inset),
            ],
            "edge_fine",
        )
    corners = ((-trim, 0.0), (blank - trim, wide), (-trim, wide), (blank - trim, 0.0))
    own.line("centre", corners[0], corners[1])
    own.line("centre", corners[2], corners[3])
    for rail in one.rails:
        for x in map(float, rail.places):
            above, below = own.at((x, wide)), own.at((x, 0.0))
            own.arrow((above[0], above[1] + _CLAMP), above, "cut_heavy")
            own.arrow((below[0], below[1] - _CLAMP), below, "cut_heavy")
    own.span(((-trim, 0.0), (-trim, wide)), "a", out=(-7.0, 0.0))
    x, y = own.at((blank - trim, wide))
    own.letter("b", [(x + 6.0, y - drop) for drop in (0.0, 4.0, -4.0)], target=(x, y))


# --- the rails of two leaves in line -------------------------------------------------------


def _hung_by(doors: Sequence[Door]) -> str:
    """What the leaves are set by once against each other."""
    ways = dict.fromkeys("hangers" if door.hanging.tracks else "hinges" for door in doors)
    return " or ".join(ways)


def alignment_sheet(job: Subject, say: Numbers, one: StackUp, doors: Sequence[Door]) -> SetUp:
    """How far out of line the rails of neighbouring leaves may come, in doors of several leaves."""
    names = ", ".join(" and ".join(leaf.name for leaf in door.leaves) for door in doors)
    together = one.marked == "together"

    def this(yes: bool) -> str:
        return ": this is how the shop marks" if yes else ""

    def key(name: str, value: Said, words: str) -> Key:
        return Key(letter=name, number=said("±{}", value), name=words)

    return SetUp(
        title="Rails of the leaves in line",
        under=f"{names} side by side · sizes in {job.rules.unit_words}",
        keys=(
            key(
                "a",
                say.error(one.likely_together, *([one.governing] if together else [])),
                f"likely, all leaves marked from one stick{this(together)}",
            ),
            key(
                "b",
                say.error(one.likely, *([] if together else [one.governing])),
                f"likely, each leaf marked by itself{this(not together)}",
            ),
            key("c", say.error(one.worst), "worst: everything the wrong way at once"),
        ),
        rows=(
            Row(
                head="Counted",
                text=said(
                    f"each leaf: marking {{}}, slots {{}}, clamps slip {{}}; {_hung_by(doors)} {{}} once",
                    say.error(one.marking),
                    say.error(one.slot),
                    say.error(one.clamping),
                    say.error(one.hanging),
                ),
            ),
            Row(
                head="So",
                text="mark all stiles together from the story stick; same face to the fence; "
                "check the shoulders against each other before the glue",
            ),
        ),
        warning="",
        picture=lambda draft, box: _steps_picture(
            draft, box, [float(v) for v in (one.likely_together, one.likely, one.worst)]
        ),
        seen="Two rails where they meet, enlarged",
    )


def _steps_picture(draft: Draft, box: Box, steps: list[float]) -> None:
    """Two rails that meet, three times, each out by its step, all enlarged alike."""
    high, across, apart = 0.9, 3.0, 1.4
    own = sketch(
        draft,
        Box(box.x0 + 12.0, box.y0 + 2.0, box.x1 - 2.0, box.y1 - 8.0),
        Box(0.0, 0.0, 2 * across + 0.6, sum(steps) + 3 * high + 2 * apart),
        largest=0.05,
    )
    y = 0.0
    for name, step in zip("cba", reversed(steps), strict=True):
        own.wood([(0.0, y), (across, y), (across, y + high), (0.0, y + high)], ends=False)
        other = y + step
        low = across + 0.6
        own.wood(
            [
                (low, other),
                (low + across, other),
                (low + across, other + high),
                (low, other + high),
            ],
            ends=False,
        )
        own.line("dims", (across, y + high), (low, y + high))
        own.span(((across + 0.3, y + high), (across + 0.3, other + high)), name, out=(0.0, 0.0))
        y += step + high + apart
