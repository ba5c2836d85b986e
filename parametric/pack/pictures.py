"""The client's pictures: which are taken, from where, and how they are made on this machine."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from types import MappingProxyType

import numpy as np

from parametric.catalog.finishes import ClearTimber, Glass, Metal, Paint
from parametric.catalog.room import (
    FACING,
    HALF_VIEW,
    PULL,
    ROOM,
    SOFA,
    HourName,
    Stance,
    Triple,
)
from parametric.model import Assembly, Group, State, displaced
from parametric.problems import Problem
from parametric.writers.client_page import Niche, PreviewPage
from parametric.writers.developed import png
from parametric.writers.page_words import WORDS
from parametric.writers.picture_room import BESIDE_NICHE
from parametric.writers.picture_scene import Away, Camera, PictureScene, Shot
from parametric.writers.picture_words import GET_EXTRA, PICTURE_WORDS
from parametric.writers.raster import rastered

FOLDER = "client/pictures"
FACING_SHUT = f"{FOLDER}/1-facing-shut-day.png"
HALF_OPEN = f"{FOLDER}/2-half-open-day.png"
AT_PULL = f"{FOLDER}/3-at-the-pull-day.png"
EVENING = f"{FOLDER}/4-evening.png"
CAPTIONS = f"{FOLDER}/captions.txt"

SIZE = (1600, 1200)
_DOORS = 0.665
"""How much of a picture's height the doors take: between 62 and 72 %."""
_FLOOR = 0.21
"""How far up from the foot of a picture the floor meets the doors: 18 to 24 %."""
_MARGIN = 0.30
"""Wall beside whatever is pictured, m."""
_RAKING: Triple = (-4.4, 1.5, 1.9)
"""The key light where it is to rake along a face."""
_AT_PULL = (0.42, 1.95, 0.75)
"""For the picture at the pull: its middle beside the pull, how far off, how high; m."""
_OPENED = 0.3
"""How far before cabinets the picture is framed, m: their doors and drawers come nearer."""
_NEAR = 1.0
"""What is nearer than the wall's face by more than this is of the room before it, mm."""
_IN_THE_MIDDLE = 50.0
"""mm: a way whose middle is no farther aside is seen from either side alike."""
_TO_SCENE = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, -1.0, 0.0]])
"""From the world, Z up and Y away, to the scene, Y up and Z nearer."""


def pictures(
    page: PreviewPage,
    assembly: Assembly,
    glb: bytes,
    *,
    fine: bool = False,
    size: tuple[int, int] = SIZE,
    progress: Callable[[str], None],
) -> dict[str, bytes]:
    """The set of pictures by path in the pack, and the sheet of their captions.

    Args:
        page: what the client's page shows of the job.
        assembly: its parts, with the states they may stand in.
        glb: its model.
        fine: many more rays a pixel; only where light is traced.
        size: width and height, pixels.
        progress: told each picture as it begins.
    """
    scene = picture_scene(page, assembly)
    quick = cannot_trace() is not None

    def begins(shot: Shot) -> None:
        how = "drawing quickly" if quick else "tracing"
        progress(f"{how}: {shot.caption[0].lower()}{shot.caption[1:]}")

    if quick:
        taken = rastered(scene, glb, size=size, progress=begins)
    else:
        from parametric.writers.path_traced import traced

        taken = traced(scene, glb, size=size, fine=fine, progress=begins)
    how = PICTURE_WORDS["quick" if quick else "traced"]
    files = {
        f"{FOLDER}/{shot.name}.png": png(
            levels, {"Title": page.job, "Description": f"{shot.caption}. {how}"}
        )
        for shot, levels in taken
    }
    return files | {CAPTIONS: _captions_sheet(page, scene, how)}


def captions(page: PreviewPage, assembly: Assembly) -> dict[str, str]:
    """What each picture shows, in the client's words, by its path in the pack."""
    return {
        f"{FOLDER}/{shot.name}.png": shot.caption for shot in picture_scene(page, assembly).shots
    }


