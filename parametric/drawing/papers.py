"""Which papers a job is drawn on, and how a scale is written there.

A design in millimetres goes on ISO sheets, one in inches on sheets cut in inches; the
house file may choose the other for either.

Source: ISO 216 and ISO 5457 (A sizes), ASME Y14.1 (B is 11 x 17 in, C is 17 x 22 in,
letter 8 1/2 x 11 in), both from memory.
"""

from __future__ import annotations

from parametric.drawing.sheet import Paper
from parametric.drawing.subject import Subject
from parametric.units import Unit

_IN = 25.4

A4 = Paper(name="A4", width=210.0, height=297.0, columns=4, rows=6)
A3 = Paper(name="A3", width=420.0, height=297.0, columns=8, rows=6)
A2 = Paper(name="A2", width=594.0, height=420.0, columns=12, rows=8)
LETTER = Paper(name="letter", width=8.5 * _IN, height=11 * _IN, filing=0.5 * _IN, edge=0.375 * _IN)
TABLOID = Paper(
    name="tabloid",
    width=17 * _IN,
    height=11 * _IN,
    filing=0.5 * _IN,
    edge=0.375 * _IN,
    columns=8,
    rows=6,
)
INCH_C = Paper(
    name="C",
    width=22 * _IN,
    height=17 * _IN,
    filing=0.5 * _IN,
    edge=0.375 * _IN,
    columns=8,
    rows=6,
)


def drawing_papers(job: Subject) -> tuple[Paper, ...]:
    """The papers of the shop drawings, in the order they are tried."""
    match job.resolved.shop.paper.drawing_paper:
        case "tabloid":
            return (TABLOID, INCH_C)
        case "A2":
            return (A2,)
        case _:
            return (A3, A2)


Scales = tuple[tuple[float, ...], tuple[float, ...]]
"""Scales tried on the usual paper, then on the next larger; the largest first."""


def papers_and_scales(job: Subject, *, mm: Scales, inch: Scales) -> tuple[tuple[Paper, float], ...]:
    """What a kind of sheet is tried on, in order, in the unit of the job.

    A house that draws on one paper only has every scale on that.
    """
    usual, larger = mm if job.rules.unit == "mm" else inch
    papers = drawing_papers(job)
    if len(papers) == 1:
        return tuple((papers[0], scale) for scale in sorted({*usual, *larger}))
    return (
        *((papers[0], scale) for scale in usual),
        *((papers[1], scale) for scale in larger),
    )


def bench_paper(job: Subject, *, lying: bool = False) -> Paper:
    """The paper of bench, order and site sheets; `lying` has the long side level."""
    letter = job.resolved.shop.paper.bench_paper == "letter"
    size = LETTER if letter else A4
    across, up = (size.height, size.width) if lying else (size.width, size.height)
    edge = 0.375 * _IN if letter else 10.0
    filing = 0.75 * _IN if letter else 20.0
    # A hole punch takes the long side: the left of a standing page, the top of a lying one.
    return Paper(
        name=size.name, width=across, height=up, filing=edge if lying else filing, edge=edge
    )


def scale_words(scale: float, unit: Unit) -> str:
    r"""A scale as a title block or a caption says it; `scale` is model to paper.

    Example:
        >>> scale_words(10, "mm"), scale_words(0.5, "mm"), scale_words(1, "inch")
        ('1:10', '2:1', 'full size')
        >>> scale_words(8, "inch"), scale_words(16, "inch"), scale_words(2, "inch")
        ('1 1/2" = 1\'-0"', '3/4" = 1\'-0"', 'half size')
    """
    if unit == "mm":
        return f"1:{scale:g}" if scale >= 1 else f"{1 / scale:g}:1"
    if scale == 1:
        return "full size"
    if scale == 2:
        return "half size"
    inches = _A_FOOT_AS.get(round(scale)) if scale == round(scale) else None
    return f'{inches}" = 1\'-0"' if inches else f"1:{scale:g}"


_A_FOOT_AS = {
    4: "3",
    8: "1 1/2",
    12: "1",
    16: "3/4",
    24: "1/2",
    32: "3/8",
    48: "1/4",
    96: "1/8",
    192: "1/16",
}
"""How many inches of paper stand for a foot."""
