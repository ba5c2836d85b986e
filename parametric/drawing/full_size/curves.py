"""Templates of rails that are cut to a curve, seen from the face."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.drawing.chains import Chain, Link, Stop
from parametric.drawing.full_size.template import Laid, Opening, Template
from parametric.drawing.leaf_head import arched_rail, radii
from parametric.drawing.plane import Box
from parametric.drawing.shaped import across, flattened
from parametric.drawing.sheet import TitleBlock, View
from parametric.drawing.subject import Subject
from parametric.model import Part, Shaped
from parametric.outlines import Outline, bounds_of, turned_over
from parametric.resolve.head import LeafHead
from parametric.resolve.rail import Rail

_ROUND = 12.0
"""How much of the page is cut out round a template, mm."""
_UNDER = 30.0
"""Room for dimensions under a template, mm."""


def curve_templates(job: Subject, title: TitleBlock) -> Iterator[Template]:
    """One for every curve; what is its mirror image is told to turn the same one over."""
    parts = {part.name: part for part in job.assembly.parts}
    known: dict[tuple[tuple[float, float, float], ...], list[str]] = {}
    found: list[tuple[Rail, LeafHead, Part, Shaped, list[str]]] = []
    for leaf in job.resolved.door.leaves:
        arched = arched_rail(leaf)
        if arched is None:
            continue
        rail, head = arched
        part = parts[rail.name]
        cut = _underside(part)
        if cut is None:
            continue
        over = turned_over(cut.outline, across=float(part.blank.length))
        if _key(cut.outline) in known:
            known[_key(cut.outline)].append(f"{part.mark}, leaf {leaf.letter}")
        elif _key(over) in known:
            known[_key(over)].append(f"{part.mark}, leaf {leaf.letter}, turned over")
        else:
            uses = [f"{part.mark}, leaf {leaf.letter}"]
            known[_key(cut.outline)] = uses
            found.append((rail, head, part, cut, uses))
    for rail, head, part, cut, uses in found:
        yield _rail_template(job, title, rail, head, part, cut, tuple(uses))


def _key(shape: Outline) -> tuple[tuple[float, float, float], ...]:
    """An outline by its corners to the hundredth, from the lowest on."""
    corners = [(round(v.x, 2) + 0.0, round(v.y, 2) + 0.0, round(v.bulge, 5) + 0.0) for v in shape]
    start = corners.index(min(corners))
    return tuple(corners[start:] + corners[:start])


def _underside(part: Part) -> Shaped | None:
    """The curved cut right through a rail."""
    for cut in part.cuts:
        through = isinstance(cut, Shaped) and float(cut.depth) >= float(part.blank.thickness) - 1e-6
        if isinstance(cut, Shaped) and through and "face" in cut.face:
            return cut
    return None


def _rail_template(
    job: Subject,
    title: TitleBlock,
    rail: Rail,
    head: LeafHead,
    part: Part,
    cut: Shaped,
    uses: tuple[str, ...],
) -> Template:
    long, tall = float(rail.length), float(rail.height)
    sizes = " and ".join(job.fine(radius) for radius in radii(head))
    ends = ((0.0, head.at_left, rail.left_end), (long, head.at_right, rail.right_end))

    def chains(view: View) -> list[Chain]:
        rule = job.rules.fine
        length = Chain(
            view=view,
            axis="across",
            line=view.y(0.0) - 10.0,
            stops=(Stop(at=0.0, foot=view.y(0.0)), Stop(at=long, foot=view.y(0.0))),
            links=(Link(figure=rail.length, rule=rule),),
        )
        return [
            length,
            *(
                Chain(
                    view=view,
                    axis="up",
                    line=view.x(x) + (-8.0 if x == 0.0 else 8.0),
                    stops=(
                        Stop(at=0.0, foot=view.x(x)),
                        Stop(at=float(height), foot=view.x(x)),
                        Stop(at=tall, foot=view.x(x)),
                    ),
                    links=(
                        Link(figure=height, rule=rule) if float(height) > 0.05 else None,
                        None if whole is None else Link(figure=whole, rule=rule),
                    ),
                )
                for x, height, whole in ends
            ),
        ]

    return Template(
        view=f"curve of {part.mark}",
        document="Curve template",
        second_line=f"Underside of {', '.join(uses)}",
        plate=Box(-_ROUND - 14.0, -_UNDER, long + _ROUND + 14.0, tall + _ROUND),
        openings=(Opening(outline=cut.outline, waste="inside"),),
        lines=(
            ("cut", (0.0, 0.0), (0.0, tall)),
            ("cut", (long, 0.0), (long, tall)),
            ("cut", (0.0, tall), (long, tall)),
            ("centre", (-4.0, 0.0), (long + 4.0, 0.0)),
        ),
        crosses=(
            Laid(at=(0.0, tall), words=("left end", "upper edge")),
            Laid(at=(long, tall), words=("right end",)),
        ),
        chains=chains,
        words=(
            f"{part.mark}, {rail.noun}",
            "; ".join(uses),
            "seen from the face; heavy lines: ends and upper edge of the blank, chain line: its "
            "lower edge, the springing line",
            *((f"radius {sizes}",) if sizes else ()),
            "the hatched side is cut away; bars and glass follow the same curve",
            title.title,
            "  ".join(word for word in (title.number, title.fingerprint) if word),
        ),
        words_in=_over_the_curve(cut, long, tall),
        grain="across",
    )


def _over_the_curve(cut: Shaped, long: float, tall: float) -> Box:
    """Where words stand in the wood over a curve, at the end where there is more of it."""
    low, high = bounds_of(cut.outline)[1], bounds_of(cut.outline)[3]
    right_lower = _height_at(cut, 0.9 * long) < _height_at(cut, 0.1 * long)
    left = long * 0.5 if right_lower else 14.0
    level = max(_height_at(cut, left), _height_at(cut, left + 0.4 * long), low)
    return Box(left, min(level, high) + 6.0, left + 0.4 * long, tall - 10.0)


def _height_at(cut: Shaped, x: float) -> float:
    """How high the curve stands at a place along the rail."""
    return max((b for _, b in across(flattened(cut.outline), x)), default=0.0)
