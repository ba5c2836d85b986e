"""The templates of a job: for every hand of its pulls, every curve, the gauges of each saw set-up."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.drawing.chains import Chain, Link, Stop
from parametric.drawing.full_size.arched_rails import rail_templates
from parametric.drawing.full_size.outlines import rounded, square
from parametric.drawing.full_size.pages import boards_of, in_tiles, whole
from parametric.drawing.full_size.template import Laid, Note, Opening, Template
from parametric.drawing.full_size.tiles import Board
from parametric.drawing.lettering import printable
from parametric.drawing.plane import Box
from parametric.drawing.sheet import Sheet, TitleBlock, View
from parametric.drawing.subject import Subject
from parametric.hardware.pull import Pull
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import printed
from parametric.trade.saw_setups import PanelSawSetUp

_FACES = ("front", "back")
_PAST = 21.0
"""From a pocket to the ends of its template, mm: two rows of dimensions."""
_OUTSIDE = 8.0
"""How far a template passes the edge it is laid to, mm."""
_WORDS = 44.0
_CARD = (76.0, 50.0)
_NOTCH_DEEP = 22.0
_APART = 14.0
"""Between two cards, mm: both have a strip of waste."""


def draw_templates(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """Each on a page of its own size."""
    return whole(job, _boards(job, paper, title))


def draw_templates_tiled(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """Each on plain paper, in tiles where one page does not hold it."""
    return in_tiles(job, _boards(job, paper, title))


def _boards(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Board, ...]:
    templates = (
        *_pull_templates(job, title),
        *rail_templates(job, title),
        *(_gauges(job, own) for own in paper.panel_saw),
    )
    return boards_of(job, templates, title)


# --- pulls ---------------------------------------------------------------------------------


def _pull_templates(job: Subject, title: TitleBlock) -> Iterator[Template]:
    """One for each hand and size: which side the leaf's outer edge is, seen at the pocket."""
    uses: dict[tuple[object, ...], list[tuple[str, Pull, bool]]] = {}
    for leaf in job.resolved.leaves:
        for hung in leaf.pulls:
            for face in hung.pull.faces:
                edge_left = (hung.side == "left") == (face == "front")
                key = (edge_left, *_sizes(hung.pull))
                use = (f"leaf {leaf.letter} {face}", hung.pull, edge_left)
                uses.setdefault(key, []).append(use)
    for number, own in enumerate(uses.values(), 1):
        _, pull, edge_left = own[0]
        yield _pull_template(
            job, pull, tuple(words for words, _, _ in own), edge_left, number, title
        )


def _sizes(pull: Pull) -> tuple[float, ...]:
    return tuple(
        round(float(size), 6)
        for size in (
            pull.up,
            pull.from_edge,
            pull.flange_pocket_length,
            pull.flange_pocket_width,
            pull.flange_pocket_depth,
            pull.flange_pocket_corner,
            pull.body_pocket_length,
            pull.body_pocket_width,
            pull.body_pocket_depth,
            pull.body_pocket_corner,
            pull.relief,
        )
    )


def _pull_template(
    job: Subject, pull: Pull, uses: tuple[str, ...], edge_left: bool, number: int, title: TitleBlock
) -> Template:
    sign = 1.0 if edge_left else -1.0
    middle, up = sign * float(pull.from_edge), float(pull.up)
    flange = _about(middle, up, float(pull.flange_pocket_width), float(pull.flange_pocket_length))
    body = _about(middle, up, float(pull.body_pocket_width), float(pull.body_pocket_length))
    low, high = flange.y0 - _PAST, flange.y1 + _PAST
    inner = max(abs(flange.x0), abs(flange.x1)) + 24.0
    far = inner + _WORDS
    sides = sorted((sign * -_OUTSIDE, sign * far))
    words_at = sorted((sign * (inner + 1.0), sign * (far - 2.0)))
    where = "left" if edge_left else "right"
    return Template(
        view=f"pull template {number}, edge {where}",
        document="Pull template",
        second_line=f"Pockets of the pull: {', '.join(uses)}",
        plate=Box(sides[0], low, sides[1], high),
        openings=(
            Opening(outline=rounded(flange, float(pull.flange_pocket_corner)), waste="inside"),
            Opening(
                outline=rounded(body, float(pull.body_pocket_corner), float(pull.relief)),
                waste="inside",
            ),
        ),
        lines=(
            ("cut", (0.0, low + 2.0), (0.0, high - 2.0)),
            ("centre", (middle, flange.y0 - 8.0), (middle, flange.y1 + 8.0)),
            ("centre", (0.0, up), (middle + sign * (flange.width / 2 + 5.0), up)),
        ),
        crosses=(
            Laid(at=(0.0, float(pull.body_pocket_low)), words=_above(job, pull.body_pocket_low)),
            Laid(at=(0.0, float(pull.body_pocket_high)), words=_above(job, pull.body_pocket_high)),
        ),
        chains=lambda view: _pull_chains(job, pull, view, middle, flange, body, sign),
        words=(
            "Pull",
            ", ".join(uses),
            f"heavy line: outer edge of the leaf, on the {where}",
            f"middle {job.wood(pull.up)} above the finished foot",
            f"flange pocket {job.fine(pull.flange_pocket_depth)} deep, corners "
            f"r {job.fine(pull.flange_pocket_corner)}",
            f"body pocket {job.fine(pull.body_pocket_depth)} deep from the same face, corners "
            f"r {job.fine(pull.body_pocket_corner)}, {_cutter(job, pull)}",
            "The outlines are the pockets themselves, without a guide bush: for one, a template "
            "is larger all round by half of bush less cutter, its corners rounder by as much.",
            title.title,
            "  ".join(word for word in (title.number, title.fingerprint) if word),
        ),
        words_in=Box(words_at[0], low + 4.0, words_at[1], high - 3.0),
        grain="up",
        face="UP",
    )


