"""Screw pockets alone, on a blank no two sides of which are alike: two cylinders cut off aslant.

A cylinder of radius r cut off by a plane aslant is as long as its axis: the wedge on the one side
fills what is missing on the other (geometry).
"""

from __future__ import annotations

import math

import pytest

from parametric.cnc.bench_work import bench_work
from parametric.model import (
    Assembly,
    Blank,
    Group,
    Making,
    Material,
    Part,
    Placement,
    ScrewPocket,
    removed_volume,
)
from parametric.pack.verifying.bench_words import read_words, said_of, volume_said
from parametric.pack.verifying.expected import centre_of_volume
from parametric.trade.twins import mirrored
from tests.solids.test_cuts import Case, hold

BLANK = Blank(length=300.0, width=120.0, thickness=18.0)
TURN = math.radians(15)
MOUTH, DEEP = 9 / math.tan(TURN), 4.75 / math.tan(TURN) + 1


def pocket(**numbers: object) -> ScrewPocket:
    sizes: dict[str, object] = {
        "face": "low face",
        "end": "low end",
        "mouth": MOUTH,
        "v": 30.0,
        "angle": 15.0,
        "wide": 9.5,
        "deep": DEEP,
        "pilot": 4.0,
        "count": 2,
        "pitch": 45.0,
        "making": Making(by="bench", tool="pocket jig"),
    }
    return ScrewPocket(name="screw pocket", **{**sizes, **numbers})  # type: ignore[arg-type]


def part_of(cut: ScrewPocket) -> Part:
    return Part(
        name="rail",
        noun="frame rail",
        mark="Y1",
        material=Material(name="ash", look="timber", density=640),
        blank=BLANK,
        placement=Placement(),
        cuts=(cut,),
    )


def test_its_volume_by_hand() -> None:
    """18.727 of 9.5 dia and 34.773 - 18.727 = 16.046 of 4 dia: 1327.4 + 201.6 = 1529.1, twice."""
    each = math.pi / 4 * (9.5**2 * 18.7273 + 4**2 * 16.0463)
    assert each == pytest.approx(1529.1, abs=0.1)
    assert removed_volume(pocket(), BLANK) == pytest.approx(2 * each, rel=1e-5)


@pytest.mark.kernel
@pytest.mark.parametrize("face", ["low face", "high face"])
@pytest.mark.parametrize("end", ["low end", "high end"])
def test_its_body(face: str, end: str) -> None:
    """Two walls and a floor each; wood and air about its axis: in the pocket half its depth down, in
    the pilot 25 along the axis, beside both; its middle where integrals over the disc have it.
    """
    from OCP.BRepGProp import BRepGProp
    from OCP.GProp import GProp_GProps

    from parametric.solids.shape import part_solid

    def at(along: float, below: float, across: float) -> tuple[float, float, float]:
        x = MOUTH - along * math.cos(TURN) + below * math.sin(TURN)
        z = along * math.sin(TURN) + below * math.cos(TURN)
        return (
            x if end == "low end" else 300.0 - x,
            across,
            z if face == "low face" else 18.0 - z,
        )

    cut = pocket(face=face, end=end)
    hold(
        Case(
            label="pockets",
            cuts=(cut,),
            removed=removed_volume(cut, BLANK),
            faces=6 + 2 * 3,
            gone=tuple(
                point
                for across in (30.0, 75.0)
                for point in (
                    at(10, 0, across),
                    at(18.6, 4.6, across),
                    at(25, 0, across),
                    at(25, 1.9, across),
                )
            ),
            left=(
                *(
                    point
                    for across in (30.0, 75.0)
                    for point in (at(18.9, 3, across), at(25, 2.1, across), at(10, 4.9, across))
                ),
                at(25, 0, 52.5),
                (150.0, 30.0, 9.0),
            ),
            size=(300.0, 120.0, 18.0),
        )
    )
    part = part_of(cut)
    measured = GProp_GProps()
    BRepGProp.VolumeProperties_s(part_solid(part), measured)
    middle = measured.CentreOfMass()
    assert (middle.X(), middle.Y(), middle.Z()) == pytest.approx(centre_of_volume(part), abs=1e-6)


def test_its_images_are_made_back_to_front() -> None:
    """Over the thickness, end for end, and across: 120 - 30 - 45 = 45 is then the first."""
    own = pocket()
    over = mirrored(own, BLANK, "thickness")
    turned = mirrored(own, BLANK, "length")
    across = mirrored(own, BLANK, "width")
    assert isinstance(over, ScrewPocket)
    assert isinstance(turned, ScrewPocket)
    assert isinstance(across, ScrewPocket)
    assert (over.face, turned.end, across.v) == ("high face", "high end", 45.0)
    assert mirrored(across, BLANK, "width") == own


@pytest.mark.parametrize("count", [1, 2])
def test_the_bench_list_says_all_of_it(count: int) -> None:
    """Read back word by word, what it says takes as much wood."""
    part = part_of(pocket(count=count, pitch=45.0 if count > 1 else 0.0))
    group = Group(name="run", placement=Placement(), parts=(part,))
    (line,) = bench_work(Assembly(name="job", groups=(group,), states=()))
    said = read_words(line.what)
    assert said is not None
    wanted = said_of(part, part.cuts[0])
    assert (said.kind, said.faces) == (wanted.kind, wanted.faces)
    assert said.sizes == pytest.approx(wanted.sizes, abs=6e-4)
    taken = volume_said(said, BLANK, (), 0.0)
    assert taken == pytest.approx(removed_volume(part.cuts[0], BLANK), rel=1e-4)
