"""What lists and checks say of moulded parts, held against the parts and their solids."""

from __future__ import annotations

import dataclasses

import pytest

from parametric.cnc.bench_work import described
from parametric.model import Moulded, Part, removed_volume
from parametric.pack.verifying.bench_words import read_words, said_of, volume_said
from parametric.pack.verifying.expected import centre_of_volume
from parametric.profiles.moulding import Meets
from parametric.trade.machine_work import machine_work
from parametric.trade.moulded_runs import run_sizes, set_up_line
from parametric.trade.twins import mirrored, mirrors
from tests.profiles.corners import WAYS, corner
from tests.profiles.whole_frame import frame


def runs(part: Part) -> list[Moulded]:
    return [cut for cut in part.cuts if isinstance(cut, Moulded)]


@pytest.mark.parametrize(("name", "meets"), WAYS)
def test_the_words_of_a_run_are_read_back(name: str, meets: Meets) -> None:
    made = corner(name, meets, "springs here")
    seen = 0
    for part in made.members:
        for cut in runs(part):
            words = read_words(described(cut, part))
            assert words is not None
            meant = said_of(part, cut)
            assert (words.kind, words.faces) == (meant.kind, meant.faces)
            assert words.sizes == pytest.approx(meant.sizes, abs=6e-4)
            told = volume_said(words, part.blank, (), 0.0)
            assert told == pytest.approx(removed_volume(cut, part.blank), rel=2e-6)
            seen += 1
    assert seen >= 2


@pytest.mark.parametrize("way", ["length", "width", "thickness"])
@pytest.mark.parametrize(("name", "meets"), WAYS)
def test_a_run_in_a_mirror_is_a_run_of_as_much_wood(name: str, meets: Meets, way: str) -> None:
    part = corner(name, meets, "rises into it").rail
    for cut in runs(part):
        image = mirrored(cut, part.blank, way)  # type: ignore[arg-type]
        assert isinstance(image, Moulded)
        assert image != cut
        assert removed_volume(image, part.blank) == pytest.approx(
            removed_volume(cut, part.blank), rel=1e-12
        )
        back = mirrored(image, part.blank, way)  # type: ignore[arg-type]
        assert isinstance(back, Moulded)
        assert [v[:2] for v in back.path] == [pytest.approx(v[:2]) for v in cut.path]


def test_the_two_stiles_of_a_frame_are_a_left_and_a_right() -> None:
    left, right = frame("ovolo", "mitred")[:2]
    assert mirrors(left, right)
    assert not mirrors(left, dataclasses.replace(right, cuts=right.cuts[1:]))


@pytest.mark.kernel
@pytest.mark.parametrize("head", ["straight", "springs here", "half round"])
@pytest.mark.parametrize(("name", "meets"), [("ogee", "coped"), ("bead", "mitred")])
def test_the_middle_of_a_moulded_part_is_the_solids(name: str, meets: Meets, head: str) -> None:
    from OCP.BRepGProp import BRepGProp
    from OCP.GProp import GProp_GProps

    from parametric.solids.shape import part_solid

    for part in corner(name, meets, head).members:  # type: ignore[arg-type]
        found = GProp_GProps()
        BRepGProp.VolumeProperties_s(part_solid(part), found)
        middle = found.CentreOfMass()
        expected = (middle.X(), middle.Y(), middle.Z())
        assert centre_of_volume(part) == pytest.approx(expected, abs=1e-5)


def test_a_set_up_says_profile_size_edge_and_when() -> None:
    made = corner("ovolo", "coped", "straight")
    part = dataclasses.replace(
        made.rail, faces={"low edge": "lower edge", "low end": "left end", "high face": "face"}
    )
    cope, run = runs(part)
    assert set_up_line(run, part) == (
        "ovolo 12 x 12 along the lower edge, on the face: ovolo cutter, along the fence; "
        "before glue-up"
    )
    assert set_up_line(cope, part) == (
        "ovolo, negative 12 x 44 along the left end, on the face: coping cutter, ovolo, on the "
        "end of the blank; before glue-up"
    )
    # the run is 400 long between shoulders, and out over the cope: 2 (12 - fillet) past at most
    sizes = run_sizes(run, part.blank)
    assert (sizes.low, sizes.high) == (pytest.approx(0.0), pytest.approx(412.0))
    assert (sizes.beside, sizes.ends) == ("low edge", "coped, open")
    ((work, word, _),) = machine_work(run, part)
    assert (work.title, work.width, work.depth, word) == ("ovolo", 12.0, 12.0, "lower edge, face")
