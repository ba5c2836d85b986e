"""The set-up sheet of the loose tenons: the strip they are crosscut from, and how they fit."""

from __future__ import annotations

from parametric.drawing.bench.saying import Numbers, said
from parametric.drawing.bench.set_up import Key, Row, SetUp
from parametric.drawing.bench.sketch import sketch
from parametric.drawing.bench.words import when_words
from parametric.drawing.draft import Draft
from parametric.drawing.plane import Box, Point, arc_points
from parametric.drawing.subject import Subject
from parametric.trade.milling import Setting
from parametric.trade.router_setups import LooseTenonSetUp


def tenon_sheet(
    job: Subject, say: Numbers, setting: Setting, tenon: LooseTenonSetUp, slots: str
) -> SetUp:
    """Strips ripped, rounded, crosscut; `slots` is the number of the setting they must fit."""
    t = tenon
    radius = [] if setting.width is None else [setting.width]
    marks = ", ".join(dict.fromkeys(run.mark for run in setting.runs))
    return SetUp(
        title=f"Loose tenons {marks}: strip, round, crosscut",
        under=when_words(setting, job.rules.unit_words),
        keys=(
            Key(letter="a", number=say.set_to(t.tenon_thickness), name="strip planed to thickness"),
            Key(letter="b", number=say.wood(t.tenon_width), name="strip ripped to width"),
            Key(
                letter="c",
                number=say.set_to(t.edge_radius, *radius),
                name="radius of the four long edges",
            ),
            Key(letter="d", number=say.wood(t.tenon_length), name="crosscut to length"),
            Key(
                number=say.count(t.tenons),
                after=said("+ {}", say.count(t.spare_tenons)),
                name="pieces, and the spare",
            ),
        ),
        rows=(
            Row(
                head="Strips",
                text=said("{}, {} long", say.count(t.strips), say.wood(t.strip_length)),
            ),
            Row(
                head="Order",
                text="crosscut one tenon, round it and try it; then round the strips, crosscut the rest",
            ),
            Row(
                head="Fit",
                text=said(
                    "{} free along the slot; {} behind each end for glue",
                    say.fine(t.play_along),
                    say.fine(t.room),
                ),
            ),
            Row(
                head="Check with",
                text=f"the test slot of {slots}, cut first: in by hand, stays in",
            ),
        ),
        warning=setting.cautions[0],
        picture=lambda draft, box: _picture(draft, box, tenon),
        seen="On its end, and lying in its slots",
    )


def _picture(draft: Draft, box: Box, tenon: LooseTenonSetUp) -> None:
    """The tenon on its end; below, lying in its two slots, cut through their middles."""
    thick, wide, long = (
        float(v) for v in (tenon.tenon_thickness, tenon.tenon_width, tenon.tenon_length)
    )
    radius, depth = float(tenon.edge_radius), float(tenon.slot_depth)
    slot = float(tenon.slot_width)
    wall = 12.0
    across = max(2 * depth + 2 * wall, wide + 40.0)
    tall = slot + 2 * wall
    apart = 26.0
    inner = Box(box.x0 + 4.0, box.y0, box.x1 - 4.0, box.y1)
    extent = Box(-across / 2, -tall - 14.0, across / 2, apart + thick + 6.0)
    own = sketch(draft, inner, extent, largest=0.5)
    # Upper: the tenon on its end.
    y0, y1 = apart, apart + thick
    x0, x1 = -wide / 2, wide / 2
    r = min(radius, thick / 2)
    ring: list[Point] = [
        *arc_points((x0 + r, y0 + r), r, 180, 270, 0.4),
        *arc_points((x1 - r, y0 + r), r, 270, 360, 0.4),
        *arc_points((x1 - r, y1 - r), r, 0, 90, 0.4),
        *arc_points((x0 + r, y1 - r), r, 90, 180, 0.4),
    ]
    own.wood(ring)
    own.span(((x0, y0), (x1, y0)), "b", out=(0.0, -6.0))
    own.span(((x0, y0), (x0, y1)), "a", out=(-7.0, 0.0))
    corner = own.at((x1 - r * 0.29, y1 - r * 0.29))
    own.arrow((corner[0] + 9.0, corner[1] + 5.0), corner)
    own.letter("c", [(corner[0] + 9.0 + 4.4, corner[1] + 5.0), (corner[0] + 12.0, corner[1] - 2.0)])
    # Lower: both members along their slots, the tenon between them.
    low = -tall
    mid = -tall / 2
    for sign in (-1.0, 1.0):
        member: list[Point] = [
            (0.0, 0.0),
            (0.0, mid + slot / 2),
            (sign * depth, mid + slot / 2),
            (sign * depth, mid - slot / 2),
            (0.0, mid - slot / 2),
            (0.0, low),
            (sign * (depth + wall), low),
            (sign * (depth + wall), 0.0),
        ]
        own.wood(member, ends=sign > 0, broken=True)
        own.line("cut_heavy", *member[:6])
        own.line("cut_heavy", member[5], member[6])
        own.line("cut_heavy", member[7], member[0])
        own.torn(member[6], member[7])
    body: list[Point] = [
        (-long / 2, mid - thick / 2),
        (long / 2, mid - thick / 2),
        (long / 2, mid + thick / 2),
        (-long / 2, mid + thick / 2),
    ]
    own.outline(body)
    own.span(
        ((-long / 2, mid), (long / 2, mid)), "d", out=(0.0, -(mid - low) / own.view.scale - 6.0)
    )
