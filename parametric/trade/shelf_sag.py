r"""How far a shelf sags, with a lip and without, and what would hold it.

        load, the whole length                          seen on end
 |||||||||||||||||||||||||||||||||||            ______________________
 ===================================           |________shelf_________|
 ^ \_____________ sag _____________/ ^          ||  lip, on edge under the front:
 |<------------- span ------------->|           ||  its stiffness goes by deep^3

The shelf lies on its ends and is held by nothing else, so a shelf that is let into its sides
sags less. Shelf and lip are first taken as bending side by side, each about its own middle:
their stiffnesses add. Glued together along the whole length they bend as one, and sag less.
A load that stays makes any wood or board creep; what is worked out here is the sag at once.

Source: 5 w L^4 / (384 E I), a beam on two supports under an even load, as in the Wood Handbook,
FPL-GTR-190 (2010), chapter 9, and any table of beams; I = b t^3 / 12.
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.case_facts import GRAVITY, TEST_LOAD, TEST_MOST, TEST_SAG
from parametric.figures import Figure, named, smallest, square
from parametric.loaded import is_over
from parametric.names import join

CREEP = "A load that stays makes it sag farther over the years, to about double."
"""Source: Wood Handbook, FPL-GTR-190 (2010), chapter 5, creep, from memory."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lip:
    """A strip on edge along the front of a shelf, mm; `stiffness` of its wood, N/mm2."""

    thickness: Figure
    depth: Figure
    stiffness: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfSag:
    """What a shelf does under its load.

    Lengths mm; `load` N to the mm of its length; `bending` is E I of the shelf and of the lip,
    N mm2. `sag` is with the lip, where there is one; `glued` with shelf and lip as one piece.
    `carries` kg to the metre brings it to its limit, and `longest` is the span that the load
    would. `on_test` is the sag under the load of the cabinet standard, `test_limit` what that allows.
    """

    place: str
    span: Figure
    load: Figure
    bending: Figure
    lip_bending: Figure | None
    plain: Figure
    sag: Figure
    glued: Figure | None
    limit: Figure
    left: Figure
    carries: Figure
    longest: Figure
    on_test: Figure
    test_limit: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class WaysOut:
    """What would keep a shelf within its limit, mm, each alone.

    `lip` is the least depth of a lip of the thickness asked about; `divided` the sag with a
    divider under the middle; `thickness` the least of the same board.
    """

    lip: Figure
    lip_thickness: Figure
    divided: Figure
    thickness: Figure


def bending_stiffness(name: str, stiffness: Figure, width: Figure, depth: Figure) -> Figure:
    """E I of a bar bent about its own middle, N mm2; `depth` is the way it bends."""
    return named(name, stiffness * width * (square(depth) * depth) / 12, "N mm2")


def sag_of(name: str, load: Figure, span: Figure, bending: Figure) -> Figure:
    """How far the middle goes down, mm: `load` N/mm along a `span` on two ends."""
    return named(name, 5 * load * square(square(span)) / (384 * bending))


def load_along(name: str, load: Figure, depth: Figure) -> Figure:
    """N to the mm of a shelf's length, of kg to its metre or to the square metre of it."""
    along = load * depth / 1000 if is_over(load) else load
    return named(name, along * GRAVITY / 1000, "N/mm")


def longest_span(name: str, load: Figure, bending: Figure, sag: Figure) -> Figure:
    """The span, mm, that reaches its sag, mm to the metre, under a load, N/mm."""
    return named(name, cube_root(384 * bending * sag / 1000 / (5 * load)))


def cube_root(value: Figure) -> Figure:
    """The cube root."""
    return Figure(float(value) ** (1 / 3), op="cube root", args=(value,))


