"""Set-up sheets of the saw: mitres, and the ends of a glued leaf, both seen from above."""

from __future__ import annotations

import math

from parametric.drawing.bench.saying import Numbers, Said, listed, said
from parametric.drawing.bench.set_up import Key, Row, SetUp
from parametric.drawing.bench.sketch import sketch
from parametric.drawing.bench.words import heading, pieces_row, when_words
from parametric.drawing.draft import Draft
from parametric.drawing.plane import Box, Point
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.model import Mitre, Part
from parametric.trade.bench_order import MITRE_ANGLE
from parametric.trade.milling import Setting
from parametric.trade.stop_blocks import LengthStop


def part_of(job: Subject, setting: Setting) -> tuple[Part, int]:
    """The first part that runs at a setting, and the place in it of the cut."""
    name, index = setting.runs[0].covers[0]
    return next(part for part in job.assembly.parts if part.name == name), index


# --- mitres --------------------------------------------------------------------------------


def mitre_sheet(
    job: Subject, say: Numbers, setting: Setting, lengths: tuple[LengthStop, ...]
) -> SetUp:
    """The piece along the fence, the saw turned, a stop for every length over the points."""
    first, more = lengths[:4], lengths[4:]
    part, index = part_of(job, setting)
    return SetUp(
        title=heading(setting),
        under=when_words(setting, job.rules.unit_words),
        keys=(
            Key(
                letter="a",
                number=said("{}°", say.plain(MITRE_ANGLE)),
                name="saw turned, to each side in turn",
            ),
            *(
                Key(
                    letter="b",
                    number=say.wood(stop.length),
                    name=said("stop block, over the points: {}", _stop_pieces(say, stop)),
                )
                for stop in first
            ),
        ),
        rows=(
            pieces_row(say, setting),
            *(
                Row(
                    head="More stops",
                    text=said(
                        "{}, over the points: {}", say.wood(stop.length), _stop_pieces(say, stop)
                    ),
                )
                for stop in more
            ),
            Row(
                head="Order",
                text="one end of every piece, then the stop block, then the other end of every piece",
            ),
            Row(
                head="Check with",
                text="four test pieces closed to a frame: no light in any mitre",
            ),
        ),
        warning=setting.cautions[0],
        picture=lambda draft, box: _mitre_picture(draft, job, box, part, index),
        seen="From above, you stand below",
    )


def _stop_pieces(say: Numbers, stop: LengthStop) -> str:
    own = listed([f"{mark} × {number}" for mark, _, number in stop.pieces])
    return said("{}, {} in all", own, say.count(stop.number))


def _mitre_picture(draft: Draft, job: Subject, box: Box, part: Part, index: int) -> None:
    cut = part.cuts[index]
    assert isinstance(cut, Mitre)
    wide = float(part.blank.width)
    kerf = float(job.resolved.shop.saw.kerf)
    long = 7.5 * wide
    fence, block = 0.9 * wide, 1.2 * wide
    inner = Box(box.x0, box.y0 + 4.0, box.x1, box.y1 - 2.0)
    extent = Box(-long - block, -2.6 * wide, 4.2 * wide, fence)
    own = sketch(draft, inner, extent, largest=0.5)
    turn = math.radians(float(MITRE_ANGLE))
    tan = math.tan(turn)
    # Seen from above: the long point at the fence, where the blade enters.
    piece = [(-long, 0.0), (0.0, 0.0), (-wide * tan, -wide), (-long, -wide)]
    own.wood(piece, ends=False)
    across = kerf / math.cos(turn)

    def blade(y: float) -> Point:
        return (y * tan, y)

    low, high = blade(-2.4 * wide), blade(0.8 * fence)
    own.blade([low, (low[0] + across, low[1]), (high[0] + across, high[1]), high])
    own.fence(
        [(-long - block, 0.0), (-0.6 * wide, 0.0), (-0.6 * wide, fence), (-long - block, fence)]
    )
    own.fence([(1.6 * wide, 0.0), (2.6 * wide, 0.0), (2.6 * wide, fence), (1.6 * wide, fence)])
    own.fence([(-long - block, -wide), (-long, -wide), (-long, 0.0), (-long - block, 0.0)])
    own.span(((-long, -wide), (0.0, -wide)), "b", out=(0.0, -16.0))
    own.line("centre", (-2.4 * wide * tan, -2.4 * wide), (-2.4 * wide * tan, -0.9 * wide))
    own.line("centre", (low[0], low[1]), (low[0], -0.9 * wide))
    own.angle(low, 1.2 * wide / own.view.scale, 90.0, 90.0 - float(MITRE_ANGLE), "a", past=1.4)
    x, y = own.at((-long / 2, -wide / 2))
    own.face([(x + over, y) for over in (0.0, -10.0, 10.0)])
    x, y = own.at((1.2 * wide, -1.6 * wide))
    own.feed((x, y - 8.0), (x, y + 8.0))


