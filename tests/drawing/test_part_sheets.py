"""A part's sheet says everything of the part: read off the page, its list makes the part again."""

from __future__ import annotations

import dataclasses
import math
import tempfile
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from parametric.drawing.audit import audit
from parametric.drawing.numbering import numbered
from parametric.drawing.part_sheets import draw_part_sheets
from parametric.drawing.part_sheets.breaks import GAP, PLAIN, lie_along
from parametric.drawing.part_sheets.cut_list import completeness
from parametric.drawing.part_sheets.sheets import section_letters
from parametric.drawing.primitives import Circle, Label, Stroke
from parametric.drawing.sheet import Sheet, TitleBlock, primitives
from parametric.drawing.subject import subject
from parametric.drawing.tables import Table
from parametric.job import check
from parametric.model import Cut, Part, Pocket, Slot, Trim, removed_volume
from parametric.pack.numbers import figures
from parametric.problems import stops
from parametric.trade.paperwork import paperwork
from parametric.trade.part_cuts import PartCuts, Size, part_cuts
from parametric.trade.twins import alike_both_sides, mirrors
from parametric.units import Unit
from parametric.writers.pdf import write_pdf
from tests.drawing.part_lists import HEADS, Listed, cut_of, lists_in
from tests.drawing.sheets import LARCH_HILL
from tests.invariants.designs import bypass_designs
from tests.whole.test_build import INCH_TWIN

BLOCK = TitleBlock(
    owner="A shop", document="Part", title="A job", second_line="", drawn="", approved="",
    date="", scale="", sizes="mm", number="X-P", revision="A", fingerprint="0123-4567",
)  # fmt: skip
BALLOON = 2.9


@dataclasses.dataclass(frozen=True)
class Drawn:
    """A job's part sheets, with what they were drawn from."""

    cuts: tuple[PartCuts, ...]
    sheets: tuple[Sheet, ...]
    unit: Unit
    half_wood: float
    half_fine: float
    pdf: bytes

    def lists(self) -> dict[str, Listed]:
        found = [own for page in range(len(self.sheets)) for own in lists_in(self.pdf, page)]
        assert len({own.mark for own in found}) == len(found)
        return {own.mark: own for own in found}

    def sheet(self, mark: str) -> Sheet:
        return next(s for s in self.sheets if mark in s.title.document.replace(",", "").split())


def drawn(path: Path) -> Drawn | None:
    job = check(path, user_house=False)
    if job.resolved is None or job.assembly is None or stops(job.problems):
        return None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    own = subject(job.resolved, job.assembly, job.loads, job.problems)
    sheets = numbered(draw_part_sheets(own, paper, BLOCK))
    inch = 25.4 if own.rules.unit == "inch" else 1.0
    return Drawn(
        cuts=paper.part_cuts,
        sheets=sheets,
        unit=own.rules.unit,
        half_wood=float(own.rules.wood.step) * inch / 2 + 1e-9,
        half_fine=float(own.rules.fine.step) * inch / 2 + 1e-9,
        pdf=write_pdf(sheets),
    )


@cache
def larch_hill_parts() -> Drawn:
    found = drawn(LARCH_HILL)
    assert found is not None
    return found


@cache
def inch_parts() -> Drawn:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "design.yaml"
        path.write_text(INCH_TWIN, encoding="utf-8")
        found = drawn(path)
    assert found is not None
    return found


JOBS = pytest.mark.parametrize("job", [larch_hill_parts, inch_parts], ids=["mm", "inch"])
MARKS = ("S1", "S2", "R1", "R2", "R3", "R4", "P1", "L1", "L2", "T1")


# --- read back -------------------------------------------------------------------------------


def rebuilt(own: PartCuts, listed: Listed, unit: Unit) -> list[Cut]:
    made: list[Cut] = []
    for row in listed.rows:
        made.append(cut_of(row, own.part, unit, made))
    return made


def off(cut: Cut, made: Cut) -> Iterator[tuple[str, float]]:
    """How far each number of a cut made anew is from the part's."""
    assert type(cut) is type(made)
    for field in dataclasses.fields(cut):
        a, b = getattr(cut, field.name), getattr(made, field.name)
        if field.name == "making":
            continue
        if isinstance(a, float) and not isinstance(a, bool):
            yield field.name, abs(float(a) - float(b))
        else:
            assert a == b, (field.name, a, b)


