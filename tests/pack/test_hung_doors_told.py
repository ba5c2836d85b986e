"""What a client is told of doors that swing, part, fold or go into the wall; every number by hand."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from parametric.job import check
from parametric.pack.preview import preview_page
from parametric.trade.paperwork import paperwork
from parametric.trade.seasons import leaf_seasons
from parametric.writers.client_page import PreviewPage, plain
from parametric.writers.html import widest_clear_way
from parametric.writers.page_markup import slip_words_of, words_of
from parametric.writers.page_words import WORDS
from tests.pack.hung_doors import DOORS, written
from tests.pack.proposals import proposed, read

MILL_LANE = Path(__file__).parents[2] / "examples/mill-lane-study/design.yaml"


def page_of(path: Path) -> PreviewPage:
    job = check(path, user_house=False)
    assert job.resolved is not None, job.problems
    return preview_page(
        job.resolved, job.loads, fingerprint="0" * 64, elevations=("",), problems=job.problems
    )


def told(page: PreviewPage) -> dict[str, tuple[str, str]]:
    return {fact.label: (plain(fact.value), plain(fact.note)) for fact in page.facts}


def test_one_door_that_opens_away(tmp_path: Path) -> None:
    """826 - 2.5 - 3 = 820.5 wide, 2069 - 3 - 10 = 2056 high; clear 826 - 1.25 - 6 - 40 = 778.75,
    printed 779; reach 6 + 1.25 + 820.5 = 827.75, printed 828; least gap 10 - 4.
    """
    page = page_of(written(tmp_path, "hinged"))
    facts = told(page)
    assert page.subtitle == "Hinged door"
    assert page.leaves[0].label == "The door, hung on its right"
    assert plain(page.thing) == "One, 820.5 wide × 2056 high, hinged, opening away from you"
    assert facts["The door"][0] == "820.5 wide, 2056 high"
    assert facts["Clear to walk through"][0] == "779"
    assert facts["Swing"] == (
        "828 into the room beyond",
        "The door opens away from you: keep that much floor clear behind it.",
    )
    assert facts["Gap under the door"][0] == "19 left, 15 middle, 10 right"
    assert facts["Least gap as it opens"][0] == "6 over the floor"
    assert facts["Gaps round the door"][0] == "3 at the left, 2.5 at the right, 3 above"
    assert [plain(tick) for tick in page.ticks][:2] == [
        "I have seen that the door is hung on its right, opens away from me and goes 828 into the "
        "room beyond: nothing may stand there.",
        "I have seen that the gap under the door is 19 at the left, 15 in the middle and 10 at the "
        "right, and 6 at the least on its way, because the floor is not level.",
    ]


def test_two_doors_of_two_widths(tmp_path: Path) -> None:
    """1326 - 2 x 2.5 - 3 = 1318 for both: 480 and 838; reach of the wider 6 + 1.25 + 838."""
    page = page_of(written(tmp_path, "unequal pair"))
    facts = told(page)
    assert page.subtitle == "Hinged pair"
    assert facts["Left door"][0] == "480 wide, 2056 high"
    assert facts["Right door"][0] == "838 wide, 2056 high"
    assert "Each door" not in facts
    assert facts["Swing"][0] == "845.5 into the room"
    assert facts["Swing"][1].endswith("The right door opens first and shuts last.")
    assert "Weight of the heavier door" in facts
    assert plain(page.thing).startswith("Left door 480 wide × 2056 high, Right door 838 wide")
    assert plain(page.ticks[0]).startswith(
        "I have seen that the doors open towards me, the right door first, and come 845.5"
    )


def test_a_door_in_two_halves_is_one_door(tmp_path: Path) -> None:
    """The gap at the split, 3, is where they meet; both hang on the left."""
    page = page_of(written(tmp_path, "dutch"))
    facts = told(page)
    assert page.subtitle == "Hinged door in two halves"
    assert [leaf.label.split(",")[0] for leaf in page.leaves] == ["Upper half", "Lower half"]
    assert facts["Gaps round the door"][0].endswith("3 where they meet, 3 above")
    assert facts["Clear to walk through"][1].startswith("With both halves")
    assert plain(page.ticks[0]).startswith("I have seen that the door is hung on its left")


def test_doors_that_slide_say_nothing_of_swinging(tmp_path: Path) -> None:
    """Biparting leaves clear all of 1626; the pocket's door stays 50 in the opening: 826 - 50."""
    parting, pocket = (page_of(written(tmp_path, which)) for which in ("biparting", "pocket"))
    assert told(parting)["Clear to walk through"] == (
        "1626",
        "With both doors slid apart, at the narrowest part of your opening.",
    )
    assert told(pocket)["Clear to walk through"][0] == "776"
    for page in (parting, pocket):
        assert not {"Swing", "Between the doors"} & set(told(page))
        assert not any("open towards me" in plain(tick) for tick in page.ticks)


def test_leaves_that_fold(tmp_path: Path) -> None:
    page = page_of(written(tmp_path, "bifold"))
    facts = told(page)
    assert page.subtitle == "Four folding doors"
    assert [leaf.label for leaf in page.leaves] == [
        "Left door, folds",
        "Second door from the left, folds",
        "Third door from the left, folds",
        "Right door, folds",
    ]
    assert facts["Room to fold"][0].endswith(" into the room")
    assert facts["Clear to walk through"][1] == "With all the doors open."


