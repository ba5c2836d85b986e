"""Several doors of one job: letters through all of them, names told apart, each where it stands."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import pytest

from parametric.design import load
from parametric.figures import Figure, collect
from parametric.model import Placement, Slide, Turn, displaced
from parametric.names import leaf_letter
from parametric.parts import make_parts, parts_of
from parametric.parts.room import stood
from parametric.resolve.beside import APART
from parametric.resolve.door import Resolved, resolve

TEMPLATES = Path(__file__).parents[2] / "templates"


def two(kind: str) -> tuple[Resolved, Resolved]:
    """A starter alone, and the same door twice in one job."""
    found = load(TEMPLATES / f"{kind}.yaml", user_house=False)
    assert found.design is not None
    assert found.shop is not None
    ((_, spec),) = found.design.doors
    blocks = {key: block for key, block in found.design.blocks.items() if key[0] != "door"}
    twice = dataclasses.replace(
        found.design, blocks={("door", "study"): spec, ("door", "hall"): spec, **blocks}
    )
    alone, _ = resolve(found.design, found.shop)
    both, _ = resolve(twice, found.shop)
    assert alone is not None
    assert both is not None
    return alone, both


def test_letters_run_on_past_z_without_an_i_or_an_o() -> None:
    letters = [leaf_letter(n) for n in range(24 + 24 * 24)]
    assert letters[:9] == list("ABCDEFGHJ")
    assert letters[23:27] == ["Z", "AA", "AB", "AC"]
    assert letters[-1] == "ZZ"
    assert len(set(letters)) == len(letters)
    assert not any("I" in letter or "O" in letter for letter in letters)


@pytest.mark.parametrize("kind", ["hinged pair", "bypass", "bifold", "dutch", "cabinet", "pocket"])
def test_leaves_are_lettered_through_the_job_and_made_alike(kind: str) -> None:
    alone, both = two(kind)
    count = len(alone.leaves)
    assert [leaf.letter for leaf in both.leaves] == [leaf_letter(n) for n in range(2 * count)]
    once, twice = make_parts(alone), make_parts(both)
    marks = [part.mark for part in once.parts]
    assert [part.mark for part in twice.parts] == [*marks, *marks]
    assert len({part.name for part in twice.parts}) == 2 * len(marks)


@pytest.mark.parametrize("kind", ["hinged pair", "bypass", "cabinet"])
def test_every_number_of_a_job_has_a_name_of_its_own(kind: str) -> None:
    alone, both = two(kind)
    study, hall = (collect(door) for door in both.doors)
    # What both doors share is what both call: the lines of their blocks, the house's habits.
    shared = {name for name, figure in study.items() if hall.get(name) is figure}
    assert study.keys() & hall.keys() == shared
    assert not shared & {"cover", "leaf width", "leaf height"}
    assert study["door study / cover"] == hall["door hall / cover"] == alone.door.hanging.cover
    known = collect(both.doors)
    assert all(known[name] is figure for own in (study, hall) for name, figure in own.items())


def test_the_sum_behind_a_number_is_of_the_same_door() -> None:
    _, both = two("hinged pair")
    width = both.doors[1].hanging.leaf_width
    behind = {one.name for one in _behind(width)}
    assert width.name == "door hall / leaf width"
    assert "door hall / width for the leaves" in behind
    assert not [name for name in behind if name and name.startswith("door study")]


def _behind(figure: Figure) -> list[Figure]:
    found = [figure]
    for arg in figure.args:
        if isinstance(arg, Figure):
            found += _behind(arg)
    return found


def test_doors_stand_beside_one_another_and_never_meet() -> None:
    _, both = two("sliding")
    study = both.doors[0]
    assert study.stands == Placement()
    whole = make_parts(both)
    reach = {}
    for door in both.doors:
        names = {group.name for group in parts_of(door, whole).groups}
        spots = [
            displaced(group, state).point(part.placement.point((along, across, 0.0)))[0]
            for group in whole.groups
            if group.name in names
            for part in group.parts
            for state in whole.states
            for along in (0.0, part.blank.length)
            for across in (0.0, part.blank.width)
        ]
        reach[door.name] = (min(spots), max(spots))
    assert reach["hall"][0] - reach["study"][1] == pytest.approx(APART)


def test_a_state_opens_one_door_or_all_and_they_do_not_multiply() -> None:
    _, both = two("hinged pair")
    states = make_parts(both).states
    own = [state.name for state in both.doors[0].hanging.states if state.name != "shut"]
    assert [state.name for state in states] == [
        "shut",
        *(f"study {name}" for name in own),
        *(f"hall {name}" for name in own),
        "open",
    ]
    assert states[-1].open == {f"leaf {letter}": 1.0 for letter in "ABCD"}
    (hall,) = (state for state in states if state.name == "hall open")
    assert hall.open == {"leaf A": 0.0, "leaf B": 0.0, "leaf C": 1.0, "leaf D": 1.0}


def test_a_door_narrowed_is_the_door_alone_by_its_own_letters() -> None:
    alone, both = two("hinged pair")
    once, whole = make_parts(alone), make_parts(both)
    hall = parts_of(both.doors[1], whole)
    assert [group.name for group in hall.groups] == ["leaf C", "leaf D"]
    assert [group.placement for group in hall.groups] == [g.placement for g in once.groups]
    assert [group.motion for group in hall.groups] == [g.motion for g in once.groups]
    assert [part.blank for part in hall.parts] == [part.blank for part in once.parts]
    assert both.of(both.doors[1]).leaves == both.doors[1].leaves
    with pytest.raises(ValueError, match="too many"):
        _ = both.door


def test_what_stands_turned_moves_along_turned_ways() -> None:
    """A frame turned by a right angle about z and moved: x becomes y, y becomes -x."""
    _, both = two("hinged pair")
    group = parts_of(both.doors[0], make_parts(both)).groups[0]
    turned = Placement(origin=(100.0, 200.0, 0.0), x=(0.0, 1.0, 0.0), y=(-1.0, 0.0, 0.0))
    there = stood(group, turned)
    for state in both.doors[0].hanging.states:
        for corner in ((0.0, 0.0, 0.0), (500.0, 0.0, 0.0), (0.0, 30.0, 900.0)):
            moved_then_carried = turned.point(displaced(group, state).point(corner))
            carried_then_moved = displaced(there, state).point(corner)
            assert carried_then_moved == pytest.approx(moved_then_carried, abs=1e-9)
    slid = dataclasses.replace(group, motion=(Slide(direction=(1.0, 0.0, 0.0), travel=50.0),))
    assert stood(slid, turned).motion == (Slide(direction=(0.0, 1.0, 0.0), travel=50.0),)
    assert isinstance(group.motion[0], Turn)