def assert_makes_the_part(own: PartCuts, listed: Listed, job: Drawn) -> None:
    """Every number within what its printing may round, and the volume within what that moves."""
    made = rebuilt(own, listed, job.unit)
    assert [row["No."] for row in listed.rows] == [str(n) for n in range(1, len(own.part.cuts) + 1)]
    assert len(made) == len(own.part.cuts)
    moves = 0.0
    for row, new in zip(own.rows, made, strict=True):
        cut = row.cut
        for name, far in off(cut, new):
            # A middle or a length is half of, or the sum of, two printed places.
            allowed = 2 * max(job.half_wood, job.half_fine)
            if name == "slope":
                allowed = 0.02
            assert far <= allowed, (own.part.mark, cut.name, name, far)
            if far > 0:
                worse = dataclasses.replace(cut, **{name: float(getattr(cut, name)) + far})
                less = dataclasses.replace(cut, **{name: float(getattr(cut, name)) - far})
                before = removed_volume(cut, own.part.blank)
                moves += max(abs(removed_volume(c, own.part.blank) - before) for c in (worse, less))
    volume = own.part.blank.volume - sum(removed_volume(c, own.part.blank) for c in made)
    assert abs(volume - float(own.part.volume)) <= 1.1 * moves + 1e-3, own.part.mark


@JOBS
def test_the_list_on_the_page_makes_the_part_again(job) -> None:  # type: ignore[no-untyped-def]
    here = job()
    lists = here.lists()
    assert set(lists) == {own.part.mark for own in here.cuts}
    for own in here.cuts:
        assert_makes_the_part(own, lists[own.part.mark], here)


def test_larch_hill_has_a_sheet_for_every_part_that_is_cut() -> None:
    """Glass is ordered to size; each stile, rail and panel has its own, small parts share one."""
    documents = [sheet.title.document for sheet in larch_hill_parts().sheets]
    assert documents == [
        "Part S1", "Part S2", "Part R1", "Part R2", "Part R3", "Part R4", "Part P1",
        "Parts L1, L2, T1",
    ]  # fmt: skip
    assert [s.title.sheet for s in larch_hill_parts().sheets] == list(range(1, 9))


def test_the_stile_as_worked_by_hand() -> None:
    """Foot: 240 high, slots 40 off the foot and 6 off the groove (240 - 14 - 6 = 220), each 62:
    40 to 102, 158 to 220. Groove 240 - 14 = 226 to 700 + 14 = 714. Lock rail 700 to 850 with a
    groove below: wood from 720, middle (720 + 850) / 2 = 785: 754 to 816. Pull 1000 - 12 = 988 up:
    flange 160 + 2 x 0.3 = 160.6 long, 907.7 to 1068.3; body 912.7 to 1063.3.
    """
    rows = {tuple(r.get(h, "") for h in ("Cut", "Into", "from", "to")): r
            for r in larch_hill_parts().lists()["S1"].rows}  # fmt: skip
    for key in (
        ("trim foot", "foot", "-12", "0"),
        ("floor guide groove", "foot", "0", "120"),
        ("slot, tenon in bottom rail", "inner edge", "40", "102"),
        ("slot, tenon in bottom rail", "inner edge", "158", "220"),
        ("panel groove", "inner edge", "226", "714"),
        ("slot, tenon in lock rail", "inner edge", "754", "816"),
        ("pull flange", "face", "907.7", "1068.3"),
        ("pull body", "back", "912.7", "1063.3"),
        ("trim top", "top", "2102", "2114"),
    ):
        assert key in rows, key
    body = rows["pull body", "back", "912.7", "1063.3"]
    assert (body["width"], body["deep"], body["begins"], body["ends"]) == (
        "32.6", "14.2", "1.5", "r 3.3",
    )  # fmt: skip


# --- nothing can be taken away ---------------------------------------------------------------


def test_a_list_short_of_any_one_cell_does_not_make_the_part() -> None:
    """Every degree of every cut of every part, one after the other."""
    here = larch_hill_parts()
    tried = 0
    for mark, listed in here.lists().items():
        own = next(c for c in here.cuts if c.part.mark == mark)
        for index, row in enumerate(listed.rows):
            for head in (h for h in HEADS if h in row and h not in ("No.", "With", "When")):
                rows = list(listed.rows)
                rows[index] = {h: text for h, text in row.items() if h != head}
                with pytest.raises((KeyError, AssertionError, IndexError)):
                    assert_makes_the_part(own, Listed(mark, tuple(rows)), here)
                tried += 1
    degrees = sum(len(row.degrees) for own in here.cuts for row in own.rows)
    assert tried == degrees + 2 * sum(len(own.rows) for own in here.cuts)


