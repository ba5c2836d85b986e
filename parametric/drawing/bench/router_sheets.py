"""Set-up sheets of the router: slots in edges and ends, pockets in faces."""

from __future__ import annotations

import math

from parametric.drawing.bench.saw_sheets import part_of
from parametric.drawing.bench.saying import Numbers, listed, said
from parametric.drawing.bench.set_up import Key, Row, SetUp
from parametric.drawing.bench.sketch import sketch
from parametric.drawing.bench.words import (
    deep,
    faces_row,
    heading,
    pieces_row,
    when_words,
)
from parametric.drawing.draft import Draft
from parametric.drawing.pieces import rounded
from parametric.drawing.plane import Box, Point, arc_points
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.model import Pocket
from parametric.trade.machine_work import face_word, slot_across
from parametric.trade.milling import Setting
from parametric.trade.router_setups import LooseTenonSetUp

_SPARE = 24.0
"""How much of a piece is shown beyond a cut, mm."""


_SLOT_APART = 30.0
"""Between a slot's section and its edge from above, for a letter and its arrow, mm."""


# --- slots ---------------------------------------------------------------------------------


def slot_sheet(
    job: Subject, say: Numbers, setting: Setting, tenon: LooseTenonSetUp | None, stops_at: str
) -> SetUp:
    """The slot into an edge or an end, face to the fence."""
    assert setting.cutter is not None
    assert setting.depth is not None
    assert setting.length is not None
    t = tenon
    beyond = 0.0 if t is None else float(setting.depth - t.slot_depth)
    keys = [
        Key(
            letter="a",
            number=say.set_to(setting.cutter, *([t.cutter, t.slot_width] if t else [])),
            name="cutter",
        ),
        Key(
            letter="b",
            number=say.set_to(setting.fence[0], *([t.fence] if t else [])),
            name=f"{setting.fence_from} to the cutter's middle",
        ),
        Key(
            letter="c",
            number=say.set_to(setting.depth, *([t.slot_depth] if t and beyond < 1e-6 else [])),
            name=deep(say, setting),
        ),
    ]
    if t is not None:
        keys.append(
            Key(
                letter="d",
                number=say.wood(t.travel),
                name=said(
                    "travel of the cutter's middle, {} to each side", say.wood(t.half_travel)
                ),
            )
        )
    keys.append(
        Key(
            letter="e",
            number=say.wood(setting.length, *([t.slot_length] if t else [])),
            name="slot, over all",
        )
    )
    return SetUp(
        title=heading(setting),
        under=when_words(setting, job.rules.unit_words),
        keys=tuple(keys),
        rows=(
            pieces_row(say, setting),
            faces_row(setting),
            Row(head="Along", text=f"{stops_at}: its middles"),
            Row(
                head="Order",
                text="ends first, then edges"
                if beyond < 1e-6
                else "while the ends are square: what lies before the shoulder is cut off later",
            ),
        ),
        warning=(tenon or setting).cautions[0],
        picture=lambda draft, box: _slot_picture(draft, job, box, setting, tenon),
        seen="Left: along the feed. Right: from above.",
    )


def _slot_picture(
    draft: Draft, job: Subject, box: Box, setting: Setting, tenon: LooseTenonSetUp | None
) -> None:
    assert setting.cutter is not None
    assert setting.depth is not None
    assert setting.length is not None
    part, _ = part_of(job, setting)
    thick = float(part.blank.thickness)
    cutter, depth, long = (float(v) for v in (setting.cutter, setting.depth, setting.length))
    middle = float(setting.fence[0])
    tall = depth + _SPARE * 0.7
    apart, fence, above = max(thick * 0.95, _SLOT_APART), 14.0, 20.0
    right = thick + apart + thick
    # The section, its edge up at 0; beside it the edge from above, the slot across the middle.
    half = max(long * 0.5 + 12.0, (tall + above) / 2)
    mid = (above - tall) / 2
    inner = Box(box.x0 + 4.0, box.y0 + 1.0, box.x1 - 24.0, box.y1 - 11.0)
    extent = Box(-fence, mid - half, right, mid + half)
    own = sketch(draft, inner, extent, largest=1.0)
    s = own.view.scale
    a, b = middle - cutter / 2, middle + cutter / 2
    section = [
        (0, 0),
        (a, 0),
        (a, -depth),
        (b, -depth),
        (b, 0),
        (thick, 0),
        (thick, -tall),
        (0, -tall),
    ]
    points: list[Point] = [(float(x), float(y)) for x, y in section]
    own.wood(points, broken=True)
    own.line("cut_heavy", points[7], points[0], *points[1:7])
    own.torn((0.0, -tall), (thick, -tall))
    own.fence([(-fence, -tall), (0.0, -tall), (0.0, 6.0), (-fence, 6.0)])
    own.blade([(a, -depth), (b, -depth), (b, above), (a, above)])
    own.line("centre", (middle, above + 2.0), (middle, -depth - 6.0))
    own.span(((a, above), (b, above)), "a", out=(0.0, 4.0))
    own.span(((0.0, 0.0), (middle, 0.0)), "b", out=(0.0, (above * 0.45) / s))
    own.span(((thick, 0.0), (thick, -depth)), "c", out=(8.0, 0.0))
    # The edge from above.
    left = thick + apart
    own.wood(
        [
            (left, mid - half),
            (left + thick, mid - half),
            (left + thick, mid + half),
            (left, mid + half),
        ],
        ends=False,
        broken=True,
    )
    for x in (left, left + thick):
        own.line("cut_heavy", (x, mid - half), (x, mid + half))
    for y in (mid - half, mid + half):
        own.torn((left, y), (left + thick, y))
    low, high = mid - long / 2 + cutter / 2, mid + long / 2 - cutter / 2
    centre = left + middle
    own.outline(
        [
            *arc_points((centre, low), cutter / 2, 180, 360, 0.5),
            *arc_points((centre, high), cutter / 2, 0, 180, 0.5),
        ]
    )
    own.circle((centre, low), cutter / 2, "edge")
    own.circle((centre, high), cutter / 2, "edge")
    own.fence(
        [(left - 5.0, mid - half), (left, mid - half), (left, mid + half), (left - 5.0, mid + half)]
    )
    if tenon is not None:
        own.span(((left + thick, low), (left + thick, high)), "d", out=(7.0, 0.0))
    own.span(
        ((left + thick, mid - long / 2), (left + thick, mid + long / 2)), "e", out=(13.0 + 6.0, 0.0)
    )
    x, y = own.at((0.0, -depth / 2))
    own.face([(x + 4.4, y - drop) for drop in (4.0, 0.0, 8.0, 12.0)], turned=90)