def _about(x: float, y: float, wide: float, tall: float) -> Box:
    return Box(x - wide / 2, y - tall / 2, x + wide / 2, y + tall / 2)


def _above(job: Subject, height: float) -> tuple[str, ...]:
    return (job.fine(height), "above the foot")


def _cutter(job: Subject, pull: Pull) -> str:
    if float(pull.relief) > float(pull.body_pocket_corner):
        return f"cutter {job.fine(pull.cutter)} run on into them"
    return f"cutter {job.fine(pull.cutter)}"


def _pull_chains(
    job: Subject, pull: Pull, view: View, middle: float, flange: Box, body: Box, sign: float
) -> list[Chain]:
    """Edge to middle and the body's width below, the flange's width above, lengths inside."""
    rule = job.rules.fine
    foot, head = view.y(flange.y0), view.y(flange.y1)
    out = view.x(flange.x1 if sign > 0 else flange.x0)

    def level(line: float, at: tuple[float, float], link: Link, reach: float) -> Chain:
        stops = tuple(Stop(at=place, foot=reach) for place in sorted(at))
        return Chain(view=view, axis="across", line=line, stops=stops, links=(link,))

    def upright(line: float, box: Box, link: Link) -> Chain:
        stops = (Stop(at=box.y0, foot=out), Stop(at=box.y1, foot=out))
        return Chain(view=view, axis="up", line=line, stops=stops, links=(link,))

    return [
        level(
            foot - 8.0, (0.0, middle), Link(figure=pull.from_edge, rule=job.rules.wood), foot - 2.0
        ),
        level(
            foot - 16.0, (body.x0, body.x1), Link(figure=pull.body_pocket_width, rule=rule), foot
        ),
        level(
            head + 16.0,
            (flange.x0, flange.x1),
            Link(figure=pull.flange_pocket_width, rule=rule),
            head,
        ),
        upright(out + sign * 9.0, body, Link(figure=pull.body_pocket_length, rule=rule)),
        upright(out + sign * 18.0, flange, Link(figure=pull.flange_pocket_length, rule=rule)),
    ]


# --- gauges --------------------------------------------------------------------------------


def _gauges(job: Subject, set_up: PanelSawSetUp) -> Template:
    """Cards with two notches each, one that goes over and one that does not."""
    said = printed(job.resolved)
    wide, tall = _CARD
    openings: list[Opening] = []
    notes: list[Note] = []
    words = [
        f"Gauges for {set_up.mark}",
        *(f"{gauge.what}: {gauge.where}" for gauge in set_up.gauges),
    ]
    for row, gauge in enumerate(reversed(set_up.gauges)):
        low = row * (tall + _APART)
        top = low + tall
        openings.append(Opening(outline=square(Box(0.0, low, wide, top)), waste="outside"))
        for share, size, word in ((0.28, gauge.go, "goes"), (0.74, gauge.no_go, "does not go")):
            x, half = wide * share, float(size) / 2
            notch = Box(x - half, top - _NOTCH_DEEP, x + half, top)
            openings.append(Opening(outline=square(notch), waste="inside"))
            notes.append(Note(at=(x, low + 15.0), words=(said.gauge(size), word)))
        notes.append(Note(at=(wide / 2, low + 3.0), words=(gauge.what,)))
    high = len(set_up.gauges) * (tall + _APART) - _APART
    words += [
        "The paper shows the shape. File each notch to its figure with callipers: paper is not "
        "that true.",
        printable(job.resolved.job),
    ]
    return Template(
        view=f"gauges {set_up.mark}",
        document="Notch gauges",
        second_line=f"For the raised panel {set_up.mark}, {', '.join(set_up.names)}",
        plate=Box(-10.0, -10.0, wide + 14.0 + _WORDS, high + 10.0),
        openings=tuple(openings),
        notes=tuple(notes),
        words=tuple(words),
        words_in=Box(wide + 12.0, 0.0, wide + 12.0 + _WORDS - 2.0, high + 6.0),
        face="",
    )
