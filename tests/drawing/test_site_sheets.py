"""What goes to site: the wall at scale, the work in order, the lists, the client's page."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.drawing.audit import audit
from parametric.drawing.dimensions import Ordinate
from parametric.drawing.drawings import Drawings
from parametric.drawing.sheet import Sheet
from parametric.job import check
from parametric.trade.paperwork import Paperwork, paperwork
from parametric.trade.printed import Printed, printed
from parametric.trade.site_tables import delivery_table, fixing_table, pane_table, work_table
from tests.drawing.pages import Page, lettered_small, read, rows_missing, sheets_of, without
from tests.drawing.sheets import LARCH_HILL, drawn, larch_hill
from tests.whole.test_build import INCH_TWIN

SITE = ("site/install", "site/delivery", "site/care")
BRACKETS = [-50 + n * 1929 / 5 for n in range(6)]
"""Six over a track of 1929 that starts 50 left of the opening: 385.8 apart."""


def write(folder: Path, text: str, *changes: tuple[str, str]) -> Path:
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    return path


def larch_hill_text() -> str:
    return LARCH_HILL.read_text(encoding="utf-8")


def paper_of(path: Path) -> tuple[Paperwork, Printed]:
    job = check(path, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    return paperwork(job.resolved, job.assembly, job.loads), printed(job.resolved)


Case = tuple[Drawings, Paperwork, Printed]


@pytest.fixture(scope="module", params=["mm", "inch"])
def case(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Case:
    """Larch Hill, and its twin in inches."""
    if request.param == "mm":
        return (larch_hill(), *paper_of(LARCH_HILL))
    path = write(tmp_path_factory.mktemp("inch"), INCH_TWIN)
    return (drawn(path), *paper_of(path))


@pytest.fixture(scope="module")
def install() -> list[Page]:
    return read(sheets_of(larch_hill(), "site/install"))


def wall_sheet(drawings: Drawings) -> Sheet:
    return sheets_of(drawings, "site/install")[0]


def ordinates(sheet: Sheet, view: str, axis: str) -> dict[str, Ordinate]:
    return {
        e.text: e
        for e in sheet.elements
        if isinstance(e, Ordinate) and e.view == view and e.axis == axis
    }


# Every list on its page -----------------------------------------------------------------------


def test_every_fixing_and_every_step_is_on_the_install_sheets(case: Case) -> None:
    drawings, paper, said = case
    pages = read(sheets_of(drawings, "site/install"))
    fixings = [
        (*row[:3], row[3] if row[3] == "kN" else "", row[4])
        for row in fixing_table(paper.install, said).rows
    ]
    assert rows_missing(pages, fixings) == []
    assert rows_missing(pages, work_table(paper.install).rows) == []
    text = " ".join(page.text for page in pages)
    assert "fingers can be caught" in text
    for words in (*paper.install.tools, *paper.install.cautions, *paper.install.hold):
        assert words in text


def test_every_piece_is_on_the_delivery_list(case: Case) -> None:
    drawings, paper, said = case
    pages = read(sheets_of(drawings, "site/delivery"))
    assert rows_missing(pages, delivery_table(paper.delivery, said).rows) == []
    assert len(pages) == 1


def test_every_pane_is_on_the_care_sheet_with_what_goes_round_it(case: Case) -> None:
    drawings, paper, said = case
    (page,) = read(sheets_of(drawings, "site/care"))
    panes = without(pane_table(paper.care, said), "corners", "clearance", "tape", "stop")
    assert rows_missing([page], panes) == []
    for pane in pane_table(paper.care, said).rows:
        corners, clearance, _, stop = pane[-6:-2]
        assert f"Corners {corners}. {clearance} free all round" in page.text
        assert f"stops {stop.replace(' x ', ' × ')}." in page.text
    for words in (
        *paper.care.upkeep,
        *paper.care.seasons,
        *paper.care.checks,
        *paper.care.replacing,
        *paper.care.cautions,
    ):
        assert words in page.text


# The wall ---------------------------------------------------------------------------------------


def test_brackets_are_where_the_sum_puts_them_and_drawn_there(install: list[Page]) -> None:
    """1929 / 5 = 385.8 apart from -50, at 1:20, read off the file's own lines."""
    sheet = wall_sheet(larch_hill())
    assert (sheet.title.scale, sheet.paper.name) == ("1:20", "A4")
    found = ordinates(sheet, "the wall", "across")
    texts = ["-50", "335.8", "721.6", "1107.4", "1493.2", "1879"]
    assert [text for text in found if "edge" not in text] == texts
    edge = found["0  edge"].lines[0][0][0]
    for text, place in zip(texts, BRACKETS, strict=True):
        assert (found[text].lines[0][0][0] - edge) * 20 == pytest.approx(place, abs=1e-6)
        at = edge + place / 20
        # The bracket's own middle line, not the running size's: it passes the line to mark.
        assert any(abs(x - at) < 0.02 and y1 - y0 > 8.0 for x, y0, y1 in install[0].upright), text