# --- the ends of a glued leaf --------------------------------------------------------------


def trim_sheet(job: Subject, say: Numbers, setting: Setting, site: Figure) -> SetUp:
    """The corner of the leaf under the saw's track.

    `site` is what may still come off the foot where it is hung, mm.
    """
    assert setting.depth is not None
    return SetUp(
        title=heading(setting),
        under=when_words(setting, job.rules.unit_words),
        keys=(
            Key(
                letter="a",
                number=say.wood(setting.depth),
                name="comes off foot and top, flush with the rails: kerf in the waste",
            ),
            *(
                Key(number=height, name=f"high, when both are off{whose}")
                for height, whose in _heights(job, say)
            ),
        ),
        rows=(
            pieces_row(say, setting, spare="waste strip"),
            Row(head="Order", text="mark with a knife from the face; foot first, then measure up"),
            Row(head="Check with", text="square from the inner edge of a stile; both stiles alike"),
            *_later(say, site),
        ),
        warning=setting.cautions[0],
        picture=lambda draft, box: _trim_picture(draft, job, box, setting),
        seen="From above, foot at the right",
    )


def _heights(job: Subject, say: Numbers) -> list[tuple[Said, str]]:
    """Every height that leaves have, and whose it is where there is more than one."""
    found: dict[str, tuple[Said, list[str]]] = {}
    for leaf in job.resolved.leaves:
        said_so = say.wood(leaf.height)
        found.setdefault(str(said_so), (said_so, []))[1].append(leaf.letter)
    if len(found) == 1:
        return [(one, "") for one, _ in found.values()]
    return [(one, f": leaf {' and '.join(letters)}") for one, letters in found.values()]


def _later(say: Numbers, site: Figure) -> tuple[Row, ...]:
    """What the fitter may take off is not taken off here."""
    if not float(site):
        return ()
    return (
        Row(
            head="Not now",
            text=said("up to {} more off the foot, on site only", say.wood(site, down=True)),
        ),
    )


def _trim_picture(draft: Draft, job: Subject, box: Box, setting: Setting) -> None:
    assert setting.depth is not None
    leaf = job.resolved.leaves[0]
    off, stile = float(setting.depth), float(leaf.left_stile)
    bottom = min(leaf.rails, key=lambda rail: float(rail.foot))
    rail = float(bottom.height)
    kerf = float(job.resolved.shop.saw.kerf)
    # The leaf lies with its foot to the right; its left stile is next to who stands there.
    long, across = min(rail, 2.2 * stile), 1.75 * stile
    inner = Box(box.x0, box.y0 + 2.0, box.x1, box.y1 - 12.0)
    own = sketch(draft, inner, Box(-long, 0.0, off + 22.0, across + 6.0), largest=1.0)
    own.wood([(-long, 0.0), (off, 0.0), (off, stile), (-long, stile)], ends=False, broken=True)
    own.line("cut_heavy", (-long, 0.0), (off, 0.0), (off, stile), (-long, stile))
    own.line("cut_heavy", (0.0, stile), (0.0, across))
    own.torn((-long, 0.0), (-long, stile))
    own.torn((-long, stile), (-long, across))
    own.torn((0.0, across), (-long, across))
    own.line("edge", (-long, stile), (0.0, stile))
    track = min(48.0, long * 0.4)
    own.fence([(-track, -2.0), (-1.0, -2.0), (-1.0, across + 4.0), (-track, across + 4.0)])
    own.blade([(0.0, -4.0), (kerf, -4.0), (kerf, stile * 0.55), (0.0, stile * 0.55)])
    own.span(((0.0, across), (off, across)), "a", out=(0.0, 5.0))
    x, y = own.at((-long * 0.72, stile * 0.5))
    own.face([(x, y), (x + 8.0, y), (x - 8.0, y)])
    x, y = own.at((-long * 0.72, stile + (across - stile) / 2))
    own.word(bottom.noun, [(x, y), (x + 10.0, y), (x, y - 6.0), (x, y + 6.0)])
    x, y = own.at((off + 12.0, stile * 0.6))
    own.feed((x, y - 9.0), (x, y + 9.0))


def lengths_of(setting: Setting, lengths: tuple[LengthStop, ...]) -> tuple[LengthStop, ...]:
    """The stops over the points of what is mitred at a setting."""
    marks = {run.mark for run in setting.runs}
    return tuple(
        stop
        for stop in lengths
        if stop.over_points and any(mark in marks for mark, _, _ in stop.pieces)
    )
