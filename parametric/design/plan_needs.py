"""What a cabinet that is no rectangle from above asks of its block, and what it cannot have."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.cases.cabinet import CabinetSpec
from parametric.design.answers import stop
from parametric.figures import exceeds
from parametric.problems import Problem

_DEPTHS = ("left depth", "right depth")
_NOT_WITH_A_PLAN = (
    ("face frame", "a frame of straight stiles and rails stands before it"),
    ("kick", "it stands on a plinth: leave `kick` out"),
    ("stretchers", "it has a top"),
    ("lid", "it has a top"),
    ("counter", "a counter over it is the run's"),
    ("cut out", "nothing is cut out over it"),
    ("top filler", "what closes it to the ceiling follows its front"),
    ("left to right", "it is one bay"),
    ("back", "its backs are of its own board, which its shelves lie on"),
    ("stands on", "it stands on a plinth or hangs on the wall"),
    ("from left", "it stands in the corner"),
)
"""Keys that a cabinet with a plan does not take, and why."""


def plan_needs(spec: CabinetSpec) -> list[Problem]:
    """Everything of that."""
    return list(_needs(spec))


def _needs(spec: CabinetSpec) -> Iterator[Problem]:
    if spec.plan is None:
        for key in ("right width", *_DEPTHS):
            if _written(spec, key):
                yield _told(
                    spec,
                    "contradicts",
                    f'{spec.heading} has a "{key}", and no `plan` in which it is another than '
                    "the other.",
                    key,
                    "`plan`: diagonal corner, inside corner, angled end",
                    "Write its `plan`, or take it out.",
                )
        return
    yield from _sizes(spec)
    for key, why in _NOT_WITH_A_PLAN:
        if _written(spec, key) and not (key == "from left" and spec.plan == "angled end"):
            yield _not_yet(spec, key, f'takes no "{key}": {why}', "nothing there")
    if spec.kind == "face frame":
        yield _not_yet(spec, "kind", "takes no face frame", "frameless")
    if exceeds(spec.dado, 0.0):
        yield _not_yet(spec, "dado", "has nothing let into its sides", "`dado: 0`")
    if spec.top == "follows rake":
        yield _not_yet(spec, "top", "has a level top", "level")
    if spec.origin("corners") != "assumed" and spec.corners != "screw":
        yield _not_yet(spec, "corners", "is screwed through its sides and its backs", "screw")
    for kind in ("drawer", "flap"):
        if kind in spec.kinds():
            yield _not_yet(spec, "top to bottom", f"has no {kind}s", "doors, or open")
    for bay in spec.bays:
        for line in bay.inside or ():
            if line.space != "shelf space":
                yield stop(
                    "not_built_yet",
                    f"{spec.heading} is a {spec.plan}, and holds shelves alone in this version.",
                    line.here,
                    about=spec.heading,
                    found=line.space,
                    allowed="shelf space",
                    fix="Write `shelf space`, or `shelves` beside its door.",
                )


def _sizes(spec: CabinetSpec) -> Iterator[Problem]:
    """Which of its depths and widths are another than on the left."""
    depths = [key for key in _DEPTHS if _written(spec, key)]
    if spec.plan != "angled end":
        if "left depth" in depths:
            yield _told(
                spec,
                "contradicts",
                f"{spec.heading} stands in a corner: `depth` is of its left side already.",
                "left depth",
                "`depth` and `right depth`",
                "Write `depth`.",
            )
        return
    if _written(spec, "right width"):
        yield _told(
            spec,
            "contradicts",
            f"{spec.heading} stands against one wall, and has one width.",
            "right width",
            "`width`",
            "Take it out.",
        )
    if len(depths) != 1:
        yield _told(
            spec,
            "contradicts",
            f"{spec.heading} says {'both' if depths else 'none'} of its depths at the ends; `depth` "
            "is the deeper one, where it does not run back.",
            depths[0] if depths else "plan",
            "`left depth` or `right depth`",
            "Write the depth of the side that it runs back to.",
        )
        return
    small = spec.left_depth if depths == ["left depth"] else spec.right_depth
    if small is not None and not exceeds(spec.depth, small):
        yield _told(
            spec,
            "contradicts",
            f"{spec.heading} runs back to a side that is no less deep than the other.",
            depths[0],
            "less than `depth`",
            "Write the smaller depth there.",
        )


def _written(spec: CabinetSpec, key: str) -> bool:
    return getattr(spec, key.replace(" ", "_")) is not None


def _not_yet(spec: CabinetSpec, key: str, said: str, allowed: str) -> Problem:
    return _told(
        spec,
        "not_built_yet",
        f"{spec.heading} is a {spec.plan}; in this version one of those {said}.",
        key,
        allowed,
        "Change it, or make it a cabinet without a `plan`.",
    )


def _told(spec: CabinetSpec, code: str, message: str, key: str, allowed: str, fix: str) -> Problem:
    return stop(
        code, message, spec.line(key), about=spec.heading, found=key, allowed=allowed, fix=fix
    )