def test_heights_run_from_the_highest_floor() -> None:
    sheet = wall_sheet(larch_hill())
    found = ordinates(sheet, "the wall", "up")
    datum = found["0  datum: the highest floor"].lines[0][0][1]
    for text, height in (
        ("12  foot of the leaves", 12.0),
        ("1000  middle of the pulls", 1000.0),
        ("2069  head of the opening", 2069.0),
        ("2114  top of the leaves: mark this line", 2114.0),
        ("-9  left", -9.0),
        ("-5  middle", -5.0),
        ("0  right", 0.0),
    ):
        assert (found[text].lines[0][0][1] - datum) * 20 == pytest.approx(height, abs=1e-6)


def test_guides_and_tracks_stand_in_the_plan() -> None:
    """Half of the overlap of 120 past leaf B's left edge: 1879 - 1024.5 + 60 = 914.5."""
    sheet = wall_sheet(larch_hill())
    across, off = (ordinates(sheet, "the floor", axis) for axis in ("across", "up"))
    assert float(across["914.5"].value) == pytest.approx(1879 - 1024.5 + 60)
    face = off["0  wall face"].lines[0][0][1]
    for text, plane in (("34  inner track, leaf B", 34), ("86  outer track, leaf A", 86)):
        assert (face - off[text].lines[0][0][1]) * 20 == pytest.approx(plane, abs=1e-6)


def test_what_only_a_data_sheet_knows_is_a_line_to_write_on(install: list[Page]) -> None:
    text = install[0].text
    assert text.index("Before a hole is drilled") < text.index("The wall from the front")
    assert "Screws stand above the datum" in text
    assert "solid timber the whole length of the head" in text
    assert not any("screw" in key for key in ordinates(wall_sheet(larch_hill()), "the wall", "up"))


def test_the_brief_stands_on_the_install_sheets(install: list[Page]) -> None:
    """Pull 17.6 x 9.81 / 1000 x 86 / 60 = 0.247 kN by the estimate, more by the larger weight;
    screw 12.5 + 38 = 50.5; clear way 852; gaps 21 / 17 / 12; trim 12 of the 15 planned.
    """
    text = " ".join(page.text for page in install)
    for words in ("0.2477", "0.252 kN", "50.5", "852", "1107.4"):
        assert words in text
    estimate = (18.7235 + 4.4751 + 2 * 6.0139) / 2
    assert estimate * 9.81 / 1000 * 86 / 60 == pytest.approx(0.2477, abs=5e-5)


def test_steps_are_in_order_with_a_box_to_tick_each(install: list[Page]) -> None:
    steps = [page for page in install if "Order of work" in page.text]
    assert len(steps) == 2
    ticks = sum(
        1 for page in steps for box in page.boxes if box == pytest.approx((3.4, 3.4), abs=0.01)
    )
    # Ten steps, seven lines of tools.
    assert ticks == 17
    assert "Step by step, continued" in steps[1].text


