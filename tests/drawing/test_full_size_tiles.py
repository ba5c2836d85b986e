"""Tiles laid together by their register crosses are the whole again."""

from __future__ import annotations

import dataclasses
import io
import itertools
import math
import re
from collections.abc import Iterator
from functools import cache

import ezdxf
import pytest

from parametric.drawing.audit import audit
from parametric.drawing.full_size.story_stick import draw_story_stick, draw_story_stick_tiles
from parametric.drawing.full_size.template import Laid, Opening, Template, draw_template
from parametric.drawing.full_size.tiles import GRID, LAP, Board, draw_tiles, tiles_of
from parametric.drawing.papers import A4, LETTER, bench_paper
from parametric.drawing.plane import Box, Point, arc_points
from parametric.drawing.primitives import Arc, Circle, Label, Stroke
from parametric.drawing.sheet import Paper, Sheet, View, primitives
from parametric.writers.dxf_sheets import write_dxf
from tests.drawing.full_size import Page, arched, pages
from tests.drawing.test_full_size import HEIGHTS, WIDTHS, inch_twin, reading_room

ARM = 3.0
_NAME = re.compile(r"[A-HJ-NP-Z]{1,2}[0-9]{1,2}")


def crosses(page: Page) -> dict[str, Point]:
    """Register crosses on a page as they are printed: the name beside two lines that cross."""
    level = [line for line in page.lines if line.level and abs(line.length - 2 * ARM) < 0.01]
    upright = [line for line in page.lines if line.upright and abs(line.length - 2 * ARM) < 0.01]
    found: dict[str, Point] = {}
    for a in level:
        for b in upright:
            at = ((a.x0 + a.x1) / 2, (b.y0 + b.y1) / 2)
            if abs(b.x0 - at[0]) > 0.01 or abs(a.y0 - at[1]) > 0.01:
                continue
            near = [
                word
                for word in page.words
                if _NAME.fullmatch(word.text) and math.dist((word.x, word.y), at) < 6.0
            ]
            assert len(near) == 1, (at, near)
            assert near[0].text not in found
            found[near[0].text] = at
    return found


def laid(found: list[Page]) -> list[Point]:
    """How far each page is moved so that the crosses it shares with one already laid meet."""
    known: dict[str, Point] = {}
    moves: list[Point] = []
    for page in found:
        own = crosses(page)
        shared = sorted(own.keys() & known.keys())
        by = (0.0, 0.0)
        if moves:
            assert len(shared) >= 2, sorted(own)
            first = shared[0]
            by = (known[first][0] - own[first][0], known[first][1] - own[first][1])
        for name, (x, y) in own.items():
            at = (x + by[0], y + by[1])
            if name in known:
                assert math.dist(at, known[name]) < 0.01, name
            known[name] = at
        moves.append(by)
    return moves


@pytest.mark.parametrize("job", [reading_room, inch_twin])
def test_tiles_meet_cross_on_cross_and_carry_every_line_of_the_stick(job: object) -> None:
    """Read from the PDF alone: laid by their crosses, the lines are where the whole page has them."""
    subject, paper, title = job()  # type: ignore[operator]
    found = pages(draw_story_stick_tiles(subject, paper, title), words=True)
    moves = laid(found)
    left = bench_paper(subject).frame.x0 + 25.0
    whole = pages(draw_story_stick(subject, paper, title))[0]
    whole_left = 10.0 + 25.0

    def levels(page: Page, x: float) -> list[float]:
        """Lines at the edge of the heights; their thin leads lie on them and count once."""
        return [line.y0 for line in page.lines if line.level and abs(line.x0 - x) < 0.02]

    together = [
        y + by[1] for page, by in zip(found, moves, strict=True) for y in levels(page, left - by[0])
    ]
    zero, whole_zero = min(together), min(levels(whole, whole_left))
    heights = {round(y - zero, 1) for y in together}
    assert heights == {round(y - whole_zero, 1) for y in levels(whole, whole_left)}
    for y in together:
        nearest = min(abs((y - zero) - (h - whole_zero)) for h in levels(whole, whole_left))
        assert nearest < 0.01


def test_tiles_carry_the_heights_worked_by_hand() -> None:
    """The lowest line is the trim, 12 under the datum."""
    found = pages(draw_story_stick_tiles(*reading_room()), words=True)
    moves = laid(found)
    assert len(found) == 11
    left = 20.0 + 25.0
    together = sorted(
        line.y0 + by[1]
        for page, by in zip(found, moves, strict=True)
        for line in page.lines
        if line.level and abs(line.x0 - left) < 0.02
    )
    heights = sorted({round(y - together[0] - 12.0, 1) for y in together})
    # The stick's own ends lie 8 past its outermost marks, and are one line with its sides.
    assert [h for h in heights if h not in (-20.0, 2122.0)] == list(HEIGHTS)


# Boards as data -------------------------------------------------------------------------------