def cannot_trace() -> str | None:
    """Why light cannot be traced on this machine; None when it can."""
    try:
        import mitsuba
        import pyoidn

        mitsuba.set_variant("scalar_rgb")
        assert pyoidn.denoise
    except Exception as error:
        # a library may be missing, or something of the machine that it loads
        return f"{type(error).__name__}: {error}"
    return None


def drawn_quickly(*, fine: bool) -> tuple[Problem, ...]:
    """A note where pictures are quick ones because the extra is not here."""
    if (why := cannot_trace()) is None:
        return ()
    asked = " `--fine` makes no difference to these." if fine else ""
    return (
        Problem(
            code="pictures_drawn_quickly",
            level="note",
            message=f"The client's pictures are quick ones: their light is not traced.{asked}",
            about="pictures",
            found=why,
            allowed="the extra [render], which traces light",
            fix=f"For traced pictures: {GET_EXTRA}",
        ),
    )


def _captions_sheet(page: PreviewPage, scene: PictureScene, how: str) -> bytes:
    """The captions as a text to send along, in the order of the pictures."""
    of = (page.job, page.revision, page.mark) if page.revision else (page.job, page.mark)
    head = PICTURE_WORDS["said of" if page.revision else "said of bare"].format(*of)
    palette = page.palette
    finish = [
        _named(
            "in paint" if isinstance(scene.wood, Paint) else "in timber",
            scene.wood,
            palette.quoted_wood,
        )
    ]
    if scene.glass is not None:
        finish.append(_named("in glass", scene.glass, palette.quoted_glass))
    if scene.metal is not None:
        finish.append(_named("in metal", scene.metal, palette.quoted_metal))
    lines = [head, f"{PICTURE_WORDS['finish'].format(', '.join(finish))}.", ""]
    if page.palette.named_wood:
        lines[-1:] = [WORDS["named wood"].format(page.palette.named_wood), ""]
    lines += [f"{shot.name}.png  {shot.caption}." for shot in scene.shots]
    lines += ["", how]
    if how != PICTURE_WORDS["quick"]:
        alone = "imagined alone" if len(page.leaves) == 1 else "imagined"
        lines.append(PICTURE_WORDS["imagined cases" if page.cases else alone])
    lines += [WORDS["sample"], ""]
    return "\n".join(lines).encode()


def _named(words: str, what: Paint | ClearTimber | Glass | Metal, quoted: tuple[str, ...]) -> str:
    """What is pictured by its name, and whether it is still to be agreed."""
    name = WORDS[words].format(what.name)
    return name if quoted == (what.key,) else WORDS["to agree"].format(name)


def picture_scene(page: PreviewPage, assembly: Assembly) -> PictureScene:
    """What is pictured of a job.

    Args:
        page: what the client's page shows of it.
        assembly: its parts, with the states they may stand in.
    """
    if page.cases:
        left, right = (float(at) / 1000 for at in page.way)
    else:
        left = min(leaf.x for leaf in page.leaves) / 1000
        right = max(leaf.x + leaf.width for leaf in page.leaves) / 1000
    niche = page.niche
    palette = page.palette
    ways = [(way.opening, way.floor, way.skirting_clear) for way in page.doorways] or [
        (page.opening, page.floor, page.scenery.skirting_clear)
    ]
    return PictureScene(
        middle=(left + right) / 2,
        side=right,
        wall=page.wall / 1000,
        openings=tuple(tuple((x / 1000, y / 1000) for x, y in own) for own, _, _ in ways),
        floor=tuple((x / 1000, y / 1000) for _, own, _ in ways for x, y in own),
        skirting=(page.scenery.skirting[0] / 1000, page.scenery.skirting[1] / 1000),
        clear=tuple((left / 1000, right / 1000) for _, _, (left, right) in ways),
        brackets=tuple((x / 1000, -y / 1000, z / 1000) for x, y, z in page.scenery.brackets),
        wood=palette.wood_shown,
        glass=palette.glass_shown,
        metal=palette.metal_shown,
        glued=MappingProxyType({mark: float(wide) for mark, wide in page.glued.items()}),
        shots=_shots(page, assembly, (left, right)),
        trims=tuple(
            (tuple((x / 1000, y / 1000) for x, y in outline), -near / 1000, -far / 1000)
            for outline, near, far in page.scenery.trims
        ),
        niche=() if niche is None else tuple(_walls(niche)),
        face=0.0 if niche is None else -niche.face / 1000,
    )