def test_studs_as_found_are_drawn_and_named(tmp_path: Path) -> None:
    """Brackets at 335.8 and studs 400 apart: the nearest to 335.8 is 400, 64.2 away."""
    path = write(
        tmp_path,
        larch_hill_text(),
        (
            "fixing: solid timber ",
            "studs: [0, 400, 800, 1200, 1600]\n  fixing: studs ",
        ),
    )
    drawings = drawn(path)
    page = read(sheets_of(drawings, "site/install"))[0]
    sheet = wall_sheet(drawings)
    edge = ordinates(sheet, "the wall", "across")["0  edge"].lines[0][0][0]
    hidden = [e for e in sheet.elements if getattr(e, "layer", "") == "hidden"]
    assert [round((e.points[0][0] - edge) * 20, 6) for e in hidden] == [  # type: ignore[union-attr]
        0.0,
        400.0,
        800.0,
        1200.0,
        1600.0,
    ]
    assert "fix into their middles only" in page.text
    assert "nearest stud 64.2 away" in " ".join(
        p.text.lower() for p in read(sheets_of(drawings, "site/install"))
    )
    assert [str(f) for s in sheets_of(drawings, "site/install") for f in audit(s)] == []


def test_doors_in_the_opening_are_fixed_up_into_the_head(tmp_path: Path) -> None:
    path = write(
        tmp_path,
        larch_hill_text(),
        (
            "hung: on the wall                # no header board; the leaves cover the opening",
            "hung: in the opening",
        ),
        ("  side lap: 50                     # past the opening, on each side\n", ""),
        ("  head lap: 45                     # over the head\n", ""),
        (", bearing: 60", ""),
    )
    drawings = drawn(path)
    sheets = sheets_of(drawings, "site/install")
    assert [str(f) for sheet in sheets for f in audit(sheet)] == []
    page = read(sheets)[0]
    assert "Screws stand above the datum" not in page.text
    assert "2069 head of the opening" in page.text
    assert "mark this line" not in page.text


def test_a_wide_wall_goes_on_larger_paper_and_no_text_shrinks(tmp_path: Path) -> None:
    path = write(
        tmp_path,
        larch_hill_text(),
        ("{top: 1826, middle: 1824, bottom: 1829}", "{top: 2306, middle: 2304, bottom: 2309}"),
    )
    drawings = drawn(path)
    sheet = wall_sheet(drawings)
    assert (sheet.paper.name, sheet.title.scale) == ("A3", "1:20")
    assert audit(sheet) == ()
    assert lettered_small([sheet], 2.5) == []


def test_site_papers_are_clean_and_large_enough_to_read(case: Case) -> None:
    drawings, _, _ = case
    for file in SITE:
        sheets = sheets_of(drawings, file)
        assert [str(f) for sheet in sheets for f in audit(sheet)] == []
        assert lettered_small(sheets, 2.5) == []
        assert {s.paper.name for s in sheets} <= {"A4", "letter"}


def test_inches_wear_their_mark_on_the_wall(tmp_path: Path) -> None:
    """76 / 5 = 15-1/5 apart from -2: 13-1/5 is 13-3/16 to the sixteenth of a tape, 28.4 28-3/8."""
    found = ordinates(wall_sheet(drawn(write(tmp_path, INCH_TWIN))), "the wall", "across")
    assert list(found) == [
        '-2"',
        '0"  edge',
        '13-3/16"',
        '28-3/8"',
        '43-5/8"',
        '58-13/16"',
        '74"',
    ]


def test_the_way_in_asks_for_what_the_largest_piece_needs() -> None:
    (page,) = read(sheets_of(larch_hill(), "site/delivery"))
    assert "leaf A: 1024.5 × 2102 × 40, 23.7 kg without its glass, 2 people" in page.text
    assert "71.6 kg in all" in page.text
    # 2 leaves, 4 panes: 2 x 23.73 + 4 x 6.01 = 71.5 kg, and the stops are in the leaves.
    assert pytest.approx(71.5, abs=0.1) == 2 * 23.73 + 4 * 6.014


def test_the_seasons_are_said_with_the_panels_own_movement() -> None:
    """803.53 x 0.00289 x (11 - 6) = 11.61 mm."""
    (page,) = read(sheets_of(larch_hill(), "site/care"))
    assert pytest.approx(11.61, abs=0.005) == 803.53 * 0.00289 * 5
    assert "A panel is 11.6 larger across its grain" in page.text
