"""Steps on site for the flaps of a case: hung, propped, held, tried; and what they can do to people."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from parametric.hardware.gas_strut import GasStruts
from parametric.hardware.stay import NoPlace
from parametric.resolve.leaf import Leaf
from parametric.resolve.leaf_stays import LeafStays
from parametric.trade.cautions import Cautions
from parametric.trade.printed import Printed, force
from parametric.trade.site_words import Said, leaf_names

_FLAPS: Cautions = (
    "A flap that nothing holds yet falls shut, or open, on a hand or a head: prop it, or let a "
    "second person hold it, until its stays are on.",
)
_STRUTS: Cautions = (
    "A gas strut pushes with all its force as long as it is in: never take one off a flap that is "
    "not propped open, never open one, heat it or grip its rod.",
)
"""Source: common practice, no source; gas struts, their makers' usual warnings, from memory."""


def flap_cautions(leaves: Iterable[Leaf]) -> Cautions:
    """What to mind of flaps as they are hung, and of the struts that push any of them; else nothing."""
    flaps = [leaf for leaf in leaves if leaf.hung.flap is not None]
    pushed = any(leaf.stays and isinstance(leaf.stays.sized, GasStruts) for leaf in flaps)
    return (*(_FLAPS if flaps else ()), *(_STRUTS if pushed else ()))


def fit_flaps(leaves: Sequence[Leaf], gap: str, said: Printed) -> list[Said]:
    """Every flap of a case, those that are hung alike together.

    Args:
        leaves: of the case; those that are no flaps are left out.
        gap: between fronts, as it is printed.
        said: how the job's lengths are said.

    Source: common practice, no source.
    """
    lots: dict[tuple[Said, ...], list[str]] = {}
    for leaf in leaves:
        if leaf.hung.flap is not None:
            lots.setdefault(tuple(_of(leaf, gap, said)), []).append(leaf.name)
    return [
        (f"{_begun(leaf_names(names))}: {does}", look)
        for steps, names in lots.items()
        for does, look in steps
    ]


def _begun(words: str) -> str:
    return f"{words[0].upper()}{words[1:]}"


def _of(leaf: Leaf, gap: str, said: Printed) -> Iterator[Said]:
    flap = leaf.hung.flap
    assert flap is not None, "only flaps are asked for"
    board = "underside of the board over it" if flap.side == "top" else "board under it"
    middles = ", ".join(said.fine(place.centre) for place in leaf.hinges[0].hinges.places)
    held = (
        "shut against packers" if flap.side == "top" else "level on a box or a second pair of hands"
    )
    yield (
        f"plates to the bored holes in the {board}; cups pressed home and square, {middles} from "
        f"the flap's left end. Hold it {held}, {gap} packed at its hinge edge, and hook every arm "
        "on.",
        f"Opens and shuts without a scrape; {gap} at every gap, faces in one plane. Held by hand "
        "all the while.",
    )
    if leaf.stays is None or isinstance(leaf.stays.sized, NoPlace):
        return
    yield _stays(leaf.stays, said)


def _stays(stays: LeafStays, said: Printed) -> Said:
    """Put on with the flap open, which is where both kinds are at their length."""
    sized = stays.sized
    assert not isinstance(sized, NoPlace), "only stays that have a place are put on"
    place, one = sized.place, stays.sides[0]
    on_case = (
        f"{said.fine(one.case_up)} up from the case's foot and {said.fine(place.behind)} behind "
        "its front edges"
    )
    on_flap = f"{said.fine(place.along)} from its hinge edge"
    both = "both sides alike" if len(stays.sides) > 1 else f"on the {one.side} alone"
    angle = f"{float(sized.written.opens):g} deg"
    if isinstance(sized, GasStruts):
        over = "" if sized.takes_over is None else f" past {float(sized.takes_over):.0f} deg"
        return (
            f"propped open at {angle}, the struts last, pushed out, cylinder upwards when shut: on "
            f"the case {on_case}, on the flap {on_flap}; {both}.",
            f"Rises by itself{over} and stays there; {force(sized.to_shut, said.unit)} at its free "
            "edge brings it down, and it shuts without a slam. A flap that sinks has struts too "
            "weak: prop it and change them.",
        )
    return (
        f"propped open at {angle}, the stays: on the case {on_case}, on the flap {on_flap}; "
        f"{both}.",
        "Comes to rest level, both stays taut at once, and the flap flat; press on its free edge, "
        "and nothing gives.",
    )
