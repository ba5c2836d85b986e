"""Places to stand in the client's house: read as written, and what cannot be is told on its line."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.design.settings import ClientSpec
from parametric.job import check
from parametric.pack.preview import preview_page
from parametric.problems import Problem
from parametric.writers.client_page import OwnPlace


def job_with(reading_room: Path, folder: Path, client: str):
    text = reading_room.read_text(encoding="utf-8")
    path = folder / "design.yaml"
    path.write_text(text.replace("sheet: {", f"{client}\nsheet: {{", 1), encoding="utf-8")
    return check(path, user_house=False)


def stops(reading_room: Path, folder: Path, client: str) -> list[Problem]:
    return [p for p in job_with(reading_room, folder, client).problems if p.level == "stop"]


def test_places_are_read_in_either_shape(reading_room, tmp_path):
    """3200 mm as it stands, and 10 ft: 10 x 304.8 = 3048 mm."""
    done = job_with(
        reading_room,
        tmp_path,
        "client:\n  from:\n    the stairs: standing, 3200, left\n    the bench: [seated, 10', middle]",
    )
    assert done.resolved is not None
    client = done.resolved.design.block("client")
    assert isinstance(client, ClientSpec)
    assert client.from_ is not None
    assert {
        name: (place.posture, float(place.distance), place.side)
        for name, place in client.from_.items()
    } == {
        "the stairs": ("standing", 3200.0, "left"),
        "the bench": ("seated", pytest.approx(3048), "middle"),
    }
    page = preview_page(done.resolved, done.loads, fingerprint="0" * 64, elevations=("",))
    assert page.places == (
        OwnPlace(name="the stairs", seated=False, far=3200.0, side="left"),
        OwnPlace(name="the bench", seated=True, far=pytest.approx(3048), side="middle"),
    )


@pytest.mark.parametrize(
    ("written", "says"),
    [
        ("standing, 3200", 'A place to stand is written "standing, 3200, left"'),
        ("flying, 3200, left", '"flying" does not fit here'),
        ("standing, 3200, above", '"above" does not fit here'),
        ("standing, 590, left", "590 from the doors is not where one can stand"),
        ("standing, 6001, left", "6001 from the doors is not where one can stand"),
        ("standing, 3 moons, left", '"3 moons" is not a length'),
        ("{seated: 3200}", "A place to stand takes standing or seated"),
    ],
)
def test_what_is_no_place_is_told_on_its_line(reading_room, tmp_path, written, says):
    (problem,) = stops(reading_room, tmp_path, f"client:\n  from:\n    the stairs: {written}")
    assert says in problem.message
    assert problem.where is not None
    line = (tmp_path / "design.yaml").read_text().splitlines()[problem.where.line - 1]
    assert line.strip().startswith(("the stairs:", "from:"))


def test_more_places_than_a_phone_has_room_for(reading_room, tmp_path):
    rows = "".join(f"\n    place {n}: standing, 3000, middle" for n in range(5))
    (problem,) = stops(reading_room, tmp_path, f"client:\n  from:{rows}")
    assert "room for 4 places" in problem.message
    assert stops(reading_room, tmp_path, "client:\n  from:" + rows.rpartition("\n")[0]) == []


def test_from_may_be_left_blank(reading_room, tmp_path):
    assert stops(reading_room, tmp_path, "client:\n  from:") == []
