"""The colour of wood and glass laid over a proposal's drawing."""

from __future__ import annotations

from parametric.catalog.finishes import Paint
from parametric.drawing.pieces import Piece, front, silhouette
from parametric.drawing.plane import around
from parametric.drawing.proposal.content import ProposalContent
from parametric.drawing.proposal.setting import Tint
from parametric.drawing.proposal.shades import mixed
from parametric.drawing.seen_and_cut import cuts_through
from parametric.drawing.sheet import View
from parametric.drawing.site import leaf_boxes, level_cut
from parametric.drawing.subject import Subject
from parametric.model import Mitre

_SAME = 1e-6
"""Places no farther apart than this are one place, mm."""


def _wood_colour(said: ProposalContent) -> str:
    wood = said.dress.wood
    return wood.colour if isinstance(wood, Paint) else wood.early


def wood_wash(said: ProposalContent) -> str:
    """Wood from the front, pale enough for lines and sizes to stand on it."""
    return mixed(_wood_colour(said), "#ffffff", 0.52)


def glass_wash(said: ProposalContent) -> str:
    """A pane from the front, as pale."""
    return mixed(said.dress.glass.colour, "#ffffff", 0.80)


def tinted_front(job: Subject, view: View, said: ProposalContent) -> list[Tint]:
    """The leaves from the front, washed with their colour, the glass with its own."""
    wash, pane = wood_wash(said), glass_wash(said)
    door = job.resolved.door
    boxes = leaf_boxes(door)
    found = []
    # From the wall outwards, so that a leaf in front covers what it covers.
    for index in sorted(range(len(boxes)), key=lambda n: float(door.hanging.planes[n])):
        found.append(Tint(points=view.path(boxes[index].polygon), colour=wash))
        own = [piece for piece in job.shut if piece.group == door.leaves[index].name]
        for glass in (piece for piece in own if piece.part.material.look == "glass"):
            found.append(Tint(points=view.path(silhouette(glass)), colour=pane))
            found += [
                Tint(points=view.path(silhouette(piece)), colour=wash)
                for piece in own
                if _laps(piece, glass)
            ]
    return found


def _laps(piece: Piece, glass: Piece) -> bool:
    """Whether a piece of wood covers the edge of a pane that lies in its rebate."""
    if piece.part.material.look != "timber" or front(piece) >= front(glass):
        return False
    if any(isinstance(cut, Mitre) for cut in piece.part.cuts):
        return False
    return around(silhouette(piece)).meets(around(silhouette(glass)).grown(-_SAME))


def tinted(job: Subject, view: View, said: ProposalContent) -> list[Tint]:
    """The leaves in a plan in the colour that they are pictured in."""
    wash = mixed(_wood_colour(said), "#ffffff", 0.35)
    outlines = []
    for cut in cuts_through(job.shut, "level", level_cut(job.resolved.door)):
        if cut.piece.part.material.look != "timber":
            continue
        outline = view.path(cut.outline)
        outlines.append(around(outline).polygon if _square(cut.piece) else outline)
    return [Tint(points=outline, colour=wash) for outline in outlines]


def _square(piece: Piece) -> bool:
    """Whether a piece stands square to the wall, so that a box about it is its own outline."""
    ways = (*piece.stands.x, *piece.stands.y)
    return all(min(abs(d), abs(1.0 - abs(d))) < _SAME for d in ways)
