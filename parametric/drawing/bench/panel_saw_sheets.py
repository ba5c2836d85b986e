"""Set-up sheets of a raised panel on the saw: the bevel on edge, the tongue flat.

Seen from where the operator stands, along the feed.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from parametric.drawing.bench.saying import Numbers, listed, said
from parametric.drawing.bench.set_up import Key, Row, SetUp
from parametric.drawing.bench.sketch import extent_of, sketch, wave
from parametric.drawing.bench.words import pieces_row, when_words
from parametric.drawing.draft import Draft
from parametric.drawing.plane import Box, Point
from parametric.drawing.subject import Subject
from parametric.model import Part, RaisedBevel, Tongue
from parametric.trade.milling import Setting
from parametric.trade.saw_setups import PanelSawSetUp, TonguePass


def panel_cuts(part: Part) -> tuple[RaisedBevel, Tongue]:
    """What makes a panel a raised one."""
    bevel = next(cut for cut in part.cuts if isinstance(cut, RaisedBevel))
    tongue = next(cut for cut in part.cuts if isinstance(cut, Tongue))
    return bevel, tongue


def _panel(job: Subject, saw: PanelSawSetUp) -> Part:
    return next(part for part in job.assembly.parts if part.name == saw.names[0])


def _mirrored(side: str, points: Sequence[Point]) -> list[Point]:
    """A picture made with its fence at the left, with the fence at a side."""
    return [(-x if side == "right" else x, y) for x, y in points]


# --- the bevel -----------------------------------------------------------------------------


Saws = tuple[PanelSawSetUp, ...]
"""Set-ups that are set alike: panels of several sizes at one setting of the saw."""


def set_alike(setting: Setting, saws: Saws) -> tuple[Saws, ...]:
    """The set-ups of a setting's panels, those with the same numbers together."""
    marks = {run.mark for run in setting.runs}
    found: dict[tuple[object, ...], list[PanelSawSetUp]] = {}
    for saw in saws:
        if saw.mark in marks:
            numbers = (
                saw.tilt,
                saw.blade_height,
                saw.fence_to_blade,
                saw.reach,
                *(v for one in saw.tongue for v in (one.blade_height, one.buried)),
                *(v for one in saw.gauges for v in (one.go, one.no_go)),
            )
            found.setdefault(tuple(round(float(v), 6) for v in numbers), []).append(saw)
    return tuple(tuple(own) for own in found.values())


def panels_of(saws: Saws) -> str:
    """`panel P1`, `panels P1, P2`."""
    return f"{'panel' if len(saws) == 1 else 'panels'} {', '.join(saw.mark for saw in saws)}"


def bevel_sheet(job: Subject, say: Numbers, setting: Setting, saws: Saws) -> SetUp:
    """The panel on edge against the tall fence, the blade leaning away from it."""
    saw, *others = saws
    tallest = max(saws, key=lambda one: float(one.tall_fence))
    return SetUp(
        title=f"Saw: bevel of {panels_of(saws)}",
        under=when_words(setting, job.rules.unit_words),
        keys=(
            Key(
                letter="a",
                number=say.degrees(saw.tilt, *(o.tilt for o in others)),
                name=f"blade tilt, to the {saw.tilts_to}, away from the fence",
            ),
            Key(
                letter="b",
                number=say.set_to(saw.blade_height, *(o.blade_height for o in others)),
                name="blade height above the table",
            ),
            Key(
                letter="c",
                number=say.set_to(saw.fence_to_blade, *(o.fence_to_blade for o in others)),
                name="fence to blade, at the table",
            ),
            Key(
                number=say.least(tallest.tall_fence),
                name="tall fence, at least so high above the table",
            ),
        ),
        rows=(
            pieces_row(say, setting),
            *(_edges_row(say, saws, order) for order in range(len(saw.edges))),
            _gauge_row(say, saws, "edge after the bevel", where=" at the very edge"),
            Row(
                head="Blade",
                text=said(
                    "reaches {} tilted: {} to spare",
                    say.fine(saw.reach, *(o.reach for o in others), down=True),
                    say.fine(saw.spare_reach, *(o.spare_reach for o in others), down=True),
                ),
            ),
        ),
        warning=saw.cautions[0],
        picture=lambda draft, box: _bevel_picture(draft, job, box, saw),
        seen="As you stand at the saw",
    )


