"""Labels: which piece this is, where it goes and which way up, for people first.

+-------------------------+
| S1-1    left stile      |   the arrow shows where the top of the leaf is when the
| leaf A      ---> top    |   label is read, the piece lying with its low end left
+-------------------------+
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.model import Assembly, Face, Part
from parametric.names import SEPARATOR
from parametric.resolve.door import Resolved
from parametric.trade.fingerprint import fingerprint, mark
from parametric.trade.machine_work import face_word

Arrow = Literal["right", "left", "up", "down"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """One label. `code` is the mark and which of its pieces this is, as a person reads it.

    Pieces that are all alike and go anywhere get one label to the bundle: `number` says
    how many are in it. `stuck_on` is the side it goes on; `top` the end or edge towards the
    top of the leaf and `arrow` where that lies as the label is read; "" and None on a bundle.
    `matched` says which place it has in a matched set, "" where it has none.
    """

    code: str
    mark: str
    number: int
    noun: str
    leaf: str
    place: str
    stuck_on: str
    top: str
    arrow: Arrow | None
    job: str
    revision: str
    fingerprint: str
    names: tuple[str, ...]
    matched: str = ""

    @property
    def readable(self) -> str:
        """Everything in one line, for a small square code that says no more than the label does."""
        return "  ".join(
            word
            for word in (
                self.job,
                self.code,
                self.leaf,
                self.place,
                self.matched,
                self.revision,
                self.fingerprint,
            )
            if word
        )


def labels(resolved: Resolved, assembly: Assembly) -> tuple[Label, ...]:
    """A label for every piece that has its own place; one a bundle for the rest."""
    revisions = resolved.design.revisions
    revision = revisions[-1].letter if revisions else ""
    short = mark(fingerprint(resolved, assembly))
    counts: dict[str, int] = {}
    bundles: dict[str, list[Part]] = {}
    found: list[Label] = []
    for part in assembly.parts:
        if part.supplied:
            continue
        if _goes_anywhere(part):
            bundles.setdefault(part.mark, []).append(part)
            continue
        counts[part.mark] = counts.get(part.mark, 0) + 1
        leaf, place = _place(part)
        top, arrow = _top(part)
        found.append(
            Label(
                code=f"{part.mark}-{counts[part.mark]}",
                mark=part.mark,
                number=1,
                noun=part.noun,
                leaf=leaf,
                place=place,
                stuck_on=_front(part),
                top=top,
                arrow=arrow,
                job=resolved.job,
                revision=revision,
                fingerprint=short,
                names=(part.name,),
                matched="" if part.matched is None else part.matched.words,
            )
        )
    found += [
        Label(
            code=own,
            mark=own,
            number=len(parts),
            noun=parts[0].noun,
            leaf=", ".join(dict.fromkeys(_place(part)[0] for part in parts)),
            place=f"bundle of {len(parts)}, all alike",
            stuck_on="the bundle",
            top="",
            arrow=None,
            job=resolved.job,
            revision=revision,
            fingerprint=short,
            names=tuple(part.name for part in parts),
        )
        for own, parts in bundles.items()
    ]
    return tuple(found)


def _goes_anywhere(part: Part) -> bool:
    """Loose tenons and glass stops: alike, and any will do in any place of its length."""
    return part.mark[0] in "TL"


def _place(part: Part) -> tuple[str, str]:
    """The leaf, and the place in it from the inside out: `left stile`, `glass of lite 1`."""
    leaf, *places = part.name.split(SEPARATOR)
    return leaf, " of ".join(reversed(places))


def _looks_front(part: Part) -> bool:
    """Whether the part's high face is the one that looks to the front."""
    return part.placement.z[1] < 0


def _front(part: Part) -> str:
    """The word for the side that looks to the front."""
    if part.material.look == "glass":
        return "front, to be peeled off"
    return face_word(part, "high face" if _looks_front(part) else "low face")


def _top(part: Part) -> tuple[str, Arrow]:
    """The end or edge towards the top of the leaf, and where it is as the front side is read."""
    along, across = part.placement.x[2], part.placement.y[2]
    if abs(along) > 0.5:
        end: Face = "high end" if along > 0 else "low end"
        return part.faces.get(end, "top end"), "right" if along > 0 else "left"
    edge: Face = "high edge" if across > 0 else "low edge"
    # Read from the high face, y points up; from the low face the piece is turned over.
    up = (across > 0) == _looks_front(part)
    return part.faces.get(edge, "top edge"), "up" if up else "down"