# --- pockets -------------------------------------------------------------------------------


def pocket_sheet(
    job: Subject, say: Numbers, setting: Setting, stops_at: str, *, last: bool
) -> SetUp:
    """A pocket in a broad face, from the edge that bears; after the last the pull is tried."""
    assert setting.corner is not None
    near, far = setting.edges
    assert setting.length is not None
    assert setting.width is not None
    assert setting.depth is not None
    cutter = _widest_cutter(setting)
    pulls = any(name.startswith("leaf ") for run in setting.runs for name, _ in run.covers)
    return SetUp(
        title=heading(setting),
        under=when_words(setting, job.rules.unit_words),
        keys=(
            Key(letter="a", number=say.set_to(cutter), name="cutter, or a smaller one"),
            Key(
                letter="b",
                number=say.set_to(setting.fence[0]),
                name=said(
                    "{} to middle; edges at {}, {}",
                    setting.fence_from,
                    say.set_to(near),
                    say.set_to(far),
                ),
            ),
            Key(letter="c", number=say.set_to(setting.length), name="long"),
            Key(
                letter="d",
                number=say.set_to(setting.width),
                name=said("wide; corners of radius {}", say.set_to(setting.corner)),
            ),
            Key(
                letter="e",
                number=say.set_to(setting.depth),
                name=deep(say, setting, words="below the face"),
            ),
        ),
        rows=(
            pieces_row(say, setting),
            Row(head="Into", text=_pocket_faces(job, setting)),
            *_along_or_across(job, say, setting, stops_at),
            Row(
                head="Check with",
                text="the pull: in by hand, its flange on the ledge"
                if last and pulls
                else "a tenon in the test piece: in by hand, stays in"
                if _across(job, setting)
                else "callipers, before the template is moved",
            ),
        ),
        warning=setting.cautions[0],
        picture=lambda draft, box: _pocket_picture(draft, job, box, setting),
        seen=f"{setting.fence_from.capitalize()} up; below, cut through",
    )


def _across(job: Subject, setting: Setting) -> bool:
    """Whether what is cut are slots across the piece, along a straight edge clamped over it."""
    part, index = part_of(job, setting)
    cut = part.cuts[index]
    return isinstance(cut, Pocket) and slot_across(cut, part)


def _along_or_across(
    job: Subject, say: Numbers, setting: Setting, stops_at: str
) -> tuple[Row, ...]:
    """Where the places are, and what guides the router there."""
    if not _across(job, setting):
        return (
            Row(head="Along", text=stops_at),
            Row(
                head="Guide",
                text="template from its full-size sheet, rounded corners too: no straight edges",
            ),
        )
    parts = {part.name: part for part in job.assembly.parts}
    middles: dict[float, tuple[float, list[str]]] = {}
    for run in setting.runs:
        for name, index in run.covers:
            cut = parts[name].cuts[index]
            assert isinstance(cut, Pocket)
            _, marks = middles.setdefault(round(float(cut.v), 4), (cut.v, []))
            if run.mark not in marks:
                marks.append(run.mark)
    every = tuple(dict.fromkeys(run.mark for run in setting.runs))
    said_each = [
        said("{}" if tuple(marks) == every else f"{{}} ({', '.join(marks)})", say.set_to(middle))
        for _, (middle, marks) in sorted(middles.items())
    ]
    part, _ = part_of(job, setting)
    edge = face_word(part, "low edge")
    return (
        Row(head="Middles", text=said(f"from the {edge}: {{}}", listed(said_each, ", "))),
        Row(head="Guide", text="a straight edge clamped square across, a stop at either end"),
    )


