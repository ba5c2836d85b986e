"""The set-up sheet of bored holes: the bit, the stop on it, the line that the middles stand on."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.drawing.bench.saw_sheets import part_of
from parametric.drawing.bench.saying import Numbers, listed, said
from parametric.drawing.bench.set_up import Key, Row, SetUp
from parametric.drawing.bench.sketch import sketch
from parametric.drawing.bench.words import faces_row, heading, pieces_row, when_words
from parametric.drawing.draft import Draft
from parametric.drawing.plane import Box, Point
from parametric.drawing.subject import Subject
from parametric.model import Drilled, face_depth
from parametric.trade.milling import Setting

_BESIDE = 1.6
"""How much of the piece is shown past the hole, by its distance from what bears."""
_LEAST = 30.0
"""How much of it is shown at least, mm."""


def bore_sheet(job: Subject, say: Numbers, setting: Setting) -> SetUp:
    """How wide, how far from what bears, how deep; the rows by their first hole and their pitch."""
    assert setting.width is not None
    assert setting.depth is not None
    part, index = part_of(job, setting)
    cut = part.cuts[index]
    assert isinstance(cut, Drilled)
    through = float(cut.depth) >= float(face_depth(cut.face, part.blank)) - 1e-6
    return SetUp(
        title=heading(setting),
        under=when_words(setting, job.rules.unit_words),
        keys=(
            Key(letter="a", number=say.set_to(setting.width), name="bit"),
            Key(
                letter="b",
                number=say.set_to(setting.fence[0]),
                name=f"{setting.fence_from} to the middle",
            ),
            Key(
                letter="c",
                number=say.set_to(setting.depth),
                name="right through, scrap behind" if through else "deep, to the stop on the bit",
            ),
        ),
        rows=(
            pieces_row(say, setting),
            faces_row(setting),
            Row(head="Places", text=listed(list(_places(job, say, setting)), "; ")),
            Row(head="Guide", text=_guide(cut)),
            Row(head="Check with", text="the test piece: a pin in its hole, the depth by rule"),
        ),
        warning=setting.cautions[0],
        picture=lambda draft, box: _picture(draft, box, job, setting),
        seen="Across the line of holes",
    )


def _places(job: Subject, say: Numbers, setting: Setting) -> Iterator[str]:
    """Where each mark's holes begin and how they go on, each way of it once."""
    parts = {part.name: part for part in job.assembly.parts}
    told: dict[str, list[str]] = {}
    for run in setting.runs:
        for name, index in run.covers:
            cut = parts[name].cuts[index]
            assert isinstance(cut, Drilled)
            first = say.set_to(cut.u if cut.along == "u" else cut.v)
            text = (
                said("1 at {}", first)
                if cut.count == 1
                else said(f"{cut.count} from {{}}, {{}} apart", first, say.set_to(cut.pitch))
            )
            marks = told.setdefault(text, [])
            if (mark := run.mark or run.noun) not in marks:
                marks.append(mark)
    for words, marks in told.items():
        yield said(f"{{}} ({', '.join(marks)})", words)


def _guide(cut: Drilled) -> str:
    if "end" in cut.face or "edge" in cut.face:
        return "a doweling jig or a horizontal borer, square to the face that is bored"
    if cut.count > 1:
        return "a drilling template on the line, its first hole pinned; else a fence and a stop"
    return "a drill in its stand or guide, square to the face, the middle pricked"


def _picture(draft: Draft, box: Box, job: Subject, setting: Setting) -> None:
    """What bears at the left, the bit's hole black, the wood round it."""
    part, index = part_of(job, setting)
    cut = part.cuts[index]
    assert isinstance(cut, Drilled)
    off, wide = float(setting.fence[0]), float(cut.diameter)
    thick, deep = float(face_depth(cut.face, part.blank)), float(cut.depth)
    shown = min(thick, max(_BESIDE * deep, _LEAST))
    far = off + max(_LEAST, _BESIDE * wide)
    inner = Box(box.x0 + 20.0, box.y0 + 14.0, box.x1 - 16.0, box.y1 - 22.0)
    own = sketch(draft, inner, Box(0.0, -shown, far, 0.0), largest=0.3)
    corners: list[Point] = [(far, 0.0), (far, -shown), (0.0, -shown), (0.0, 0.0)]
    own.wood(corners, ends="end" not in cut.face, broken=True)
    own.line("cut_heavy", (0.0, -shown), (0.0, 0.0), (far, 0.0))
    own.torn(corners[0], corners[1])
    if shown < thick:
        own.torn(corners[1], corners[2])
    else:
        own.line("cut_heavy", corners[1], corners[2])
    low, high = off - wide / 2, off + wide / 2
    start = -float(cut.surface)
    own.fence([(low, -deep), (high, -deep), (high, start), (low, start)])
    own.span(((low, 0.0), (high, 0.0)), "a", out=(0.0, 19.0))
    own.span(((0.0, 0.0), (off, 0.0)), "b", out=(0.0, 7.0))
    own.span(((high, 0.0), (high, -deep)), "c", out=(9.0, 0.0))
