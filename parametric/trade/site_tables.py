"""What goes to site, as tables: the delivery, the fixings, the order of work, the panes to keep."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from parametric.figures import Figure
from parametric.trade.care import Care
from parametric.trade.delivery import Delivery
from parametric.trade.glazing import free_cell
from parametric.trade.hinge_places import HingeFixing
from parametric.trade.hinge_steps import seat_words
from parametric.trade.installing import InstallSheet
from parametric.trade.printed import Printed, kg
from parametric.trade.site_words import leaf_names
from parametric.trade.tables import Table


def delivery_table(sent: Delivery, said: Printed) -> Table:
    """Pieces, sizes, kilograms and hands; a weight left empty is the supplier's."""
    return Table(
        header=(
            "what",
            "mark",
            "no.",
            "size",
            "kg each",
            "people",
            "kg glazed",
            "people glazed",
            "handling",
        ),
        rows=tuple(
            (
                item.what,
                item.mark,
                str(item.number),
                " x ".join(
                    said.fine(size, down=item.what.endswith("glass")) for size in item.sizes
                ),
                "" if item.weight is None else kg(item.weight),
                str(int(item.people)),
                "" if item.glazed is None else kg(item.glazed),
                "" if item.people_glazed is None else str(int(item.people_glazed)),
                item.handling,
            )
            for item in sent.items
        ),
    )


def of_doors(sheets: tuple[InstallSheet, ...], table: Callable[[InstallSheet], Table]) -> Table:
    """One table of the install sheets of all doors; where there are several, a column says which.

    Args:
        sheets: one a door.
        table: the table of one of them.
    """
    if len(sheets) == 1:
        return table(sheets[0])
    own = [(sheet.place, table(sheet)) for sheet in sheets]
    header = next((one.header for _, one in own), ())
    return Table(
        header=("door", *header),
        rows=tuple((place, *row) for place, one in own for row in one.rows),
    )


def fixing_table(sheet: InstallSheet, said: Printed) -> Table:
    """Every height, place and load that the fitter sets out from."""
    return Table(header=("what", "from", "value", "in", "note"), rows=tuple(_fixings(sheet, said)))


def _fixings(sheet: InstallSheet, said: Printed) -> Iterator[tuple[str, str, str, str, str]]:
    unit, floor, left = said.unit, "highest floor, up", "opening's left edge"

    def size(value: Figure | None) -> str:
        return "" if value is None else said.site(value)

    for line in sheet.heights:
        yield (line.what, floor, size(line.height), unit, line.rule)
    for place, gap in sheet.gaps:
        yield (f"gap under the leaves, {place}", "floor, up", size(gap), unit, "")
    if sheet.travel_gap is not None:
        least = said.wood(sheet.travel_gap, down=True)
        yield (
            "gap under the leaves, least in the swing",
            "floor, up",
            least,
            unit,
            "show the client",
        )
    for where, gap in sheet.edge_gaps:
        yield (f"gap {where}", "", said.fine(gap), unit, "")
    yield from _hinges(sheet, said)
    for track in sheet.tracks:
        name = "track" if len(sheet.tracks) == 1 else f"{track.track} track"
        yield (name, "wall face to its middle", size(track.off_wall), unit, track.leaf)
        yield (f"{name}, left end", left, size(track.left_end), unit, "negative is left of it")
        yield (f"{name}, length", "", size(track.length), unit, "")
    of = {1: "", 2: ", both tracks"}.get(len(sheet.tracks), ", every track")
    for bracket in sheet.brackets:
        near = "" if bracket.off_stud is None else f"nearest stud {size(bracket.off_stud)} away"
        yield (
            f"bracket {bracket.number}{of}",
            left,
            size(bracket.from_opening),
            unit,
            near,
        )
    for guide in sheet.guides:
        off = f"{size(guide.off_wall)} from the wall face"
        yield (f"floor guide, {guide.leaf}", left, size(guide.from_opening), unit, off)
    for pull in sheet.pulls:
        if pull.governing is not None:
            yield (
                "pull at one bracket" + ("" if len(sheet.tracks) == 1 else f", {pull.track} track"),
                "",
                f"{float(pull.governing):.3f}",
                "kN",
                "one hanger right under it, by the larger weight; into what was surveyed only",
            )
    adjusts = sheet.adjustment
    if sheet.tracks:
        least = "" if sheet.screw is None else said.up(sheet.screw)
        yield ("bracket screw, least", "", least, unit, sheet.screw_words)
        yield ("behind the brackets", "", "", "", sheet.behind)
        yield ("hanger adjustment, either way", "", said.up(adjusts.hangers), unit, "at least")
    yield (
        "site trim off the foot",
        "",
        said.wood(adjusts.trim_allowed, down=True),
        unit,
        "at most",
    )
    if sheet.clear_way is not None:
        clear = said.wood(sheet.clear_way, down=True)
        yield ("clear way", "", clear, unit, "show the client")


def _hinges(sheet: InstallSheet, said: Printed) -> Iterator[tuple[str, str, str, str, str]]:
    """Each hinge by both measures; those of leaves alike in one line."""
    lots: dict[tuple[str, ...], list[HingeFixing]] = {}
    for hinge in sheet.hinges:
        same = (
            hinge.word,
            hinge.on,
            hinge.face,
            said.fine(hinge.from_foot),
            said.fine(hinge.from_head),
        )
        lots.setdefault(same, []).append(hinge)
    for (word, on, _, up, down), hinges in lots.items():
        who = leaf_names([hinge.leaf for hinge in hinges])
        first = hinges[0]
        yield (f"{word}, middle, {who}", "leaf's foot, up", up, said.unit, _seat(first, said))
        if on == "jamb":
            near = f"its end nearer the head {said.fine(first.near_end)} down"
            yield (f"{word}, middle, jamb of {who}", "jamb's head, down", down, said.unit, near)
        else:
            yield (f"{word}, middle, {on}", "leaf's foot, up", up, said.unit, "")


def _seat(hinge: HingeFixing, said: Printed) -> str:
    knuckles = f"knuckles on the {hinge.face}"
    return knuckles if hinge.seat is None else f"mortise {seat_words(hinge.seat, said)}; {knuckles}"


def work_table(sheet: InstallSheet) -> Table:
    """What is done in order, and what is checked after each step."""
    return Table(
        header=("no.", "do", "check"),
        rows=tuple((str(step.number), step.do, step.check) for step in sheet.steps),
    )


def pane_table(kept: Care, said: Printed) -> Table:
    """Every pane, so that it can be ordered again."""
    return Table(
        header=(
            "mark",
            "place",
            "kind",
            "width",
            "height",
            "thick",
            "kg",
            "class",
            "corners",
            "clearance",
            "tape",
            "stop",
            "outline",
            "spacer bars",
        ),
        rows=tuple(
            (
                pane.mark,
                pane.place,
                pane.called,
                said.fine(pane.width, down=True),
                said.fine(pane.height, down=True),
                said.thick(pane.nominal, pane.thickness, pane.unit),
                f"{float(pane.weight):.2f}",
                pane.safety_class,
                pane.corners,
                free_cell(pane.clearances, said),
                said.fine(pane.tape),
                ""
                if pane.stop_width is None or pane.stop_depth is None
                else f"{said.fine(pane.stop_width)} x {said.fine(pane.stop_depth)}",
                f"order/{pane.cut_by}" if pane.cut_by else "",
                pane.bars,
            )
            for pane in kept.panes
        ),
    )
