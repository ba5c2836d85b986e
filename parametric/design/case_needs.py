"""What a cabinet and a run ask of the rest of the file."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from parametric.cases.cabinet import CabinetSpec
from parametric.cases.hung_fronts import hung_fronts
from parametric.cases.run import RunSpec, run_faults
from parametric.catalog.boards import usual_thickness
from parametric.design.answers import stop
from parametric.design.merging import Layers
from parametric.design.plan_needs import plan_needs
from parametric.design.settings import BoardSpec
from parametric.design.survey import SurveySpec
from parametric.figures import Figure
from parametric.hangings.cabinet import CabinetSpec as FrontsSpec
from parametric.names import nearest
from parametric.problems import Problem
from parametric.written import Block

Blocks = Mapping[tuple[str, str], Block]


def fronts_as_hung(spec: CabinetSpec, blocks: Blocks, layers: Layers) -> FrontsSpec:
    """A cabinet's fronts, as far as what they ask of other blocks goes."""
    for name in (str(spec.board), ""):
        board = blocks.get(("board", name))
        if isinstance(board, BoardSpec) and board.thickness is not None:
            edge = board.thickness
            break
    else:
        edge = usual_thickness(layers.design.unit)
    return hung_fronts(spec, edge=edge, partition=edge, travel=Figure(1.0))


def cabinet_needs(spec: CabinetSpec, blocks: Blocks, layers: Layers) -> list[Problem]:
    """Lists that contradict each other, what it stands on, a drawer box for its drawers."""
    found: list[Problem] = []

    def told(code: str, message: str, key: str, allowed: str, fix: str) -> None:
        found.append(
            stop(
                code,
                message,
                spec.line(key),
                about=spec.heading,
                found=key,
                allowed=allowed,
                fix=fix,
            )
        )

    lists = [key for key in ("top to bottom", "inside", "shelves") if _written(spec, key)]
    if spec.left_to_right is not None and lists:
        told(
            "two_lists",
            f'{spec.heading} has bays; "{lists[0]}" is said of each bay, not beside them.',
            lists[0],
            "left to right alone",
            f"Move `{lists[0]}` into the bays.",
        )
    if spec.top == "follows rake" and _under_a_cornice(spec, blocks):
        told(
            "contradicts",
            f"{spec.heading} has a top that slopes, and its run a cornice, which is level.",
            "top",
            "one of them",
            "Take `cornice` out of the run: `top filler` closes it along the slope.",
        )
    on = None if spec.stands_on is None else str(spec.stands_on)
    cabinets = [name for name in layers.names("cabinet") if name]
    if on is not None and on != "floor" and on not in cabinets:
        near = nearest(on, cabinets)
        told(
            "unknown_name",
            f'{spec.heading} stands on "{on}", but there is no "cabinet {on}".'
            + (f' Did you mean "{near}"?' if near else ""),
            "stands on",
            ", ".join((*cabinets, "floor")),
            f"Write `stands on: {near}`." if near else "Write the name of a cabinet, or floor.",
        )
    elif on is not None and on != "floor" and _in_a_ring(on, blocks):
        told(
            "stands_on_itself",
            f"{spec.heading} stands on what stands on it.",
            "stands on",
            "a cabinet that stands on the floor",
            "Let one of them stand on the floor.",
        )
    if spec.has_drawers and _no_drawer(spec, blocks, layers):
        told(
            "missing_block",
            f'{spec.heading} has drawers, but there is no "drawer" block to say what they are.',
            "kind",
            "a block `drawer:`",
            "Write `drawer:` at the margin, with its sizes from the slides' data sheet.",
        )
    for key, other, said in _TOGETHER:
        if not _written(spec, key) or _written(spec, other):
            continue
        if key != "cut out" or not _under_a_counter(spec, blocks):
            told("contradicts", f"{spec.heading}: {said}.", key, other, f"Write `{other}: ` too.")
    if spec.lid is not None and spec.counter is not None:
        told(
            "contradicts",
            f"{spec.heading} has a lid and a counter; only one can lie on it.",
            "lid",
            "one of them",
            "Take one of them out.",
        )
    equips = any(line.space == "equipment" for bay in spec.bays for line in bay.inside or ())
    for key in ("air", "cable way"):
        if _written(spec, key) and not equips:
            told(
                "contradicts",
                f'{spec.heading} has no space for equipment that "{key}" could serve.',
                key,
                "`equipment` in the list `inside`",
                "Write `inside: [equipment: rest]`, or take it out.",
            )
    found += _shut_in(spec)
    found += plan_needs(spec)
    if spec.corners == "glue" and float(spec.dado) == 0:
        told(
            "corners_hold_nothing",
            f"{spec.heading} is glued at its corners, with nothing let in: a butt does not hold.",
            "corners",
            "dowel, loose tenon, screw, pocket screw; or a dado",
            "Write a `dado`, or another word for its corners.",
        )
    return found