def _walls(niche: Niche) -> Iterator[tuple[Triple, ...]]:
    """What is pictured of the room about cabinets: no floor, nothing nearer than the wall that they
    are in, which daylight comes past; that wall goes on over the room's ceiling, and aside.
    """
    kept = [
        surface.corners
        for surface in niche.surfaces
        if surface.kind != "floor" and min(y for _, y, _ in surface.corners) > niche.face - _NEAR
    ]
    yield from (tuple((x / 1000, z / 1000, -y / 1000) for x, y, z in one) for one in kept)
    head = [(x / 1000, z / 1000) for x, z in niche.head]
    high = max((z for _, z in head), default=ROOM.high) + ROOM.high / 2
    left, right = (pick(x for one in kept for x, _, _ in one) / 1000 for pick in (min, max))
    outlines: list[tuple[tuple[float, float], ...]] = [
        ((near, -1.0), (far, -1.0), (far, high), (near, high))
        for near, far in ((left - BESIDE_NICHE, left), (right, right + BESIDE_NICHE))
    ]
    if head:
        outlines.append((*head, (right, high), (left, high)))
    for outline in outlines:
        yield tuple((x, z, -niche.face / 1000) for x, z in outline)


def _shots(page: PreviewPage, assembly: Assembly, doors: tuple[float, float]) -> tuple[Shot, ...]:
    state = _half_open_state(assembly, together=bool(page.doorways) or page.cases)
    half_open = _moved(assembly, state)
    stance, words = _where_they_sit(page, state)
    facing, seated = (_whole(page, doors, own) for own in (FACING, stance))
    alone = "facing alone" if len(page.leaves) == 1 else "facing"
    found = [_shot(FACING_SHUT, "facing cases" if page.cases else alone, facing, "day")]
    if page.leaves:
        opened = "half open cases" if page.cases else _half_open(page, half_open)
        found.append(_shot(HALF_OPEN, opened, seated, "day", half_open, where=words))
    held = next((leaf for leaf in page.leaves if leaf.pull is not None), None)
    if held is not None and held.pull is not None:
        beside, far, centre = _AT_PULL
        inwards = beside if held.pull < held.width / 2 else -beside
        camera = Camera(
            pivot=((held.x + held.pull) / 1000 + inwards, -held.front / 1000),
            turn=PULL.turn,
            far=far,
            height=PULL.height,
            centre=centre,
            half=math.tan(HALF_VIEW),
        )
        found.append(_shot(AT_PULL, "pull", camera, "day", key=_RAKING))
    evening = "evening cases" if page.cases else "evening"
    found.append(_shot(EVENING, evening, facing, "evening", half_open))
    return tuple(found)


def _half_open(page: PreviewPage, moved: Mapping[str, Away]) -> str:
    """Which words say how many of the doors stand half open."""
    if len(page.leaves) == 1:
        return "half open alone"
    count = sum(moved.get(leaf.name, Away()) != Away() for leaf in page.leaves)
    return "half open" if count == 1 else "half open all"


def _where_they_sit(page: PreviewPage, state: State | None) -> tuple[Stance, str]:
    """The first of the client's own places, in their words; a sofa where they name none.

    A sofa stands on the side on which half-open doors leave the way clear.
    """
    if not page.places:
        turn = -SOFA.turn if _clear_on_the_right(page, state) else SOFA.turn
        return Stance(turn=turn, height=SOFA.height), WORDS["sofa"]
    own = page.places[0]
    turn = {"left": SOFA.turn, "middle": 0.0, "right": -SOFA.turn}[own.side]
    height = SOFA.height if own.seated else FACING.height
    return Stance(turn=turn, height=height), WORDS["own place"].format(own.name)


