"""The joints of Larch Hill: the two slots of a pair lie on one axis and meet at the shoulder."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.job import check
from parametric.model import Group, Part, Slot, Vector, face_point

DESIGN = Path(__file__).parents[2] / "examples/larch-hill-reading-room/design.yaml"

Axis = tuple[Vector, Vector, float, float]


def axes(part: Part) -> list[Axis]:
    """Mouth, bottom, length and width of every slot, in the leaf's frame."""
    found = []
    for cut in part.cuts:
        if isinstance(cut, Slot):
            middle = (cut.u0 + cut.u1) / 2
            mouth, bottom = (
                part.placement.point(face_point(cut.face, part.blank, middle, cut.v, depth))
                for depth in (0.0, float(cut.depth))
            )
            found.append((mouth, bottom, float(cut.u1 - cut.u0), float(cut.width)))
    return found


def leaves() -> list[Group]:
    job = check(DESIGN, user_house=False)
    assert job.assembly is not None
    return [group for group in job.assembly.groups if group.name.startswith("leaf")]


@pytest.mark.parametrize("letter", ["A", "B"])
def test_slot_pairs_are_coaxial(letter: str) -> None:
    (leaf,) = (group for group in leaves() if group.name == f"leaf {letter}")
    stiles = [a for p in leaf.parts if p.name.endswith("stile") for a in axes(p)]
    rails = [a for p in leaf.parts if p.name.endswith("rail") for a in axes(p)]
    assert len(stiles) == len(rails) == 10
    for mouth, bottom, length, width in rails:
        pairs = [s for s in stiles if s[0] == pytest.approx(mouth, abs=1e-9)]
        assert len(pairs) == 1, mouth
        _, other, other_length, other_width = pairs[0]
        assert (length, width) == (other_length, other_width)
        # One runs on where the other ends: the same line, opposite ways, across the leaf only.
        assert other[1:] == pytest.approx(bottom[1:], abs=1e-9)
        assert other[0] - mouth[0] == pytest.approx(mouth[0] - bottom[0], abs=1e-9)


@pytest.mark.parametrize("letter", ["A", "B"])
def test_a_tenon_lies_in_the_middle_of_every_pair(letter: str) -> None:
    (leaf,) = (group for group in leaves() if group.name == f"leaf {letter}")
    mouths = [a[0] for p in leaf.parts if p.name.endswith("rail") for a in axes(p)]
    middles = [
        p.placement.point(
            (float(p.blank.length) / 2, float(p.blank.width) / 2, float(p.blank.thickness) / 2)
        )
        for p in leaf.parts
        if p.noun == "loose tenon"
    ]
    assert len(middles) == len(mouths) == 10
    for mouth in mouths:
        assert any(m == pytest.approx(mouth, abs=1e-9) for m in middles)