def _shut_in(spec: CabinetSpec) -> list[Problem]:
    """Drawers inside a bay with a front that never opens."""
    return [
        stop(
            "drawer_shut_in",
            f"{spec.heading} has a drawer behind a front that does not open.",
            line.here,
            about=spec.heading,
            found="drawer",
            allowed="drawers behind doors, or where a bay is open",
            fix="Write a door in place of the fixed front, or take the drawer out.",
        )
        for bay in spec.bays
        if any(front.kind == "fixed front" for front in spec.fronts_of(bay))
        for line in bay.inside or ()
        if line.space == "drawer"
    ][:1]


_TOGETHER = (
    ("cut out", "counter", "a cut-out is cut through a counter, and there is none"),
    ("lid", "stretchers", "a case under a lid has no top, and stretchers keep it square"),
)
"""What says nothing without something else."""


def survey_needs(spec: SurveySpec, blocks: Blocks) -> list[Problem]:
    """A wall goes on from one other, and none from itself."""
    keys = [key for key in ("right of", "left of") if _turns_from(spec, key) is not None]
    if len(keys) > 1:
        return [
            stop(
                "contradicts",
                f"{spec.heading} goes on from two walls; it can from one.",
                spec.line(keys[1]),
                about=spec.heading,
                found=", ".join(keys),
                allowed="one of them",
                fix="Take one of them out.",
            )
        ]
    seen, here = {spec.heading}, spec
    while name := _turns_from(here, "right of") or _turns_from(here, "left of"):
        before = blocks.get(("survey", name))
        if not isinstance(before, SurveySpec):
            return []
        if before.heading in seen:
            return [
                stop(
                    "turns_from_itself",
                    f"{spec.heading} goes on from a wall that goes on from it.",
                    spec.line(keys[0]),
                    about=spec.heading,
                    found=name,
                    allowed="a wall that stands by itself",
                    fix="Let the first of them say nothing of another.",
                )
            ]
        seen.add(before.heading)
        here = before
    return []


def _turns_from(spec: SurveySpec, key: str) -> str | None:
    name = getattr(spec, key.replace(" ", "_"))
    return None if name is None else str(name)


def called_by_a_run(spec: CabinetSpec, blocks: Blocks) -> bool:
    """Whether a run says where the cabinet stands."""
    name = spec.heading.removeprefix("cabinet").strip()
    return any(
        line.called is not None and str(line.called) == name
        for block in blocks.values()
        if isinstance(block, RunSpec)
        for line in block.left_to_right
    )


def run_needs(spec: RunSpec) -> list[Problem]:
    """Cabinets that are there; a cornice or a filler over them, not both."""
    found = list(run_faults(spec))
    if spec.levelled_by == "legs" and (float(spec.plinth) == 0 or spec.above_floor is not None):
        found.append(
            stop(
                "contradicts",
                f"{spec.heading} is levelled by legs, and does not say how high it stands on them.",
                spec.line("levelled by"),
                about=spec.heading,
                found="legs",
                allowed="`plinth: 100`, which legs stand behind",
                fix="Write `plinth: ` and its height.",
            )
        )
    if spec.cornice is not None and spec.top_filler is not None:
        found.append(
            stop(
                "contradicts",
                f"{spec.heading} has a cornice and a filler to the ceiling; only one stands there.",
                spec.line("cornice"),
                about=spec.heading,
                found="cornice",
                allowed="one of them",
                fix="Take one of them out.",
            )
        )
    return found


def _written(spec: CabinetSpec, key: str) -> bool:
    return getattr(spec, key.replace(" ", "_")) is not None


def _under_a_counter(spec: CabinetSpec, blocks: Blocks) -> bool:
    """Whether it stands in a run with a counter over it."""
    return any(run.counter is not None for run in _runs_of(spec, blocks))


def _under_a_cornice(spec: CabinetSpec, blocks: Blocks) -> bool:
    """Whether it stands in a run with a cornice."""
    return any(run.cornice is not None for run in _runs_of(spec, blocks))


def _runs_of(spec: CabinetSpec, blocks: Blocks) -> Iterator[RunSpec]:
    """The runs that it stands in."""
    for run in blocks.values():
        if isinstance(run, RunSpec) and any(
            f"cabinet {line.called}" == spec.heading for line in run.left_to_right
        ):
            yield run


def _no_drawer(spec: CabinetSpec, blocks: Blocks, layers: Layers) -> bool:
    if spec.drawer is not None:
        return False
    return ("drawer", "") not in blocks and "" not in layers.design.names("drawer")


def _in_a_ring(on: str, blocks: Blocks) -> bool:
    """Whether going down from one to what it stands on never comes to a floor."""
    seen: set[str] = set()
    while on not in seen:
        seen.add(on)
        below = blocks.get(("cabinet", on))
        if not isinstance(below, CabinetSpec) or below.stands_on is None:
            return False
        on = str(below.stands_on)
        if on == "floor":
            return False
    return True