def shelf_sag(
    place: str,
    *,
    span: Figure,
    depth: Figure,
    thickness: Figure,
    stiffness: Figure,
    load: Figure,
    sag: Figure,
    lip: Lip | None = None,
) -> ShelfSag:
    """A shelf on its two ends, with a lip or without.

    Args:
        place: `cabinet upper / shelf 1`.
        span: clear between what it lies on, mm.
        depth: of the shelf from front to back, mm.
        thickness: of the shelf, mm.
        stiffness: modulus of elasticity of its board, N/mm2.
        load: what stands on it, kg/m or kg/m2.
        sag: the most it may, mm to the metre of span.
        lip: along its front edge.
    """

    def at(quantity: str) -> str:
        return join(place, quantity)

    along = load_along(at("load along it"), load, depth)
    own = bending_stiffness(at("bending stiffness"), stiffness, depth, thickness)
    limit = named(at("sag limit"), sag * span / 1000)
    plain = sag_of(at("sag without a lip"), along, span, own)
    lip_bending = glued = None
    together = own
    if lip is not None:
        lip_bending = bending_stiffness(
            at("bending stiffness of the lip"), lip.stiffness, lip.thickness, lip.depth
        )
        together = named(at("bending stiffness with the lip"), own + lip_bending, "N mm2")
        as_one = _as_one(place, own, lip_bending, stiffness * depth * thickness, thickness, lip)
        glued = sag_of(at("sag with the lip glued on"), along, span, as_one)
    sagged = sag_of(at("sag"), along, span, together)
    tested = load_along(at("load of the cabinet standard along it"), TEST_LOAD, depth)
    return ShelfSag(
        place=place,
        span=named(at("span"), span),
        load=along,
        bending=own,
        lip_bending=lip_bending,
        plain=plain,
        sag=sagged,
        glued=glued,
        limit=limit,
        left=named(at("sag left"), limit - sagged),
        carries=named(
            at("load that reaches the limit"),
            limit * (384 * together) / (5 * square(square(span))) / GRAVITY * 1000,
            "kg/m",
        ),
        longest=longest_span(at("longest span"), along, together, sag),
        on_test=sag_of(at("sag by the cabinet standard"), tested, span, together),
        test_limit=named(
            at("sag limit of the cabinet standard"), smallest(TEST_SAG * span / 1000, TEST_MOST)
        ),
    )


def _as_one(
    place: str, own: Figure, lip_bending: Figure, pull: Figure, thickness: Figure, lip: Lip
) -> Figure:
    """E I of shelf and lip glued together, the lip under it, about the middle they then share.

    Source: transformed section: each bends about its own middle, and is moved to the common
    one by E A d^2 (statics). `pull` is E A of the shelf.
    """
    lip_pull = lip.stiffness * lip.thickness * lip.depth
    apart = lip.depth / 2 + thickness / 2
    moved = named(
        join(place, "bending stiffness from being glued"),
        pull * lip_pull / (pull + lip_pull) * square(apart),
        "N mm2",
    )
    return named(
        join(place, "bending stiffness with the lip glued on"), own + lip_bending + moved, "N mm2"
    )


def ways_out(
    found: ShelfSag, *, depth: Figure, stiffness: Figure, strip: Figure, strip_stiffness: Figure
) -> WaysOut:
    """What a shelf that sags too far could be given.

    Args:
        found: the shelf as it is.
        depth: of the shelf from front to back, mm.
        stiffness: of its board, N/mm2.
        strip: thickness of the lip that is offered, mm.
        strip_stiffness: of that lip's wood, N/mm2.

    Source: the same sum, turned round; half the span sags a sixteenth (arithmetic).
    """

    def at(quantity: str) -> str:
        return join(found.place, quantity)

    needed = named(
        at("bending stiffness needed"),
        5 * found.load * square(square(found.span)) / (384 * found.limit),
        "N mm2",
    )
    lacking = named(at("bending stiffness lacking"), needed - found.bending, "N mm2")
    return WaysOut(
        lip=named(at("least depth of a lip"), cube_root(lacking * 12 / (strip_stiffness * strip))),
        lip_thickness=named(at("thickness of that lip"), strip),
        divided=sag_of(
            at("sag with a divider"),
            found.load,
            named(at("span with a divider"), found.span / 2),
            found.bending,
        ),
        thickness=named(at("least thickness"), cube_root(needed * 12 / (stiffness * depth))),
    )