def test_a_list_short_of_a_row_does_not_make_the_part() -> None:
    here = larch_hill_parts()
    for own in here.cuts:
        listed = here.lists()[own.part.mark]
        with pytest.raises(AssertionError):
            assert_makes_the_part(own, Listed(own.part.mark, listed.rows[:-1]), here)


def test_a_number_changed_on_the_page_is_noticed() -> None:
    here = larch_hill_parts()
    sheet = here.sheet("R3")
    table = the_list(sheet, "R3")
    rows = [tuple("47" if text == "46" else text for text in row) for row in table.rows]
    spoilt = dataclasses.replace(table, rows=tuple(rows))
    elements = tuple(spoilt if e is table else e for e in sheet.elements)
    pdf = write_pdf([dataclasses.replace(sheet, elements=elements)])
    own = next(c for c in here.cuts if c.part.mark == "R3")
    (listed,) = lists_in(pdf, 0)
    with pytest.raises(AssertionError):
        assert_makes_the_part(own, listed, here)


def the_list(sheet: Sheet, mark: str) -> Table:
    return next(
        e
        for e in sheet.elements
        if isinstance(e, Table) and e.title.startswith(f"Every cut in {mark}")
    )


@JOBS
def test_every_degree_stands_in_one_cell_and_no_other(job) -> None:  # type: ignore[no-untyped-def]
    here = job()
    for own in here.cuts:
        table = the_list(here.sheet(own.part.mark), own.part.mark)
        heads = [column.head for column in table.columns]
        for row, cells in zip(own.rows, table.rows, strict=True):
            quantities = [degree.quantity for degree in row.degrees]
            assert len(set(quantities)) == len(quantities)
            filled = {
                head
                for head, text in zip(heads, cells, strict=True)
                if text and head not in ("No.", "Cut", "Into", "With", "When")
            }
            assert filled == {{"across": "centre across"}.get(q, q) for q in quantities}


@JOBS
def test_names_of_all_printed_numbers_are_known(job) -> None:  # type: ignore[no-untyped-def]
    for own in job().cuts:
        for row in own.rows:
            for degree in row.degrees:
                if isinstance(degree, Size):
                    place = f"{own.part.mark} / cut {row.number} / {degree.quantity}"
                    assert degree.figure.name == place