def _widest_cutter(setting: Setting) -> Figure:
    """What a pocket is cut with; where nobody says, the largest that goes into its corners."""
    if setting.cutter is not None:
        return setting.cutter
    assert setting.corner is not None
    return 2 * setting.corner


def _pocket_faces(job: Subject, setting: Setting) -> str:
    """`face and back of S1, leaf A left stile; ...`: pockets are in a stile, not all over a leaf."""
    marks = {part.name: part.mark for part in job.assembly.parts}
    faces = dict.fromkeys(run.face for run in setting.runs)
    names = dict.fromkeys(name for run in setting.runs for name, _ in run.covers)
    where = ", ".join(f"{name.replace(' / ', ' ')} ({marks[name]})" for name in names)
    return f"{'; '.join(faces)}: {where}"


_BROAD, _ROUND_POCKET = 400.0, 60.0
"""A board wider than this is drawn shortened, with this much past its pocket, mm."""
_PICTURE_ROOM = (4.0, 16.0)
"""For the fence, and between a shortened board and its section, mm of paper."""


def _pocket_picture(draft: Draft, job: Subject, box: Box, setting: Setting) -> None:
    part, index = part_of(job, setting)
    cut = part.cuts[index]
    assert isinstance(cut, Pocket)
    wide, thick = float(part.blank.width), float(part.blank.thickness)
    long, across, corner = float(cut.length), float(cut.width), float(cut.corner)
    v, depth = float(cut.v), float(cut.depth)
    if slot_across(cut, part):
        wide, long, across = float(part.blank.length), across, long
        v = float(setting.fence[0])
    half = long / 2 + 30.0
    fence, apart = 12.0, 46.0
    inner = Box(box.x0 + 18.0, box.y0 + 2.0, box.x1 - 18.0, box.y1 - 2.0)
    if wide > _BROAD:
        # of a broad board only what is round the pocket, both edges brought near to it
        past = across / 2 + _ROUND_POCKET
        wide, v = min(v, past) + min(wide - v, past), min(v, past)
        inner = Box(inner.x0, inner.y0 + 8.0, inner.x1, inner.y1)
        room = (wide + thick) / (inner.height - _PICTURE_ROOM[0] - _PICTURE_ROOM[1])
        fence, apart = (size * room for size in _PICTURE_ROOM)
        half = long / 2 + 12.0 * room
    extent = Box(-half, -apart - thick, half, wide + fence)
    own = sketch(draft, inner, extent, largest=1.0)
    # Seen on the face: the edge that bears lies at the top, against the fence.
    own.wood([(-half, 0.0), (half, 0.0), (half, wide), (-half, wide)], ends=False, broken=True)
    for y in (0.0, wide):
        own.line("cut_heavy", (-half, y), (half, y))
    for x in (-half, half):
        own.torn((x, 0.0), (x, wide))
    own.fence([(-half, wide), (half, wide), (half, wide + fence), (-half, wide + fence)])
    middle = wide - v
    own.outline(rounded(-long / 2, middle - across / 2, long / 2, middle + across / 2, corner))
    radius = float(_widest_cutter(setting)) / 2
    inset = max(corner, radius) - max(corner - radius, 0.0) * math.sqrt(0.5)
    centre = (-long / 2 + inset, middle + across / 2 - inset)
    own.circle(centre, radius, "edge")
    own.line("centre", (-long / 2 - 8.0, middle), (long / 2 + 8.0, middle))
    own.span(((half, wide), (half, middle)), "b", out=(8.0, 0.0))
    own.span(((-half, middle - across / 2), (-half, middle + across / 2)), "d", out=(-8.0, 0.0))
    own.span(((-long / 2, 0.0), (long / 2, 0.0)), "c", out=(0.0, -6.0))
    x, y = own.at(centre)
    inside = [(x + over, y - drop) for drop in (0.0, 2.0, 4.0) for over in (9.0, 12.0, 16.0, 24.0)]
    above = [(x - over, y + up) for up in (8.0, 11.0) for over in (4.0, 8.0, 0.0, 12.0)]
    own.letter("a", [*inside, *above])
    low = -apart
    section: list[Point] = [
        (-half, low - thick),
        (half, low - thick),
        (half, low),
        (long / 2, low),
        (long / 2, low - depth),
        (-long / 2, low - depth),
        (-long / 2, low),
        (-half, low),
    ]
    own.wood(section, ends=False, broken=True)
    own.line("cut_heavy", *section[2:])
    own.line("cut_heavy", section[0], section[1])
    own.torn(section[0], section[7])
    own.torn(section[1], section[2])
    own.span(((half, low), (half, low - depth)), "e", out=(8.0, 0.0))
    x, y = own.at((half * 0.0, wide * 0.84))
    own.face([(x + over, y) for over in (0.0, 20.0, -20.0)])
