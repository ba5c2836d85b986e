"""Wooden runners, kickers and guides in a case: strips that carry a drawer and keep it straight.

from the front, left side                    with a face frame before it
case | side of the box                       case |   | side of the box
 |___|                                        |___|   |
 |   |  kicker, a gap over the side           |   |   |
 |___|    __                                  |guide| |    fills up to the frame
 |      |  |                                  |     | |
 |______|__|                                  |_____|_|__
 |  runner |                                  |  runner  |
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.cases.drawer import DrawerBox
from parametric.cases.drawer_written import WoodenRunnersSpec
from parametric.catalog.boards import Board
from parametric.catalog.timbers import Timber
from parametric.figures import Figure, named
from parametric.names import join


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """One strip on each side of a case, mm: `foot` its underside over the foot of the opening."""

    word: str
    width: Figure
    thickness: Figure
    foot: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerRunners:
    """What one drawer runs on in its case, mm.

    `pack` is how far the case's side stands back from the opening at either side, behind a face
    frame; strips are as long as the case is deep but for `set_back`. A guide's `width` is how far
    it reaches up over the runner, its `thickness` the pack.
    """

    name: str
    pack: Figure
    set_back: Figure
    length: Figure
    clear_width: Figure
    runner: Strip
    kicker: Strip | None
    guide: Strip | None
    stuff: Timber | Board


def size_runners(
    spec: WoodenRunnersSpec,
    box: DrawerBox,
    *,
    name: str,
    pack: Figure,
    stuff: Timber | Board,
) -> DrawerRunners:
    """Size the strips of a drawer: the runner's top is where the box stands.

    Args:
        spec: the drawer as written.
        box: its box.
        name: what they are called together (`cabinet base / drawer 1`).
        pack: from the side of the case to the opening, 0 without a face frame, mm.
        stuff: what they are made of.

    Source: common practice, no source.
    """

    def at(quantity: str, value: float) -> Figure:
        return named(join(name, quantity), value)

    packed, set_back = at("pack", pack), at("runners set back", spec.set_back)
    wide, thick = (
        at("runner width", spec.runner[0] + packed),
        at("runner thickness", spec.runner[1]),
    )
    kicker = guide = None
    if spec.kicker is not None:
        kicker = Strip(
            word="kicker",
            width=at("kicker width", spec.kicker[0] + packed),
            thickness=at("kicker thickness", spec.kicker[1]),
            foot=at("kicker up", box.foot + box.height + spec.kicker_gap),
        )
    if float(packed) > 0:
        guide = Strip(
            word="guide",
            width=at("guide height", spec.runner[1]),
            thickness=at("guide thickness", packed),
            foot=at("guide up", box.foot),
        )
    return DrawerRunners(
        name=name,
        pack=packed,
        set_back=set_back,
        length=at("runner length", box.clear_depth - set_back),
        clear_width=box.clear_width,
        runner=Strip(
            word="runner", width=wide, thickness=thick, foot=at("runner up", box.foot - thick)
        ),
        kicker=kicker,
        guide=guide,
        stuff=stuff,
    )