def test_explain_knows_the_numbers_of_the_list() -> None:
    job = check(LARCH_HILL, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    known = figures(job.resolved, job.loads, paperwork(job.resolved, job.assembly, job.loads))
    assert float(known["S1 / cut 6 / from"]) == 754
    assert float(known["R3 / finished length"]) == 784.5


# --- views -----------------------------------------------------------------------------------


def balloons(sheet: Sheet) -> list[str]:
    """The numbers that stand in a ring."""
    parts = [p for e in sheet.elements for p in primitives(e)]
    rings = [p for p in parts if isinstance(p, Circle) and p.radius == BALLOON]
    return [
        label.text
        for ring in rings
        for label in parts
        if isinstance(label, Label) and math.dist(label.box.centre, ring.centre) < 0.6
    ]


@JOBS
def test_balloons_are_the_rows(job) -> None:  # type: ignore[no-untyped-def]
    here = job()
    for sheet in here.sheets:
        marks = sheet.title.document.replace(",", "").split()[1:]
        rows = [str(row.number) for own in here.cuts if own.part.mark in marks for row in own.rows]
        assert sorted(balloons(sheet)) == sorted(rows)


@JOBS
def test_slots_and_pockets_are_drawn_true_on_the_side_they_are_cut_in(job) -> None:  # type: ignore[no-untyped-def]
    """Length and width of each outline, in the view that bears the side's name."""
    here = job()
    looked = 0
    for own in here.cuts:
        sheet = here.sheet(own.part.mark)
        for row in own.rows:
            if not isinstance(row.cut, (Slot, Pocket)):
                continue
            low, high, wide = (float(row.size(q) or 0.0) for q in ("from", "to", "width"))
            found = False
            for stroke in sheet.elements:
                if not (isinstance(stroke, Stroke) and stroke.closed and stroke.layer == "edge"):
                    continue
                if not stroke.view.startswith(f"{own.part.mark} {row.into}"):
                    continue
                points = [sheet.view(stroke.view).back(p) for p in stroke.points]
                xs, ys = ([p[i] for p in points] for i in (0, 1))
                sizes = (max(xs) - min(xs), max(ys) - min(ys))
                if row.into.endswith("end"):
                    xs, sizes = ys, (sizes[1], sizes[0])
                found |= sizes == pytest.approx((high - low, wide), abs=1e-6) and min(
                    xs
                ) == pytest.approx(low, abs=1e-6)
            assert found, (own.part.mark, row.number)
            looked += 1
    assert looked >= 10


def test_a_stile_shows_nothing_but_its_ends_its_cuts_and_its_breaks() -> None:
    """Every corner of every line on its sides lies within a cut, at an end, or at a break."""
    here = larch_hill_parts()
    for mark in ("S1", "S2", "R1", "R2", "R3", "R4"):
        own = next(c for c in here.cuts if c.part.mark == mark)
        sheet = here.sheet(mark)
        length = float(own.finished_length)
        trims = [float(c.length) for c in own.part.cuts if isinstance(c, Trim)] or [0.0]
        spans = [(-t, -t) for t in trims] + [(length + t, length + t) for t in trims]
        spans += [(0.0, 0.0), (length, length)]
        for row in own.rows:
            low, high = row.size("from"), row.size("to")
            deep = float(row.size("deep") or 0.0)
            if row.into in ("foot", "left end"):
                spans.append((0.0, deep))
            elif row.into in ("top", "right end"):
                spans.append((length - deep, length))
            elif low is not None and high is not None:
                spans.append((float(low), float(high)))
        views = {own.part.faces[f] for f in ("low edge", "high edge", "low face", "high face")}
        count = 0
        for stroke in sheet.elements:
            if not isinstance(stroke, Stroke) or stroke.layer not in ("edge", "hidden"):
                continue
            if not any(stroke.view.startswith(f"{mark} {word}") for word in views):
                continue
            if sum(len(e.points) for e in (stroke,)) == 2 and stroke.layer == "edge":
                continue  # the stem of a section mark or an open end of a broken line
            view = sheet.view(stroke.view)
            ends = breaks(sheet, stroke.view)
            for point in stroke.points:
                x = view.back(point)[0]
                at_break = any(abs(x - end) < 1e-3 for end in ends)
                assert at_break or any(a - 1e-6 <= x <= b + 1e-6 for a, b in spans), (mark, x)
                count += 1
        assert count > 8


def breaks(sheet: Sheet, view: str) -> list[float]:
    """Where the waves of a view stand, mm along the part."""
    waves = [
        e
        for e in sheet.elements
        if isinstance(e, Stroke) and e.layer == "breaks" and e.view == view
    ]
    return [sheet.view(view).back(w.points[0])[0] for w in waves]


def test_the_table_of_what_is_complete_is_counted() -> None:
    """A lost balloon, a lost row, a side or a section not drawn: each is said, and marked."""
    here = larch_hill_parts()
    own = next(c for c in here.cuts if c.part.mark == "S1")
    table = the_list(here.sheet("S1"), "S1")
    all_of_them = list(range(1, 14))
    rows, wrong = completeness(own, table, all_of_them, (4, 4), (7, 7))
    assert not wrong
    assert rows[0][1:] == ("13", "13")
    assert completeness(own, table, all_of_them[:-1], (4, 4), (7, 7))[1] == {1}
    shorter = dataclasses.replace(table, rows=table.rows[1:])
    assert completeness(own, shorter, all_of_them, (4, 4), (7, 7))[1] == {0, 2}
    assert completeness(own, table, all_of_them, (3, 4), (7, 7))[1] == {3}
    assert completeness(own, table, all_of_them, (4, 4), (6, 7))[1] == {4}
    for sheet in here.sheets:
        counted = [e for e in sheet.elements if isinstance(e, Table) and "needed" in heads_of(e)]
        assert counted
        assert all(here == needed for t in counted for _, here, needed in t.rows)


def heads_of(table: Table) -> list[str]:
    return [column.head for column in table.columns]


# --- breaks, letters, twins ------------------------------------------------------------------


def test_a_part_is_broken_only_where_it_is_plain_and_no_more_than_it_must() -> None:
    """Stile of 2126 at 1:5 is 425.2 long; in 361 one break of 64.2 + 4 is enough: 361 exactly.

    The longest plain run lies between 1447 and 2011, 564 long: the break stands in its middle.
    """
    stops = (0, 40, 102, 158, 220, 226, 714, 754, 816, 907.7, 1068.3, 1385, 1447, 2011, 2073, 2102)
    cuts = ((40, 102), (158, 220), (226, 714), (754, 816), (907.7, 1068.3), (1385, 1447),
            (2011, 2073))  # fmt: skip
    lie = lie_along((-12.0, 2114.0), stops, cuts, scale=5.0, left=30.0, room=361.0)
    assert lie is not None
    assert lie.breaks == 1
    assert (lie.left, lie.right) == pytest.approx((30.0, 391.0))
    low, high = lie.stretches[0].high, lie.stretches[1].low
    assert (low + high) / 2 == pytest.approx((1447 + 2011) / 2)
    assert low - 1447 >= PLAIN * 5
    assert 2011 - high >= PLAIN * 5
    assert lie.x(2073) - lie.x(2011) == pytest.approx(62 / 5)
    assert lie.x(2011) - lie.x(1447) == pytest.approx((564 - (high - low)) / 5 + GAP)
    assert lie_along((-12.0, 2114.0), stops, cuts, scale=5.0, left=30.0, room=120.0) is None


def test_sections_are_lettered_without_letters_that_look_like_figures() -> None:
    letters = section_letters()
    first = [next(letters) for _ in range(25)]
    assert first[0] == "A"
    assert not set("IOQ") & set("".join(first))
    assert first[23:] == ["AA", "AB"]
    here = larch_hill_parts()
    titles = [
        e.text
        for sheet in here.sheets
        for e in sheet.elements
        if isinstance(e, Label) and e.text[1:2] == "-" and e.text[0] == e.text[2:3]
    ]
    called = [t[0] for t in titles]
    assert len(set(called)) == len(called) > 8


def test_twins_are_told_from_mirrors(tmp_path: Path) -> None:
    """Pulls on both faces: one stile serves both leaves. On the front only: two, each the mirror."""
    pulled = next(c for c in larch_hill_parts().cuts if c.part.mark == "S1").part
    assert alike_both_sides(pulled)
    text = LARCH_HILL.read_text(encoding="utf-8")
    assert "faces: both" in text
    path = tmp_path / "design.yaml"
    path.write_text(text.replace("faces: both", "faces: front"), encoding="utf-8")
    here = drawn(path)
    assert here is not None
    left, right = [c.part for c in here.cuts if c.part.noun == "stile with pull"]
    assert not alike_both_sides(left)
    assert mirrors(left, right)
    assert mirrors(right, left)
    words = " ".join(said(here.sheet(left.mark)))
    assert f"{right.mark} is its mirror" in words
    for sheet in here.sheets:
        assert [str(f) for f in audit(sheet)] == []


def said(sheet: Sheet) -> list[str]:
    return [p.text for e in sheet.elements for p in primitives(e) if isinstance(p, Label)]


def test_every_part_that_is_made_and_cut_has_its_rows() -> None:
    job = check(LARCH_HILL, user_house=False)
    assert job.assembly is not None
    made: dict[str, Part] = {
        p.mark: p
        for p in job.assembly.parts
        if not p.supplied and p.cuts and p.material.look == "timber"
    }
    found = part_cuts(job.assembly)
    assert [own.part.mark for own in found] == list(made)
    assert set(made) == set(MARKS)
    for own in found:
        assert sorted(map(id, own.part.cuts)) == sorted(id(row.cut) for row in own.rows)


# --- audits, other designs -------------------------------------------------------------------


@JOBS
def test_part_sheets_are_drawn_without_a_finding(job) -> None:  # type: ignore[no-untyped-def]
    assert [str(f) for sheet in job().sheets for f in audit(sheet)] == []


@settings(max_examples=6, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(bypass_designs())
def test_random_parts_are_drawn_clean_and_read_back(text: str) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "design.yaml"
        path.write_text(text, encoding="utf-8")
        here = drawn(path)
    if here is None:
        return
    assert [str(f) for sheet in here.sheets for f in audit(sheet)] == []
    lists = here.lists()
    for own in here.cuts:
        assert_makes_the_part(own, lists[own.part.mark], here)
