"""Layer names in a workshop's own words: written by one code, read back by another.

Whatever the block of settings lets through must name each kind and depth alone, read back
to the same sizes, and be no longer than 31 letters: the longest symbol name that every
reader of DXF takes (published DXF reference, before extended names; from memory).
"""

from __future__ import annotations

import dataclasses
import itertools
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from parametric.catalog.defaults import DEFAULTS
from parametric.catalog.layer_names import LONGEST, OURS, CutKind, LayerNames
from parametric.cnc.layer_names import layer_name
from parametric.cnc.notes import Stamp
from parametric.cnc.setups import set_ups
from parametric.design.layer_names import LayerNamesSpec, layer_names
from parametric.pack.verifying.layers_read import read_layer
from parametric.writers.dxf import write_cnc_dxf
from tests.cnc.pieces import reading_room
from tests.readers.cnc_dxf import read

KINDS: tuple[CutKind, ...] = get_args(CutKind)
HABITS = {key: default.text for key, default in DEFAULTS["layer names"].items()}


def named(**changes: str) -> LayerNames:
    written = {**HABITS, **{key.replace("_", " "): text for key, text in changes.items()}}
    return layer_names(LayerNamesSpec.model_validate(written))


def test_the_habit_is_the_tools_own() -> None:
    assert named() == OURS
    assert [layer_name(OURS, kind, 14.2, 6.0) for kind in KINDS] == [
        "slot_d14.2",
        "pocket_d14.2",
        "groove_d14.2",
        "bore_d14.2",
        "cut_through",
    ]


@pytest.mark.parametrize(
    ("changes", "pocket", "through"),
    [
        ({}, "pocket_d14.2", "cut_through"),
        ({"order": "depth kind", "depth_mark": "none"}, "14.2_pocket", "cut_through"),
        ({"order": "kind depth cutter"}, "pocket_d14.2_c6", "cut_through_c6"),
        ({"order": "cutter kind depth", "between": "hyphen"}, "c6-pocket-d14.2", "c6-cut_through"),
        ({"decimal_sign": "p", "between": "nothing"}, "pocketd14p2", "cut_through"),
        ({"pocket": "Tasche", "through": "Durch", "depth_mark": "T"}, "Tasche_T14.2", "Durch"),
    ],
)
def test_names_as_a_workshop_wants_them(changes: dict[str, str], pocket: str, through: str) -> None:
    names = named(**changes)
    assert layer_name(names, "pocket", 14.2, 6.0) == pocket
    assert layer_name(names, "cut_through", 40.0, 6.0) == through


WORDS = st.from_regex(r"\A[A-Za-z](?:[A-Za-z_-]{0,6}[A-Za-z])?\Z")
MARKS = st.one_of(st.just("none"), st.from_regex(r"\A[A-Za-z]{1,3}\Z"))
SIZES = st.integers(1, 999_999_999).map(lambda n: n / 1e6)


@st.composite
def settings(draw: st.DrawFn) -> LayerNames:
    """Any settings that the block lets through."""
    fields = LayerNamesSpec.model_fields
    written = {
        key.replace("_", " "): draw(st.sampled_from(get_args(fields[key].annotation)))
        for key in ("order", "between", "decimal_sign")
    }
    written |= {key: draw(MARKS) for key in ("depth mark", "cutter mark")}
    words = [*KINDS[:-1], "through", "stock", "datum", "notes"]
    written |= {key: draw(WORDS) for key in words}
    try:
        return layer_names(LayerNamesSpec.model_validate(written))
    except ValidationError:
        return OURS


@given(settings(), SIZES, SIZES, st.integers(1, 99_999_999).map(lambda n: n / 1e6))
def test_what_is_written_reads_back_in_one_way(
    names: LayerNames, depth: float, other: float, cutter: float
) -> None:
    made = {
        (kind, None if kind == "cut_through" else deep): layer_name(names, kind, deep, cutter)
        for kind, deep in itertools.product(KINDS, {depth, other})
    }
    folded = [name.casefold() for name in made.values()]
    plain = [word.casefold() for word in (names.stock, names.datum, names.notes)]
    assert len(set(folded)) == len(folded)
    assert not set(folded) & set(plain)
    assert max(map(len, folded)) <= LONGEST
    for (kind, deep), name in made.items():
        said = read_layer(name, names)
        assert said is not None
        assert (said.kind, said.depth) == (kind, deep)
        assert said.cutter == (cutter if "cutter" in names.order else None)


def test_depths_a_hair_apart_have_layers_of_their_own() -> None:
    """9/16 in is 14.2875 mm, 0.0005 from what a thousandth would print."""
    assert layer_name(OURS, "pocket", 14.2875, 6) == "pocket_d14.2875"
    assert layer_name(OURS, "pocket", 14.287, 6) != layer_name(OURS, "pocket", 14.2875, 6)


def test_a_cutter_in_the_name_keeps_two_cutters_apart() -> None:
    """Without it what shares a layer shares the smaller cutter; with it each keeps its own."""
    room = reading_room()
    stile = room.groups[0].parts[0]
    first, *others = stile.cuts
    smaller = dataclasses.replace(first, making=dataclasses.replace(first.making, cutter=10.0))
    group = dataclasses.replace(
        room.groups[0], parts=(dataclasses.replace(stile, cuts=(smaller, *others)),)
    )
    alone = dataclasses.replace(room, groups=(group,))
    for names, wanted in (
        (named(), {"slot_d46": 10.0}),
        (named(order="kind depth cutter"), {"slot_d46_c10": 10.0, "slot_d46_c12": 12.0}),
    ):
        made = next(s for s in set_ups(alone, (), names) if s.mark == "S1")
        assert {op.layer: op.cutter for op in made.operations if op.kind == "slot"} == wanted


def test_the_files_carry_them_and_nothing_else_changes() -> None:
    """The same outlines at the same depths, on layers of other names."""
    names = named(order="depth kind", slot="mortise", stock="blank", notes="words", datum="zero")
    stamp = Stamp(job="Larch Hill", fingerprint="7C1F-04AB", revision="B")
    for ours, theirs in zip(
        set_ups(reading_room()), set_ups(reading_room(), (), names), strict=True
    ):
        mine, data = write_cnc_dxf(ours, stamp), write_cnc_dxf(theirs, stamp)
        assert b"mortise" in data if "inner-edge" in ours.file else True
        for word in (b"\nstock\n", b"\nnotes\n", b"\ndatum\n", b"slot_"):
            assert word not in data
        back = data.decode()
        for op, own in zip(theirs.operations, ours.operations, strict=True):
            back = back.replace(op.layer, own.layer)
        for word, own in (("blank", "stock"), ("words", "notes"), ("zero", "datum")):
            back = back.replace(f"\n{word}\n", f"\n{own}\n")
        assert read(back.encode()).removals == read(mine).removals
