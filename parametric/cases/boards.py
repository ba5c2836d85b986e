"""The boards of a case: their sizes, and where each stands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from parametric.cases.back import Back
from parametric.cases.back_pieces import BackPiece
from parametric.cases.cabinet import CabinetSpec
from parametric.cases.case import CaseBay, CaseBoard, CaseBox, Lies, Role
from parametric.figures import Figure, largest, named
from parametric.names import join


class Boards:
    """One case's boards as they are worked out from its box."""

    def __init__(
        self,
        spec: CabinetSpec,
        box: CaseBox,
        back: Back | None,
        back_pieces: Sequence[BackPiece] = (),
    ) -> None:
        self.spec, self.box, self.back, self.back_pieces = spec, box, back, back_pieces
        self.behind = box.depth if back is None else back.front
        """Where shelves and partitions end: at the back's front face, mm."""

    def _board(
        self,
        word: str,
        role: Role,
        lies: Lies,
        size: tuple[float, float, float],
        at: tuple[float, float, float],
        banded: bool = False,
        shown: bool = False,
    ) -> CaseBoard:
        name = join(self.box.name, word)
        length, width, thickness = size
        x, y, z = at
        return CaseBoard(
            name=name,
            role=role,
            lies=lies,
            length=named(join(name, "length"), length),
            width=named(join(name, "width"), width),
            thickness=named(join(name, "thickness"), thickness),
            x=float(x),
            y=float(y),
            z=float(z),
            banded=banded,
            shown=shown,
        )

    def carcass(self) -> Iterator[CaseBoard]:
        """Sides, bottom, top or stretchers, kick board, back."""
        box, t = self.box, self.box.thickness
        bare = self.spec.kind == "frameless"
        ends = self.spec.finished_ends
        for side, x in (("left", 0.0), ("right", float(box.width - t))):
            size, shown = (self._up_to(x, 0.0, box.height), box.depth, t), ends in (side, "both")
            yield self._board(f"{side} side", "side", "upright", size, (x, 0.0, 0.0), bare, shown)
        low = float(box.bottom - t)
        yield self._level("bottom", "bottom", low, 0.0, box.depth, bare)
        high = float(box.top)
        if box.slope is not None:
            size = (box.slope.length(t), box.depth, t)
            yield self._board("top", "top", "sloping", size, (0.0, 0.0, high), bare)
        elif self.spec.stretchers is None:
            yield self._level("top", "top", high, 0.0, box.depth, bare)
        else:
            wide = self.spec.stretchers
            yield self._level("front stretcher", "stretcher", high, 0.0, wide, bare)
            back = float(box.depth - wide)
            yield self._level("back stretcher", "stretcher", high, back, wide)
        if box.kick_high is not None and box.kick_deep is not None:
            size = (box.clear_width, box.kick_high, t)
            at = (float(t), float(box.kick_deep), 0.0)
            yield self._board("kick board", "kick board", "facing, level", size, at)
        if self.back is not None:
            yield from (self._back(self.back, piece) for piece in self.back_pieces)

    def _up_to(self, x: float, z: float, level: Figure) -> Figure:
        """How long an upright board is: as the case is high, or to a sloping top at its longer side."""
        slope = self.box.slope
        if slope is None:
            return level
        return largest(slope.under(x), slope.under(x + float(self.box.thickness))) - z

    def _level(
        self, word: str, role: Role, z: float, y: float, width: float, banded: bool = False
    ) -> CaseBoard:
        """A board between the sides, let into them."""
        box = self.box
        long = box.clear_width + 2 * box.let_in if float(box.let_in) > 0 else box.clear_width
        x = float(box.thickness - box.let_in)
        return self._board(word, role, "level", (long, width, box.thickness), (x, y, z), banded)

    def _back(self, back: Back, piece: BackPiece) -> CaseBoard:
        """The back or a piece of it, or a strip behind it, its grain upright but in a level strip."""
        slope, x, z = self.box.slope, float(piece.x), float(piece.z)
        high = piece.height
        if slope is not None:
            high = largest(slope.outer(x), slope.outer(x + float(piece.width))) - z
        if not piece.strip:
            size = (high, piece.width, back.thickness)
            return self._board(piece.word, "back", "facing", size, (x, float(back.front), z))
        at = (x, float(back.front + back.thickness), z)
        lies: Lies = "facing" if piece.height > piece.width else "facing, level"
        long, wide = sorted((piece.height, piece.width), key=float, reverse=True)
        return self._board(piece.word, "cover strip", lies, (long, wide, back.thickness), at)

    def partitions(self, lefts: Sequence[Figure]) -> Iterator[CaseBoard]:
        """One between each two bays, from the bottom to the top."""
        box, bare = self.box, self.spec.kind == "frameless"
        for number, left in enumerate(lefts, 1):
            high = self._up_to(float(left), float(box.bottom), box.clear_height)
            size = (high, self.behind, box.thickness)
            at = (float(left), 0.0, float(box.bottom))
            yield self._board(f"partition {number}", "partition", "upright", size, at, bare)

    def fixed_shelves(self, bay: CaseBay, several: bool, setback: float) -> Iterator[CaseBoard]:
        """One under each space of a bay that asks for one, let in as the bottom is, from the top."""
        box = self.box
        place = f"bay {bay.number}" if several else ""
        floored = [space for space in reversed(bay.spaces) if space.floored]
        for number, space in enumerate(floored, 1):
            long = bay.width + 2 * box.let_in if float(box.let_in) > 0 else bay.width
            size = (long, self.behind - setback if setback else self.behind, box.thickness)
            at = (float(bay.left - box.let_in), setback, float(space.foot - box.thickness))
            word = join(place, f"fixed shelf {number}")
            yield self._board(word, "fixed shelf", "level", size, at, True)

    def packings(self, bay: CaseBay, several: bool, front: float) -> Iterator[CaseBoard]:
        """A board at either side of inner drawers, so that they clear the hinges and the doors."""
        place, number = (f"bay {bay.number}" if several else ""), 0
        t = self.box.thickness
        for space in reversed(bay.spaces):
            if space.what != "inner drawer":
                continue
            number += 1
            size = (space.head - space.foot, self.behind - front, t)
            for side, x in (("left", bay.left), ("right", bay.left + bay.width - t)):
                word = join(place, f"{side} packing {number}")
                at = (float(x), front, float(space.foot))
                yield self._board(word, "packing", "upright", size, at)

    def shelves(
        self,
        bay: CaseBay,
        several: bool,
        *,
        thickness: Figure,
        depth: Figure,
        clearance: Figure,
        front: float,
    ) -> Iterator[CaseBoard]:
        """The adjustable shelves of a bay, equally apart in each space, from the top."""
        place, number = (f"bay {bay.number}" if several else ""), 0
        for space in reversed(bay.spaces):
            for each in range(space.shelves, 0, -1):
                number += 1
                apart = (space.head - space.foot - space.shelves * thickness) / (space.shelves + 1)
                z = float(space.foot + each * apart + (each - 1) * thickness)
                size = (bay.width - 2 * clearance, depth, thickness)
                at = (float(bay.left + clearance), front, z)
                word = join(place, f"shelf {number}")
                yield self._board(word, "shelf", "level", size, at, True)
