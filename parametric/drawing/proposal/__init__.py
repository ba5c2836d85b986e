"""What the client signs: a few pages with the doors, the drawing, what they get, and yes."""

from parametric.drawing.lettering import printable
from parametric.drawing.proposal.content import (
    Choice,
    DrawingWords,
    Dress,
    Pair,
    ProposalContent,
    Size,
    Swatches,
)
from parametric.drawing.proposal.pages import draw_proposal
from parametric.drawing.proposal.setting import ProposalPage, Tint, says_anything

__all__ = [
    "Choice",
    "DrawingWords",
    "Dress",
    "Pair",
    "ProposalContent",
    "ProposalPage",
    "Size",
    "Swatches",
    "Tint",
    "draw_proposal",
    "printable",
    "says_anything",
]