@cache
def arch() -> Board:
    """A light wider and taller than any plain page: 500 x 700, 180 of rise over it."""
    subject, _, title = reading_room()
    template = Template(
        view="arched light",
        document="Template",
        second_line="Arched light",
        plate=Box(-20.0, -20.0, 560.0, 900.0),
        openings=(Opening(outline=arched(500.0, 700.0, 180.0), waste="outside"),),
        crosses=(
            Laid(at=(0.0, 0.0), words=("low left corner",)),
            Laid(at=(500.0, 0.0), words=("low right corner",)),
        ),
        words=("Arched light", subject.resolved.job),
        words_in=Box(60.0, 300.0, 104.0, 360.0),
        grain="up",
    )
    return draw_template(template, dataclasses.replace(title, document="Template"))


def boards() -> list[tuple[Board, Paper]]:
    subject, paper, title = reading_room()
    (whole,) = draw_story_stick(subject, paper, title)
    view = whole.views[0].name
    stick = Board(sheet=whole, view=view, area=Box(-25.0, -21.0, 85.0, 2123.0), cross=(-20.0, 0.0))
    return [(stick, bench_paper(subject)), (arch(), A4), (arch(), LETTER)]


def samples(sheet: Sheet, view: View) -> Iterator[tuple[str, Point]]:
    """Points every mm or so on all that is drawn in a view, in the model, by layer."""
    for element in sheet.elements:
        for part in primitives(element):
            if part.view != view.name or isinstance(part, Label):
                continue
            match part:
                case Stroke() if part.layer != "hatch":
                    points = (*part.points, part.points[0]) if part.closed else part.points
                    for a, b in itertools.pairwise(points):
                        count = max(1, round(math.dist(a, b)))
                        for i in range(count + 1):
                            t = i / count
                            p = (a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t)
                            yield part.layer, view.back(p)
                case Arc():
                    run = arc_points(part.centre, part.radius, part.start, part.end, 1.0)
                    for p in run:
                        yield part.layer, view.back(p)
                case Circle():
                    for p in arc_points(part.centre, part.radius, 0.0, 360.0, 1.0):
                        yield part.layer, view.back(p)
                case _:
                    continue


def shows(sheet: Sheet, view: View) -> dict[str, list[object]]:
    """What a tile draws of a view, by layer: straight pieces as their two ends, and round ones."""
    found: dict[str, list[object]] = {}
    for element in sheet.elements:
        for part in primitives(element):
            if part.view != view.name or not isinstance(part, (Stroke, Arc, Circle)):
                continue
            pieces: list[object] = [part]
            if isinstance(part, Stroke):
                points = (*part.points, part.points[0]) if part.closed else part.points
                pieces = list(itertools.pairwise(points))
            for piece in pieces:
                found.setdefault(part.layer, []).append(piece)
    return found


def passes(piece: object, p: Point) -> bool:
    """Whether a line or an arc on paper runs through a point, to a thousandth."""
    if isinstance(piece, tuple):
        a, b = piece
        dx, dy = b[0] - a[0], b[1] - a[1]
        long = dx * dx + dy * dy
        t = 0.0 if long == 0 else ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / long
        t = min(1.0, max(0.0, t))
        return math.dist(p, (a[0] + t * dx, a[1] + t * dy)) < 1e-3
    assert isinstance(piece, (Arc, Circle))
    if abs(math.dist(p, piece.centre) - piece.radius) > 1e-3:
        return False
    if isinstance(piece, Circle):
        return True
    turn = math.degrees(math.atan2(p[1] - piece.centre[1], p[0] - piece.centre[0]))
    return (turn - piece.start + 1e-4) % 360.0 <= piece.end - piece.start + 2e-4


@pytest.mark.parametrize("index", [0, 1, 2], ids=["stick", "arch on A4", "arch on letter"])
def test_every_line_is_on_every_tile_it_passes(index: int) -> None:
    board, paper = boards()[index]
    title = board.sheet.title
    tiles = tiles_of(board, paper, title, "mm")
    sheets = draw_tiles(board, paper, title, "mm")
    assert len(tiles) == len(sheets) > 5
    whole = board.sheet.view(board.view)
    drawn = [
        (t, s.view(board.view), shows(s, s.view(board.view)))
        for t, s in zip(tiles, sheets, strict=True)
    ]
    count = 0
    for layer, (x, y) in samples(board.sheet, whole):
        holders = 0
        for tile, view, pieces in drawn:
            w = tile.window
            if not (w.x0 + 0.01 < x < w.x1 - 0.01 and w.y0 + 0.01 < y < w.y1 - 0.01):
                continue
            holders += 1
            at = view.at((x, y))
            assert any(passes(piece, at) for piece in pieces.get(layer, ())), (
                tile,
                layer,
                x,
                y,
            )
        assert holders >= 1, (layer, x, y)
        count += 1
    assert count > 3000