def test_a_floor_that_nobody_measured_is_told(tmp_path: Path) -> None:
    """Better told before than after: the page says it, and the client ticks it."""
    page = page_of(written(tmp_path, "unequal pair", rise="not measured"))
    assert told(page)["Least gap as they open"] == (
        "not known yet",
        "Not measured on their way: a floor that rises there can catch them.",
    )
    assert any("the floor was not measured on their way" in plain(tick) for tick in page.ticks)


def test_a_floor_that_does_not_rise_is_no_tick_of_its_own(tmp_path: Path) -> None:
    page = page_of(written(tmp_path, "unequal pair", rise="0"))
    assert told(page)["Least gap as they open"][0] == "10 over the floor"
    assert not any("on their way" in plain(tick) for tick in page.ticks)


@pytest.mark.parametrize("which", DOORS)
def test_the_page_shows_the_clear_way_that_it_promises(which: str, tmp_path: Path) -> None:
    page = page_of(written(tmp_path, which))
    assert widest_clear_way(page) == pytest.approx(page.clear_way, abs=0.05)


@pytest.mark.parametrize("which", DOORS)
def test_a_line_that_shows_a_size_is_as_long_as_it_says(which: str, tmp_path: Path) -> None:
    """The room to swing and the gaps, chalked in the picture, in whole and half millimetres."""
    for fact in page_of(written(tmp_path, which)).facts:
        if fact.key not in ("swing", "gaps", "swinging gap", "clear way"):
            continue
        for line in fact.chalk:
            long = sum(abs(a - b) for a, b in zip(line.start, line.end, strict=True))
            assert float(line.text) == pytest.approx(long, abs=0.26), (fact.label, line)


@pytest.mark.parametrize("which", DOORS)
def test_the_proposal_is_drawn_clear(which: str, tmp_path: Path) -> None:
    """No text crossed, none overlapping; it says on paper what the page says."""
    path = written(tmp_path, which)
    proposal = proposed(path)
    assert proposal.findings == ()
    words = " ".join(page.words for page in read(proposal.file))
    page = page_of(path)
    for fact in page.facts:
        assert fact.label.split()[0] in words
    assert page.subtitle in words


def test_the_proposal_draws_what_doors_sweep_over(tmp_path: Path) -> None:
    """The quarter circle of a 820.5 leaf at 1:25: its free corner goes as far as its reach."""
    pages = read(proposed(written(tmp_path, "hinged")).file)
    assert "Arcs: what the door sweeps over." in pages[1].words
    assert "Slanting lines meet where a door is hung." in pages[1].words
    assert "828" in pages[1].words


def test_a_head_across_the_pair_is_told_once(project: Path) -> None:
    """Mill Lane: one arc of 6 in rise across both; sixteen panes, the largest 10-17/32 x 21-1/8."""
    page = page_of(project / "examples" / "mill-lane-study" / "design.yaml")
    facts = told(page)
    assert facts["Shaped head"] == (
        "rises 6″",
        "From where it springs to its highest point: one line across the doors.",
    )
    assert facts["Glass"][1].startswith("Sixteen panes, the largest 10\u200917⁄32″ wide")
    assert facts["Gap under the doors"][0] == "5⁄8″ left, 1⁄2″ right"
    assert facts["Least gap as they open"][0] == "5⁄16″ over the floor"
    assert facts["Gaps round the doors"][0] == (
        "3⁄32″ at the sides, 1⁄8″ where they meet, 1⁄8″ above"
    )


def test_casings_stand_round_hung_doors_and_not_before_them(tmp_path: Path) -> None:
    """Outside the opening but for lining and stop, which stand no farther in than the stop is."""
    page = page_of(written(tmp_path, "hinged"))
    assert page.scenery.trims
    for outline, near, far in page.scenery.trims:
        assert near < far
        assert all(x < 12.5 or x > 826 - 12.5 or z > 2069 - 12.5 for x, z in outline)
    left, right = page.scenery.skirting_clear
    assert left < 0 < 826 < right
    assert page_of(written(tmp_path, "sliding")).scenery.trims == ()


def test_one_door_is_spoken_of_as_one(tmp_path: Path) -> None:
    """The page's own words: one door is not `these doors`, nor is it slid when it swings."""
    one, two = (page_of(written(tmp_path, which)) for which in ("hinged", "unequal pair"))
    assert words_of(one)["say it"] == "Yes, make this door"
    assert words_of(two)["say it"] == WORDS["say it"]
    for page in (one, two):
        assert "swing" in words_of(page)["hint touch"].lower()
        assert not any("slid" in word for word in words_of(page).values())
    assert words_of(page_of(written(tmp_path, "biparting"))) == WORDS


@pytest.mark.parametrize(
    ("kind", "says"),
    [
        ("hinged", "I say yes to this door: please make it."),
        ("unequal pair", "I say yes to these doors: please make them."),
    ],
)
def test_the_slip_counts_the_doors(kind: str, says: str, tmp_path: Path) -> None:
    assert slip_words_of(page_of(written(tmp_path, kind)))["head"] == says


def test_a_gap_that_closes_is_told_on_the_rule() -> None:
    """In inches to the sixty-fourth, as the rest of the care sheet; not as a decimal."""
    job = check(MILL_LANE, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    (line,) = (
        line
        for line in paperwork(job.resolved, job.assembly, job.loads).care.seasons
        if "close by" in line
    )
    growth = min(leaf_seasons(job.resolved), key=lambda season: float(season.left)).growth
    whole = round(float(growth) / 25.4 * 64)
    assert f"close by {Fraction(whole, 64)} in the dampest season" in line
