"""A lock in a design: let into one leaf, its strike into the other, and on the list to buy."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.job import Job, check
from parametric.model import Part, Shaped
from parametric.trade.hardware_list import hardware_list
from parametric.trade.lock_places import strike_places
from parametric.trade.milling import milling_list

PAIR = Path(__file__).parents[1] / "rules/hinged-pair.yaml"
LOCK = (
    "\nlock: {kind: mortise lock, body: 6 x 5/8 x 3, faceplate: 8 x 7/8 x 1/8, backset: 2-1/4, "
    "height: 40, above spindle: 1-3/4, spindle: 3/4, keyhole: 5/8, keyhole below: 2-3/4, "
    "strike: 3 x 7/8 x 1/16, box: 2 x 5/8 x 1/2}\n"
)
INCH = 25.4


@pytest.fixture(scope="module")
def job(tmp_path_factory: pytest.TempPathFactory) -> Job:
    design = tmp_path_factory.mktemp("locked") / "design.yaml"
    design.write_text(PAIR.read_text(encoding="utf-8") + LOCK, encoding="utf-8")
    return check(design, user_house=False)


def stile(job: Job, name: str) -> Part:
    assert job.assembly is not None
    return next(part for part in job.assembly.parts if part.name == name)


def named(part: Part, name: str) -> list[Shaped]:
    return [cut for cut in part.cuts if isinstance(cut, Shaped) and cut.name == name]


def test_lock_and_strike_stand_opposite_one_another(job: Job) -> None:
    """The right leaf opens first and has the lock; both recesses are about one height.

    The spindle 40 above the floor, the leaf 1/2 off it: 39-1/2 up the leaf. The body's middle
    and the plate's is 39-1/2 + 1-3/4 - 3 = 38-1/4 up.
    """
    assert not [problem for problem in job.problems if problem.level == "stop"]
    locked, other = stile(job, "leaf B / left stile"), stile(job, "leaf A / right stile")
    trim = 12.0
    for part, name in ((locked, "lock faceplate"), (other, "strike plate")):
        (cut,) = named(part, name)
        us = [vertex.x for vertex in cut.outline]
        assert (min(us) + max(us)) / 2 - trim == pytest.approx(38.25 * INCH)
    assert len(named(locked, "spindle bore")) == 2
    assert not named(stile(job, "leaf A / left stile"), "lock mortise")


def test_a_lock_is_bought_with_its_strike(job: Job) -> None:
    """38-1/4 + 1/2 = 38-3/4 above the floor."""
    assert job.resolved is not None
    (item,) = [one for one in hardware_list(job.resolved, job.loads) if one.what == "mortise lock"]
    assert int(item.number) == 1
    assert item.size == "body 6 × 5/8 × 3 deep, faceplate 8 × 7/8 × 1/8, backset 2-1/4"
    assert "the strike's middle 38-3/4 above the floor, in the other leaf" in item.asked


def test_the_strike_is_found_by_both_measures(job: Job) -> None:
    """Middle of the body: 40 + 1-3/4 - 6/2 = 38-3/4 up; with what is over it, the head's height."""
    assert job.resolved is not None
    door = job.resolved.door
    (place,) = strike_places(door)
    assert (place.leaf, place.into) == ("leaf B", "leaf A")
    assert float(place.up) / INCH == pytest.approx(38.75)
    assert float(place.spindle) / INCH == pytest.approx(40)
    assert float(place.up) + float(place.down) == pytest.approx(float(door.opening.head))


def test_a_lock_is_let_in_once_its_edge_is_planed(job: Job) -> None:
    """Bores before the mortise they open into; the plate last, marked from the lock."""
    assert job.assembly is not None
    titles = [s.title for s in milling_list(job.assembly) if s.when == "after glue-up"]
    order = [t for t in titles if t == "edge bevel" or "bore" in t or t.startswith("lock")]
    assert order[0] == "edge bevel"
    assert order[-2:] == ["lock mortise", "lock faceplate"]
    assert {"keyhole bore", "spindle bore"} == set(order[1:-2])