def _edges_row(say: Numbers, saws: Saws, order: int) -> Row:
    """One pair of edges in its turn, panel by panel where they differ in size."""
    texts = []
    for saw in saws:
        one = saw.edges[order]
        text = said(
            "{} edges, {} long; panel stands {}",
            say.count(one.number),
            say.fine(one.on_table, down=True),
            say.fine(one.stands, down=True),
        )
        texts.append(said("{}: {}", saw.mark, text) if len(saws) > 1 else text)
    first = saws[0].edges[order]
    return Row(head=f"{first.order} {first.edges}", text=listed(texts, ". "))


def _gauge_row(
    say: Numbers, saws: Saws, what: str, turn: int | None = None, where: str = ""
) -> Row:
    """A gauge's two notches, and what a pass leaves; the same for all that are set alike."""
    gauge, *same = (next(g for g in saw.gauges if g.what == what) for saw in saws)
    text = said(
        "{} goes on, {} does not{}",
        say.gauge(gauge.go, *(g.go for g in same)),
        say.gauge(gauge.no_go, *(g.no_go for g in same)),
        where,
    )
    if turn is not None:
        left, *others = (saw.tongue[turn].left for saw in saws)
        text = said("{}; {} is left", text, say.set_to(left, *others))
    return Row(head="Gauge", text=text)


def _bevel_picture(draft: Draft, job: Subject, box: Box, saw: PanelSawSetUp) -> None:
    part = _panel(job, saw)
    bevel, _ = panel_cuts(part)
    thick, run, low, foot = (
        float(v) for v in (part.blank.thickness, bevel.run, bevel.edge, bevel.foot)
    )
    lean = math.radians(float(saw.tilt))
    kerf = float(job.resolved.shop.saw.kerf)
    side = saw.fence_side

    def m(*points: Point) -> list[Point]:
        return _mirrored(side, points)

    top, deep, wide = run * 1.5, run * 0.16, max(0.3 * run, 14.0)
    far = low + kerf / math.cos(lean)
    reach = thick + run * 0.42
    inner = Box(box.x0, box.y0 + 15.0, box.x1, box.y1)
    own = sketch(draft, inner, extent_of(m((-wide, -deep), (reach, top))))
    s = own.view.scale
    tan = math.tan(lean)
    # The panel: what the saw leaves, broken off above.
    kept = [(0.0, 0.0), (low, 0.0), (foot, run), (thick, run), (thick, top), (0.0, top)]
    own.wood(m(*kept), broken=True)
    own.line("cut_heavy", *m(*kept[:5]))
    own.torn(*m((0.0, top), (thick, top)))
    # The wedge that comes off, thin.
    if far < thick:
        high = min(run - kerf * math.sin(lean), (thick - far) / tan if tan else run)
        own.outline(
            m((far, 0.0), (thick, 0.0), (thick, high), (far + high * tan, high)), "edge_fine"
        )
    tip = (foot + kerf * math.cos(lean), run - kerf * math.sin(lean))
    own.blade(m((low - deep * tan, -deep), (far - deep * tan, -deep), tip, (foot, run)))
    # The fence, black and torn off above where it is taller.
    tall = float(saw.tall_fence)
    shown = min(tall, top)
    ends = own.path(m((0.0, shown), (-wide, shown)))
    upper = [own.view.back(p) for p in wave(ends[0], ends[1])]
    own.fence(
        m((-wide, 0.0), (0.0, 0.0)) + (upper if tall > top else m((0.0, tall), (-wide, tall)))
    )
    table = m((-wide, 0.0), (low, 0.0), (far, 0.0), (reach, 0.0))
    own.line("cut_heavy", table[0], table[1])
    own.line("cut_heavy", table[2], table[3])
    # Sizes.
    sign = -1.0 if side == "right" else 1.0
    own.span(m((0.0, 0.0), (low, 0.0)), "c", out=(0.0, -deep / s - 7.0))
    beyond = (thick + run * 0.16 - tip[0]) / s
    own.span(m((tip[0], 0.0), (tip[0], run)), "b", out=(sign * beyond, 0.0))
    longer = run * 0.34
    start, upright = m(tip)[0], m((tip[0], tip[1] + longer))[0]
    leaning = m((tip[0] + longer * math.sin(lean), tip[1] + longer * math.cos(lean)))[0]
    own.line("centre", start, upright)
    own.line("centre", start, leaning)
    turn = 90.0 - sign * math.degrees(lean)
    own.angle(start, longer * 0.85 / s, 90.0, turn, "a", past=1.6)
    x_face = own.at(m((thick, 0.0))[0])[0]
    y_face = own.at((0.0, (run + top) / 2))[1]
    own.face(
        [
            (x_face + sign * over, y_face + up)
            for over in (-4.4, 4.0, 8.0)
            for up in (0.0, 3.0, -3.0)
        ],
        turned=90,
    )
    centre = own.at(m((-wide / 2, 0.0))[0])[0]
    own.word(
        "tall fence", [(centre - sign * over, own.at((0, 0))[1] - 5.0) for over in (0, 6, 12, 20)]
    )
    edge = own.at(m((reach, 0.0))[0])[0]
    own.feed_away(
        [
            (edge - (12.0 if sign > 0 else 2.0) + over, own.at((0, 0))[1] - drop)
            for drop in (9.0, 14.0)
            for over in (0.0, -6.0, 6.0, -12.0)
        ]
    )