def _clear_on_the_right(page: PreviewPage, state: State | None) -> bool:
    """Whether the middle of the widest stretch that leaves leave clear is right of the way's."""
    opened = {} if state is None else state.open
    edge, end = map(float, page.way)
    middle = (edge + end) / 2
    best = (edge, edge)
    covers = sorted(leaf.across(opened.get(leaf.name, 0.0)) for leaf in page.leaves)
    for left, right in (*covers, (end, end)):
        if min(left, end) - edge > best[1] - best[0]:
            best = (edge, min(left, end))
        edge = max(edge, right)
    return sum(best) / 2 > middle + _IN_THE_MIDDLE


def _shot(
    path: str,
    words: str,
    camera: Camera,
    hour: HourName,
    moved: Mapping[str, Away] = MappingProxyType({}),
    *,
    key: Triple | None = None,
    where: str = "",
) -> Shot:
    return Shot(
        name=path.removeprefix(f"{FOLDER}/").removesuffix(".png"),
        caption=PICTURE_WORDS[words].format(where),
        camera=camera,
        hour=hour,
        moved=moved,
        key=key,
    )


def _whole(page: PreviewPage, doors: tuple[float, float], stance: Stance) -> Camera:
    """All of the doors, their share of the picture's height as it should be where they are widest."""
    if page.cases:
        head, foot, front = float(page.top) / 1000, 0.0, _OPENED
    else:
        head = max(leaf.foot + leaf.height for leaf in page.leaves) / 1000
        foot = min(leaf.foot for leaf in page.leaves) / 1000
        front = max(-leaf.front for leaf in page.leaves) / 1000
    half = math.tan(HALF_VIEW)
    high = (head - foot) / _DOORS
    reach = (doors[1] - doors[0]) / 2 + _MARGIN
    wide = 2 * reach * SIZE[1] / SIZE[0]
    far = max(high, wide) / (2 * half)
    return Camera(
        pivot=((doors[0] + doors[1]) / 2, front),
        turn=stance.turn,
        far=far,
        height=stance.height,
        centre=2 * far * half * (0.5 - _FLOOR),
        half=half,
    )


def _half_open_state(assembly: Assembly, *, together: bool) -> State | None:
    """The job's own half-open state; half of the first that opens anything where it has none.

    Of several doors `together`, half of the last, which opens all of them.
    """
    for state in assembly.states:
        if state.name.startswith("half open"):
            return state
    for state in assembly.states[::-1] if together else assembly.states:
        if any(state.open.values()):
            half = {leaf: share / 2 for leaf, share in state.open.items()}
            return State(name=f"half of {state.name}", open=MappingProxyType(half))
    return None


def _moved(assembly: Assembly, state: State | None) -> Mapping[str, Away]:
    """How every group stands from where it is shut, in one of the job's states."""
    if state is None:
        return MappingProxyType({})
    return MappingProxyType({group.name: _away(group, state) for group in assembly.groups})


def _away(group: Group, state: State) -> Away:
    shut, there = group.placement, displaced(group, state)
    if (there.x, there.y) == (shut.x, shut.y):
        x, y, z = (
            (float(a) - float(b)) / 1000 for a, b in zip(there.origin, shut.origin, strict=True)
        )
        return Away(shift=(x, z, -y))
    # the frame as it stands, times the frame as it was the other way round
    axes, before = (np.array([p.x, p.y, p.z], dtype=float).T for p in (there, shut))
    turn = axes @ before.T
    shift = np.array(there.origin, dtype=float) - turn @ np.array(shut.origin, dtype=float)
    turn = _TO_SCENE @ turn @ _TO_SCENE.T
    x, y, z = (_TO_SCENE @ shift / 1000).tolist()
    first, second, third = ((float(a), float(b), float(c)) for a, b, c in turn)
    return Away(shift=(x, y, z), turn=(first, second, third))
