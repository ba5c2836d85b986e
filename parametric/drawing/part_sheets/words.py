"""What is said under a part's list: blank, faces, how across is measured, tools, twins."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from parametric.drawing.finished_outline import opened_edges
from parametric.drawing.lettering import width
from parametric.drawing.papers import scale_words
from parametric.drawing.part_sheets.cut_shapes import own_side
from parametric.drawing.part_sheets.unfolded import Side, Unfolded
from parametric.drawing.subject import Subject
from parametric.infill.panel_kinds import PANEL_NOUNS
from parametric.model import (
    Drilled,
    Groove,
    Moulded,
    Pocket,
    RaisedBevel,
    ScrewPocket,
    Shaped,
    Slot,
)
from parametric.names import SEPARATOR
from parametric.trade.case_names import listed
from parametric.trade.edge_band import banded_words
from parametric.trade.moulded_runs import edge_beside
from parametric.trade.part_cuts import PartCuts, face_name
from parametric.trade.twins import alike_both_sides, lies_turned, mirrors

_SIDES: tuple[Side, ...] = ("face", "back", "under", "over", "left", "right")


_SCALE_ROOM = 20.0
"""What the title block has for its scale, mm."""
_MANY = 3
"""More places than this are counted leaf by leaf."""


def notes(job: Subject, own: PartCuts, part: Unfolded, all_cuts: Sequence[PartCuts]) -> list[str]:
    """Every sentence, in the order it is read."""
    return [
        *_twins(own, all_cuts),
        _blank(job, own, part),
        *_measured(own, part),
        *_banded(own),
        *_matched(own),
        *_bare(part),
        *_tools(own),
    ]


def scales_said(job: Subject, scales: Sequence[float]) -> str:
    """Every scale of a sheet, where the title block has room for them."""
    words = ", ".join(
        scale_words(scale, job.rules.unit) for scale in sorted(set(scales), reverse=True)
    )
    return words if width(words) <= _SCALE_ROOM else "as shown"


def how_many(own: PartCuts) -> str:
    """How many are made, and where they go; leaves that take the same are said once."""
    homes = _homes(own.names)
    if len(homes) > _MANY:
        leaves: dict[str, int] = {}
        for name in own.names:
            leaf = name.partition(SEPARATOR)[0]
            leaves[leaf] = leaves.get(leaf, 0) + 1
        homes = [f"{count} in {leaf}" for leaf, count in leaves.items()]
    return f"{len(own.names)} off: {' and '.join(homes)}"


def _homes(names: Sequence[str]) -> list[str]:
    """`leaf A left stile` for each, `leaves A and B, lock rail` where a place is in several."""
    places: dict[str, list[str]] = {}
    for name in names:
        leaf, _, rest = name.partition(SEPARATOR)
        places.setdefault(rest.replace(SEPARATOR, " "), []).append(leaf)
    found = []
    for rest, leaves in places.items():
        letters = [leaf.removeprefix("leaf ") for leaf in leaves]
        if not all(leaf.startswith("leaf ") for leaf in leaves):
            found.append(f"{listed(leaves)}, {rest}")
            continue
        whose = f"leaf {letters[0]}" if len(letters) == 1 else f"leaves {listed(letters)}"
        found.append(f"{whose} {rest}")
    return found


def _blank(job: Subject, own: PartCuts, part: Unfolded) -> str:
    down = own.part.noun in PANEL_NOUNS
    sizes = (own.blank_length, own.width, own.thickness)
    size = " × ".join(job.wood(value, down=down) for value in sizes)
    grain = "grain along the length"
    board = own.part.material.look == "board"
    straight = "; flat, and square at every corner" if board else "; straight and out of wind"
    straight += " before any cut"
    trim = ""
    if part.foot:
        trim = (
            f". Sizes along are from the finished {face_name(own.part, 'low end')}: "
            f"add {job.wood(own.trimmed)} to measure from the end of the blank"
        )
    return f"Blank {size}, {own.part.material.name}, {grain}{straight}{trim}."


def _measured(own: PartCuts, part: Unfolded) -> Iterator[str]:
    kinds = (Slot, Groove, Pocket, Drilled, ScrewPocket, Shaped)
    cuts = [row.cut for row in own.rows if isinstance(row.cut, kinds)]
    sides = {part.side(cut.face) for cut in cuts}
    low = face_name(own.part, "low edge")
    said = []
    if sides - {"face", "back"}:
        said.append("in edges and ends from the face")
    if sides & {"face", "back"}:
        said.append(f"on face and back from the {low}")
    ends = f"; in the ends, from and to from the {low}" if sides & {"left", "right"} else ""
    if said:
        yield f"Across is measured {', '.join(said)}{ends}."
    if any(row.size("left height") is not None for row in own.rows):
        yield f"Heights of a curve are measured up from the {low} of the blank."


def _banded(own: PartCuts) -> Iterator[str]:
    """The edges that wear a band; the blank is as it is sawn, before it."""
    edges = banded_words(own.part)
    if edges:
        said = " and ".join(edges)
        yield f"{said[0].upper()}{said[1:]} banded; sizes are before the band."


def _matched(own: PartCuts) -> Iterator[str]:
    """Its place in a matched set."""
    if (matched := own.part.matched) is not None:
        yield f"Matched {matched.words}. Out of the set's blank and no other; keep it in its place."


def _bare(part: Unfolded) -> Iterator[str]:
    """The sides that no cut is made in."""
    kinds = (Slot, Groove, Pocket, Drilled, ScrewPocket, Shaped)
    cut = {own_side(cut, part) for cut in part.part.cuts if isinstance(cut, kinds)}
    if not cut:
        return
    cut |= {part.side(edge) for edge in opened_edges(part.part)}
    runs = [one for one in part.part.cuts if isinstance(one, Moulded)]
    cut |= {part.side(side) for run in runs for side in (run.face, edge_beside(run))}
    bare = [part.word(side) for side in _SIDES if side not in cut]
    if bare:
        text = f"{', '.join(bare[:-1])} and {bare[-1]}" if len(bare) > 1 else bare[0]
        yield f"{text[0].upper()}{text[1:]}: no cuts."


def _tools(own: PartCuts) -> Iterator[str]:
    """How saw and bench make their cuts; what the router turns stands in the list."""
    tools: dict[str, list[int]] = {}
    for row in own.rows:
        if row.cut.making.tool and row.cut.making.by != "router":
            tools.setdefault(row.cut.making.tool, []).append(row.number)
    said = [
        f"cut{'' if len(numbers) == 1 else 's'} {runs_said(numbers)}: {tool}"
        for tool, numbers in tools.items()
    ]
    if said:
        text = "; ".join(said)
        yield f"{text[0].upper()}{text[1:]}."


def runs_said(numbers: Sequence[int]) -> str:
    """Row numbers as they are said: `1, 3 to 6`."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(
        ", ".join(map(str, run)) if len(run) < 3 else f"{run[0]} to {run[-1]}" for run in runs
    )


def _twins(own: PartCuts, all_cuts: Sequence[PartCuts]) -> Iterator[str]:
    turned = [twin.name for twin in own.twins if lies_turned(own.part, twin)]
    alike = alike_both_sides(own.part)
    if turned:
        homes = " and ".join(_homes(turned))
        text = (
            f"{homes} {'is' if len(turned) == 1 else 'are'} the same piece turned face to back"
            f"{': every cut is alike on both sides' if alike else ''}."
        )
        yield text[0].upper() + text[1:]
    elif alike and "face" in own.part.faces.values():
        yield "Every cut is alike on both sides of the middle of the thickness."
    if alike or any(isinstance(cut, RaisedBevel) for cut in own.part.cuts):
        return
    for other in all_cuts:
        if other is not own and mirrors(own.part, other.part):
            yield f"{other.part.mark} is its mirror: mark both before the first cut."