# --- the tongue, panel flat ----------------------------------------------------------------


def tongue_sheet(job: Subject, say: Numbers, setting: Setting, saws: Saws, turn: int) -> SetUp:
    """The panel flat on the table, the blades partly in a sacrificial fence.

    Args:
        job: the job.
        say: its numbers.
        setting: of the milling list.
        saws: the panels that are set alike.
        turn: which pass of the tongue it is.
    """
    saw = saws[0]
    one, *same = (own.tongue[turn] for own in saws)
    last = turn == len(saw.tongue) - 1
    return SetUp(
        title=f"Saw: {one.what}, {panels_of(saws)} flat",
        under=when_words(setting, job.rules.unit_words),
        keys=(
            Key(
                letter="a",
                number=say.set_to(one.blade_height, *(o.blade_height for o in same)),
                name="dado set upright, height above the table",
            ),
            Key(
                letter="b",
                number=say.set_to(one.buried, *(o.buried for o in same)),
                name="tongue's length: fence to far side of the dado set, itself wider",
            ),
        ),
        rows=(
            pieces_row(say, setting),
            Row(
                head="Lay it",
                text=f"{one.down} down, edge at the sacrificial fence; press over the field only",
            ),
            Row(head="Order", text="1 end grain, 2 long grain, all four edges"),
            _gauge_row(say, saws, "tongue", turn)
            if last
            else Row(
                head="Callipers",
                text=said(
                    "{} is left over it; gauge after the next set-up",
                    say.set_to(one.left, *(o.left for o in same)),
                ),
            ),
        ),
        warning=setting.cautions[0],
        picture=lambda draft, box: _tongue_picture(draft, job, box, saw, one),
        seen="As you stand at the saw",
    )


