"""What leaves that slide hang from and run in: tracks, brackets and their screws, hangers, guides."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import Figure
from parametric.hardware.track import Track
from parametric.resolve.door import Door, Resolved
from parametric.resolve.leaf import Leaf
from parametric.trade.hardware_item import DESIGN, SUPPLIER, HardwareItem, counted, whole
from parametric.trade.loads import LeafLoad
from parametric.trade.printed import Printed, weight, weight_limit


def hardware_for_tracks(
    resolved: Resolved, loads: tuple[LeafLoad, ...], said: Printed
) -> Iterator[HardwareItem]:
    """All of it for one door; nothing where no leaf slides."""
    door = resolved.door
    track = door.track
    shares = [load.per_hanger for load in loads if load.per_hanger is not None]
    if track is None or not shares:
        return
    tracks = counted("tracks", whole(len(door.hanging.tracks)))
    heaviest = max(shares, key=float)
    rating = (
        f"{weight_limit(track.carries, said.unit)} each as written, and carries "
        f"{weight(heaviest, said.unit)}"
        if track.carries is not None
        else f"{weight(heaviest, said.unit)} each or more, with the margin its maker asks"
    )
    maker = track.written.maker_mark or ""
    lengths: dict[float, list[Figure]] = {}
    for line in door.hanging.tracks:
        lengths.setdefault(round(float(line.length), 6), []).append(line.length)
    for index, own in enumerate(lengths.values()):
        yield HardwareItem(
            what="track",
            number=tracks if len(lengths) == 1 else counted(f"tracks {index + 1}", whole(len(own))),
            unit="off",
            size=f"{said.wood(own[0])} long{', ' + maker if maker else ''}",
            length=own[0],
            known_by=DESIGN,
            asked=_track_places(door, track, said) if door.hanging.on_wall else "",
        )
    brackets = counted("brackets", tracks * track.brackets)
    yield HardwareItem(
        what="track bracket",
        number=brackets,
        unit="off",
        size=f"{int(track.brackets)} a track, {said.wood(track.written.brackets_every)} apart "
        "at most",
        length=None,
        known_by=SUPPLIER,
        asked="the track's own; its thickness goes on to the screw",
    )
    yield _screw(door, track, brackets, said)
    thick: dict[tuple[float, float], list[tuple[Leaf, Figure]]] = {}
    for leaf, load in zip(door.leaves, loads, strict=True):
        if load.hangers is not None:
            each = float(leaf.thickness), float(load.hangers)
            thick.setdefault(each, []).append((leaf, load.hangers))
    for lot in thick.values():
        first, hangers = lot[0]
        yield HardwareItem(
            what="hanger",
            number=counted(
                "hangers" if len(thick) == 1 else f"hangers for {first.name}",
                whole(len(lot)) * hangers,
            ),
            unit="off",
            size=f"{int(hangers)} a leaf"
            if first.hung.swing is None
            else "one to a pair of leaves",
            length=None,
            known_by=SUPPLIER,
            asked=f"rated {rating}; for a leaf "
            f"{said.wood(first.thickness)} thick; with the screws its maker sends",
        )
    yield HardwareItem(
        what="track stop",
        number=counted("track stops", 2 * tracks),
        unit="off",
        size="one at each end of a track",
        length=None,
        known_by=SUPPLIER,
        asked="the track's own; so that no leaf leaves it",
    )
    yield from _guides(door, said)


def _guides(door: Door, said: Printed) -> Iterator[HardwareItem]:
    """One line for every size of groove."""
    overlap = door.hanging.overlap
    lots: dict[tuple[float, float], list[Leaf]] = {}
    for leaf in door.leaves:
        if leaf.guide is not None:
            size = float(leaf.guide.width), float(leaf.guide.depth)
            lots.setdefault(size, []).append(leaf)
    for leaves in lots.values():
        groove = leaves[0].guide
        assert groove is not None
        where = (
            "where it stands both shut and open"
            if overlap is None
            else "in the middle of the overlap"
        )
        yield HardwareItem(
            what="floor guide",
            number=counted(
                "floor guides" if len(lots) == 1 else f"floor guides for {leaves[0].name}",
                whole(len(leaves)),
            ),
            unit="off",
            size=f"one under each leaf, {where}",
            length=None,
            known_by=SUPPLIER,
            asked=f"runs in a groove {said.fine(groove.width)} wide × {said.fine(groove.depth)} "
            "deep"
            + ("" if overlap is None else f"; no longer than the overlap of {said.wood(overlap)}"),
        )


def _track_places(door: Door, track: Track, said: Printed) -> str:
    """Where the tracks on a wall stand: the first from the wall, the others from that."""
    first = said.wood(door.hanging.tracks[0].plane)
    apart = track.written.spacing
    if len(door.hanging.tracks) == 1 or apart is None:
        return f"middle {first} off the wall"
    return f"outer middle {first} off the wall, tracks {said.wood(apart)} apart"


def _screw(door: Door, track: Track, brackets: Figure, said: Printed) -> HardwareItem:
    depth, fixing = track.fixing_depth, door.opening.fixing
    into = {
        "solid timber": "into solid timber",
        "studs": "into the middle of a stud, or into a header screwed to every stud",
        "masonry": "with the anchor its maker names for that masonry and that pull",
    }.get(fixing, "only once it is known what is behind")
    if depth is None:
        size, known = "length not known: the board over the fixing was not measured", SUPPLIER
    else:
        size, known = (
            f"at least {said.up(depth)} and the bracket's thickness",
            DESIGN if fixing in ("solid timber", "studs") else SUPPLIER,
        )
    return HardwareItem(
        what="bracket screw",
        number=counted("bracket screws", brackets),
        unit="off",
        size=size,
        length=depth,
        known_by=known,
        asked=f"{into}; one a bracket at least, diameter and head as the bracket's maker says",
    )