@pytest.mark.parametrize("index", [0, 1, 2], ids=["stick", "arch on A4", "arch on letter"])
def test_tiles_lap_by_ten_at_crosses_and_lie_within_the_frame(index: int) -> None:
    board, paper = boards()[index]
    title = board.sheet.title
    tiles = tiles_of(board, paper, title, "mm")
    assert {t.number for t in tiles} == set(range(1, len(tiles) + 1))
    beside = {(t.row, t.column): t for t in tiles}
    for (row, column), tile in beside.items():
        right, over = beside.get((row, column + 1)), beside.get((row + 1, column))
        if right is not None:
            assert tile.window.x1 - right.window.x0 == pytest.approx(LAP)
            middle = (tile.window.x1 + right.window.x0) / 2
            assert (middle - board.cross[0]) % GRID == pytest.approx(0.0, abs=1e-9)
        if over is not None:
            assert tile.window.y1 - over.window.y0 == pytest.approx(LAP)
            middle = (tile.window.y1 + over.window.y0) / 2
            assert (middle - board.cross[1]) % GRID == pytest.approx(0.0, abs=1e-9)
    lowest, highest = tiles[0].window, tiles[-1].window
    assert (lowest.x0, lowest.y0) == (board.area.x0, board.area.y0)
    assert (highest.x1, highest.y1) == (board.area.x1, board.area.y1)
    for tile, sheet in zip(tiles, draw_tiles(board, paper, title, "mm"), strict=True):
        view = sheet.view(board.view)
        low, high = view.at(tile.window[:2]), view.at(tile.window[2:])
        assert paper.frame.holds(Box(*low, *high))
        assert [str(f) for f in audit(sheet)] == []


def test_one_register_cross_lands_on_one_point_of_the_model() -> None:
    """Four tiles meet at an inner cross of the arch, and all four print it."""
    board = arch()
    title = board.sheet.title
    sheets = draw_tiles(board, A4, title, "mm")
    places: dict[str, list[Point]] = {}
    for sheet, page in zip(sheets, pages(sheets, words=True), strict=True):
        view = sheet.view(board.view)
        for name, at in crosses(page).items():
            places.setdefault(name, []).append(view.back(at))
    assert max(map(len, places.values())) == 4
    for name, points in places.items():
        for x, y in points:
            assert math.dist((x, y), points[0]) < 0.01, name
            assert (x - board.cross[0]) % GRID == pytest.approx(0.0, abs=0.01) or (
                (x - board.cross[0]) % GRID == pytest.approx(GRID, abs=0.01)
            )


def test_an_arch_is_one_true_arc_in_the_drawing_file() -> None:
    """By hand: radius (250^2 + 180^2) / 360 = 263.611, its middle 880 - 263.611 above the sill."""
    sheet = arch().sheet
    document = ezdxf.read(io.StringIO(write_dxf(sheet).decode("utf-8")))
    (arc,) = [e for e in document.modelspace() if e.dxftype() == "ARC"]
    assert arc.dxf.radius == pytest.approx(263.611, abs=1e-3)
    assert arc.dxf.center.y == pytest.approx(616.389, abs=1e-3)


def test_a_large_template_has_the_long_bar_on_its_own_page() -> None:
    board = arch()
    page = Paper(name="template", width=760.0, height=1010.0)
    (sheet,) = draw_tiles(board, page, board.sheet.title, "mm")
    assert [str(f) for f in audit(sheet)] == []
    said = [e.text for e in sheet.elements if isinstance(e, Label)]
    assert said.count("must measure 500 mm; if not, do not use") == 2


def test_a_text_that_a_joint_runs_through_is_told_beside_the_first_tile() -> None:
    board = arch()
    whole = board.sheet.view(board.view)
    # 100 long across a joint: 5 - 20 + 100 n is where columns meet.
    joint = tiles_of(board, A4, board.sheet.title, "mm")[0].window.x1 - LAP / 2
    label = Label(
        text="a sill of oak, planed all round", at=whole.at((joint - 20.0, 450.0)), view=whole.name
    )
    longer = dataclasses.replace(board.sheet, elements=(*board.sheet.elements, label))
    sheets = draw_tiles(dataclasses.replace(board, sheet=longer), A4, board.sheet.title, "mm")
    told = [
        number
        for number, sheet in enumerate(sheets, 1)
        if "sill" in " ".join(e.text for e in sheet.elements if isinstance(e, Label))
    ]
    assert told == [1]
    assert [str(f) for sheet in sheets for f in audit(sheet)] == []


def test_widths_are_there_too() -> None:
    """Every width line of the whole page ends at the stick's right edge on some tile."""
    found = pages(draw_story_stick_tiles(*reading_room()), words=True)
    moves = laid(found)
    right, left = 20.0 + 85.0, 20.0 + 25.0
    lowest = min(
        line.y0 + by[1]
        for page, by in zip(found, moves, strict=True)
        for line in page.lines
        if line.level and abs(line.x0 - left) < 0.02
    )
    ends = [
        line.y0 + by[1] - lowest - 12.0
        for page, by in zip(found, moves, strict=True)
        for line in page.lines
        if line.level and abs(line.x1 - right) < 0.02
    ]
    for width in WIDTHS:
        assert min(abs(end - width) for end in ends) < 0.011
