"""The set-up sheet of screw pockets: the jig's stop, the collar on the stepped bit, the places."""

from __future__ import annotations

import math
from collections.abc import Iterator

from parametric.drawing.bench.saw_sheets import part_of
from parametric.drawing.bench.saying import Numbers, listed, said
from parametric.drawing.bench.set_up import Key, Row, SetUp
from parametric.drawing.bench.sketch import sketch
from parametric.drawing.bench.words import faces_row, heading, pieces_row, when_words
from parametric.drawing.draft import Draft
from parametric.drawing.plane import Box, Point
from parametric.drawing.subject import Subject
from parametric.model import ScrewPocket
from parametric.trade.milling import Setting

_BEYOND = 30.0
"""How much of the piece is shown past the mouth of a pocket, mm."""


def screw_pocket_sheet(job: Subject, say: Numbers, setting: Setting) -> SetUp:
    """How wide, how far from the end, how deep along the bit; the places across each piece."""
    assert setting.width is not None
    assert setting.depth is not None
    assert setting.length is not None
    cut = _first(job, setting)
    return SetUp(
        title=heading(setting),
        under=when_words(setting, job.rules.unit_words),
        keys=(
            Key(letter="a", number=say.set_to(setting.width), name="stepped bit"),
            Key(
                letter="b",
                number=say.set_to(setting.fence[0]),
                name=f"the end to where the bit enters the face, at {float(cut.angle):g}°",
            ),
            Key(
                letter="c",
                number=say.set_to(setting.depth),
                name="pocket along the bit, to the collar",
            ),
            Key(
                letter="d",
                number=say.set_to(setting.length),
                name="pilot before it, out of the middle of the end",
            ),
        ),
        rows=(
            pieces_row(say, setting),
            faces_row(setting),
            Row(head="Places", text=listed(list(_places(job, say, setting)), "; ")),
            Row(head="Guide", text="a pocket jig set to the thickness, clamped to face and end"),
            Row(
                head="Check with",
                text="the test piece: a screw in it, its head sunk, its point in a scrap",
            ),
        ),
        warning=setting.cautions[0],
        picture=lambda draft, box: _picture(draft, box, job, setting),
        seen="Along a pocket, cut through its middle",
    )


def _first(job: Subject, setting: Setting) -> ScrewPocket:
    part, index = part_of(job, setting)
    cut = part.cuts[index]
    assert isinstance(cut, ScrewPocket)
    return cut


def _places(job: Subject, say: Numbers, setting: Setting) -> Iterator[str]:
    """Where each mark's pockets begin across the piece and how they go on, each way of it once."""
    parts = {part.name: part for part in job.assembly.parts}
    told: dict[str, list[str]] = {}
    for run in setting.runs:
        for name, index in run.covers:
            cut = parts[name].cuts[index]
            assert isinstance(cut, ScrewPocket)
            first = say.set_to(cut.v)
            text = (
                said("1 at {} across", first)
                if cut.count == 1
                else said(f"{cut.count} from {{}} across, {{}} apart", first, say.set_to(cut.pitch))
            )
            marks = told.setdefault(text, [])
            if run.mark not in marks:
                marks.append(run.mark)
    for words, marks in told.items():
        yield said(f"{{}} ({', '.join(marks)})", words)


def _picture(draft: Draft, box: Box, job: Subject, setting: Setting) -> None:
    """The piece lying face up with its end at the right, the stepped hole through to the end."""
    part, _ = part_of(job, setting)
    cut = _first(job, setting)
    thick, mouth = float(part.blank.thickness), float(cut.mouth)
    turn = math.radians(float(cut.angle))
    half, pin = float(cut.wide) / 2, float(cut.pilot) / 2
    deep, whole = float(cut.deep), cut.along
    far = cut.reach + _BEYOND
    inner = Box(box.x0 + 10.0, box.y0 + 16.0, box.x1 - 12.0, box.y1 - 22.0)
    own = sketch(draft, inner, Box(-far, -thick, 0.0, 0.0), largest=0.5)

    def at(along: float, off: float) -> Point:
        """A place by how far along the axis it is and how far below it."""
        return (
            -mouth + along * math.cos(turn) - off * math.sin(turn),
            -along * math.sin(turn) - off * math.cos(turn),
        )

    # the axis' upper and lower sides meet the face where depth is 0, the end where x is 0
    rise, slip = half / math.tan(turn), pin * math.tan(turn)
    wood: list[Point] = [
        (-far, -thick),
        (0.0, -thick),
        at(whole + slip, pin),
        at(deep, pin),
        at(deep, half),
        at(-rise, half),
        (-far, 0.0),
    ]
    over: list[Point] = [
        at(rise, -half),
        at(deep, -half),
        at(deep, -pin),
        at(whole - slip, -pin),
        (0.0, 0.0),
    ]
    own.wood(wood, broken=True)
    own.wood(over, broken=True)
    own.line("cut_heavy", *wood[:-1][0:6])
    own.line("cut_heavy", wood[5], wood[6])
    own.line("cut_heavy", *over, over[0])
    own.torn(wood[0], wood[6])
    own.line("centre", at(-rise - 4.0, 0.0), at(whole + 8.0, 0.0))
    own.span(((-mouth, 0.0), (0.0, 0.0)), "b", out=(0.0, 8.0))
    low = at(deep, half)
    own.letter("a", [own.at(at(deep * 0.35, 0.0))])
    own.letter("c", [(own.at(low)[0], own.at((0.0, -thick))[1] - 6.0)])
    own.letter("d", [(own.at((0.0, 0.0))[0] + 7.0, own.at(at(whole, 0.0))[1])])
