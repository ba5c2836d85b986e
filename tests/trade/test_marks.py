"""Marks: one for pieces of one size, whatever the last bit of a sum says; two for two sizes."""

from __future__ import annotations

import dataclasses
import math

import pytest

from parametric.cnc.setups import part_types
from parametric.model import (
    Assembly,
    Blank,
    Cut,
    Group,
    Making,
    Material,
    Part,
    Placement,
    Slot,
    alike,
    same_shape,
    shape_key,
)
from parametric.parts.assembly import marked
from parametric.trade.twins import alike_both_sides, mirrors
from parametric.writers.bookcase import dice

ASH = Material(name="ash", density=650.0, look="ash")
# 30-1/128 in is 762 + 25.4/128 = 762.1984375: the seventh place is a 5, and what comes before or
# after it by a bit of the machine is rounded to another millionth.
TIE = 762.1984375
LESS, MORE = math.nextafter(TIE, 0.0), math.nextafter(TIE, 1e4)


def slot(at: float) -> Slot:
    return Slot(
        name="slot",
        face="low edge",
        u0=at,
        u1=at + 60.0,
        v=20.0,
        width=12.0,
        depth=40.0,
        making=Making(by="router", when="before glue-up", tool="12 cutter"),
    )


def rail(name: str, length: float, *cuts: Cut, material: Material = ASH) -> Part:
    return Part(
        name=name,
        noun="rail",
        mark="R",
        material=material,
        blank=Blank(length=length, width=100.0, thickness=40.0),
        placement=Placement(),
        cuts=cuts,
    )


def group(*parts: Part) -> Group:
    return Group(name="leaf A", placement=Placement(), parts=parts)


def marks(*parts: Part) -> list[str]:
    return [part.mark for part in marked([group(*parts)])[0].parts]


def test_a_size_on_the_border_has_two_keys_and_one_mark() -> None:
    below, above = rail("one", LESS), rail("other", MORE)
    assert shape_key(below) != shape_key(above)
    assert marks(below, above) == ["R1", "R1"]


@pytest.mark.parametrize("order", [(LESS, TIE, MORE), (MORE, LESS, TIE)])
def test_in_whichever_order_they_come(order: tuple[float, ...]) -> None:
    assert marks(*(rail(str(i), size) for i, size in enumerate(order))) == ["R1"] * 3


def test_a_cut_on_the_border_too() -> None:
    assert marks(rail("one", 800.0, slot(LESS - 700)), rail("other", 800.0, slot(MORE - 700))) == [
        "R1",
        "R1",
    ]


def test_what_the_rule_could_still_tell_apart_has_two_marks() -> None:
    """Half a millionth apart is one size, two millionths are two; so are other cuts and timbers."""
    oak = dataclasses.replace(ASH, name="oak")
    assert marks(rail("a", 800.0), rail("b", 800.0000005), rail("c", 800.000002)) == [
        "R1",
        "R1",
        "R2",
    ]
    assert marks(rail("a", 800.0), rail("b", 800.0, slot(50.0)), rail("c", 800.0)) == [
        "R1",
        "R2",
        "R1",
    ]
    assert marks(rail("a", 800.0), rail("b", 800.0, material=oak)) == ["R1", "R2"]


def test_one_mark_is_one_type_for_the_machine() -> None:
    made = marked([group(rail("one", LESS), rail("other", MORE))])
    assembly = Assembly(name="trial", groups=tuple(made), states=())
    (only,) = part_types(assembly)
    assert [twin.name for twin in only.twins] == ["other"]


def test_a_mirror_is_no_matter_of_the_last_bit_either() -> None:
    """A slot 50 from one end and its image 50 from the other of a rail on the border."""
    left, right = rail("left", LESS, slot(50.0)), rail("right", MORE, slot(MORE - 110.0))
    assert mirrors(left, right)
    assert not mirrors(left, rail("right", MORE, slot(MORE - 110.001)))
    assert alike_both_sides(rail("a", LESS, slot(50.0)))


def test_alike_is_no_likeness_of_kind() -> None:
    assert not alike(Blank(length=1.0, width=1.0, thickness=1.0), (1.0, 1.0, 1.0))
    assert not alike((1.0, 2.0), (1.0, 2.0, 3.0))
    assert not alike("slot", 1.0)


def test_what_is_banded_otherwise_is_another_type() -> None:
    """One solid serves for both, but the shop bands one along its front and leaves the other bare."""
    plain = rail("a", 800.0)
    banded = dataclasses.replace(plain, name="b", banded=("low edge",))
    assert shape_key(plain) == shape_key(banded)
    assert marks(plain, banded, dataclasses.replace(banded, name="c")) == ["R1", "R2", "R2"]


def test_twins_are_found_as_by_holding_each_against_each() -> None:
    """Rails about borders of a ten-thousandth, in every order that a small die throws."""
    lengths = [800.0 + k * 3e-7 for k in range(-40, 41)]
    random = dice(3)
    for _ in range(5):
        thrown = sorted(lengths, key=lambda _: next(random))
        parts = [rail(str(i), size, slot(60.0 + size / 7)) for i, size in enumerate(thrown)]
        firsts: list[Part] = []
        plainly = []
        for part in parts:
            same = [i for i, first in enumerate(firsts, 1) if same_shape(first, part)]
            if not same:
                firsts.append(part)
            plainly.append(f"R{same[0] if same else len(firsts)}")
        assert marks(*parts) == plainly
        assert len(firsts) > 8
