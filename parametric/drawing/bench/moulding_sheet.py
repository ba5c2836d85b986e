"""The set-up sheets of a moulding along edges, and of rails' ends that are coped over it."""

from __future__ import annotations

from parametric.drawing.bench.saw_sheets import part_of
from parametric.drawing.bench.saying import Numbers
from parametric.drawing.bench.set_up import Key, Row, SetUp
from parametric.drawing.bench.sketch import sketch
from parametric.drawing.bench.words import faces_row, heading, pieces_row, when_words
from parametric.drawing.draft import Draft
from parametric.drawing.plane import Box, Point
from parametric.drawing.shaped import flattened
from parametric.drawing.subject import Subject
from parametric.model import Moulded
from parametric.sections import depth_of, reach_of
from parametric.trade.milling import Setting

_BESIDE = 2.5
"""How much of the piece is shown, by the moulding's width."""


def moulding_sheet(job: Subject, say: Numbers, setting: Setting) -> SetUp:
    """The section that is run, how far in and how deep."""
    assert setting.width is not None
    assert setting.depth is not None
    coped = setting.kind == "cope"
    keys = (
        Key(
            letter="a",
            number=say.set_to(setting.width),
            name="end of the blank to the shoulder" if coped else "in from the edge",
        ),
        Key(
            letter="b",
            number=say.set_to(setting.depth),
            name="through the whole thickness" if coped else "down from the face",
        ),
    )
    own = (
        Row(head="Guide", text="a push block square to the fence, scrap behind the far edge")
        if coped
        else Row(head="Guide", text=_guide(setting)),
        Row(
            head="Check with",
            text="a moulded test piece: shoulder and face close together"
            if coped
            else "callipers, on the test piece",
        ),
    )
    return SetUp(
        title=heading(setting),
        under=when_words(setting, job.rules.unit_words),
        keys=keys,
        rows=(pieces_row(say, setting), faces_row(setting), *own),
        warning=setting.cautions[0],
        picture=lambda draft, box: _picture(draft, box, job, setting),
        seen="Face up; what is taken away is black",
    )


def _guide(setting: Setting) -> str:
    if "template" in setting.tool:
        return "the template of the curve on the piece, against the cutter's bearing"
    return "feather boards over and beside the cutter"


def _picture(draft: Draft, box: Box, job: Subject, setting: Setting) -> None:
    part, index = part_of(job, setting)
    cut = part.cuts[index]
    assert isinstance(cut, Moulded)
    thick, width = float(part.blank.thickness), reach_of(cut.section)
    deep = depth_of(cut.section)
    far = max(_BESIDE * width, 0.6 * thick)
    inner = Box(box.x0 + 18.0, box.y0 + 12.0, box.x1 - 12.0, box.y1 - 16.0)
    own = sketch(draft, inner, Box(0.0, -thick, far, 0.0), largest=0.3)
    corners: list[Point] = [(far, 0.0), (far, -thick), (0.0, -thick), (0.0, 0.0)]
    own.wood(corners, ends=setting.kind == "moulding", broken=True)
    own.line("cut_heavy", (far, -thick), (0.0, -thick), (0.0, 0.0), (far, 0.0))
    own.torn(corners[0], corners[1])
    own.fence([(x, -y) for x, y in flattened(cut.section)])
    own.span(((0.0, 0.0), (width, 0.0)), "a", out=(0.0, 8.0))
    own.span(((0.0, 0.0), (0.0, -deep)), "b", out=(-8.0, 0.0))
    x, y = own.at((far * 0.72, -thick * 0.16))
    own.face([(x, y), (x, y - 6.0), (x - 8.0, y)])