def _tongue_picture(
    draft: Draft, job: Subject, box: Box, saw: PanelSawSetUp, one: TonguePass
) -> None:
    part = _panel(job, saw)
    bevel, tongue = panel_cuts(part)
    thick, run, low, foot = (
        float(v) for v in (part.blank.thickness, bevel.run, bevel.edge, bevel.foot)
    )
    long, back, thin = float(tongue.length), float(tongue.back), float(tongue.thickness)
    high = float(one.blade_height)
    at_tongue = low + (foot - low) * long / run
    end = run + max(10.0, 0.25 * run)
    if one.down == "face":
        kept = [
            (0.0, high),
            (long, high),
            *([(long, thick - at_tongue)] if thick - at_tongue < high else []),
            (run, thick - foot),
            (run, 0.0),
            (end, 0.0),
            (end, thick),
            (0.0, thick),
        ]
        mark = (end - 14.0, 0.0)
    else:
        kept = [
            (0.0, high),
            (long, high),
            (long, 0.0),
            (end, 0.0),
            (end, thick),
            (run, thick),
            (run, foot),
            (long, at_tongue),
            (long, back + thin),
            (0.0, back + thin),
        ]
        mark = (end - 14.0, thick)
    side = saw.fence_side

    def m(*points: Point) -> list[Point]:
        return _mirrored(side, points)

    bite, face, wide = 5.0, 12.0, 26.0
    tall, deep = thick + 14.0, 11.0
    inner = Box(box.x0, box.y0 + 13.0, box.x1, box.y1)
    own = sketch(draft, inner, extent_of(m((-wide, -deep), (end + 4.0, tall))))
    s = own.view.scale
    own.wood(m(*kept), broken=True)
    where = kept.index((end, 0.0))
    ring = [*kept[where + 1 :], *kept[: where + 1]]
    own.line("cut_heavy", *m(*ring))
    own.torn(*m((end, 0.0), (end, thick)))
    own.blade(m((-bite, -deep), (long, -deep), (long, high), (-bite, high)))
    sacrificial = [
        (-face, 0.0),
        (-bite, 0.0),
        (-bite, high),
        (0.0, high),
        (0.0, tall),
        (-face, tall),
    ]
    own.wood(m(*sacrificial))
    own.fence(m((-wide, 0.0), (-face, 0.0), (-face, tall), (-wide, tall)))
    table = m((-wide, 0.0), (-bite, 0.0), (long, 0.0), (end + 4.0, 0.0))
    own.line("cut_heavy", table[0], table[1])
    own.line("cut_heavy", table[2], table[3])
    own.span(m((0.0, 0.0), (long, 0.0)), "b", out=(0.0, -deep / s - 6.0))
    sign = -1.0 if side == "right" else 1.0
    inside = m((long * 0.4, 0.0), (long * 0.4, high))
    below = own.at(inside[0])
    own.span(
        inside,
        "a",
        out=(0.0, 0.0),
        places=[(below[0] + over, below[1] - 6.0) for over in (6.5, -6.5, 8.0, -8.0)],
    )
    x, y = own.at(m(mark)[0])
    own.face(
        [
            (x + over, y + up)
            for up in ((-5.5, -9.0) if mark[1] == 0 else (5.5, 9.0))
            for over in (0.0, -6.0, 6.0)
        ]
    )
    own.feed_away(
        [
            (own.at(m((run * 0.62, 0.0))[0])[0] + over, own.at((0, 0))[1] - drop)
            for drop in (8.0, 12.0)
            for over in (0.0, -10.0, 10.0, -20.0, 20.0)
        ]
    )
    top = own.at((0.0, tall))[1]
    centre = own.at(m((-face / 2, 0.0))[0])[0]
    own.word(
        "sacrificial fence",
        [
            (centre + sign * over, y)
            for y in (top + 4.5, top - 5.0)
            for over in (14.0, 20.0, 26.0, 34.0)
        ],
    )


def turn_of(setting: Setting, saw: PanelSawSetUp) -> int | None:
    """Which pass of the tongue a setting makes; none, where the panel has no such pass."""
    down = "face" if setting.kind == "tongue" else "back"
    return next((k for k, one in enumerate(saw.tongue) if one.down == down), None)
