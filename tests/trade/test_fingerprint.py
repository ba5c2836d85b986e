"""What the fingerprint of a job knows of, and what it leaves alone."""

from __future__ import annotations

import dataclasses
from pathlib import Path

from parametric.job import check
from parametric.model import Assembly, Group, digest
from parametric.trade.fingerprint import fingerprint


def test_a_band_is_made_and_a_ghost_is_not(reading_room: Path) -> None:
    """A banded edge makes another door; that a picture may ghost a group makes the same one."""
    job = check(reading_room, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    resolved, plain = job.resolved, job.assembly

    def of(*groups: Group) -> str:
        assembly = Assembly(name=plain.name, groups=groups, states=plain.states)
        return fingerprint(resolved, assembly)

    first, *others = plain.groups
    signed = of(first, *others)
    assert of(dataclasses.replace(first, see_through=True), *others) == signed
    stile = dataclasses.replace(first.parts[0], banded=("low edge",))
    banded = dataclasses.replace(first, parts=(stile, *first.parts[1:]))
    assert of(banded, *others) != signed


def test_neither_is_in_a_digest_where_nothing_is_said(reading_room: Path) -> None:
    """Groups and parts have the digests that they had before they could say either."""
    assembly = check(reading_room, user_house=False).assembly
    assert assembly is not None
    group = assembly.groups[0]
    ghosted = dataclasses.replace(group, see_through=True)
    assert (
        digest(dataclasses.replace(ghosted, see_through=False)) == digest(group) != digest(ghosted)
    )
    part = dataclasses.replace(group.parts[0], banded=("low edge",))
    assert digest(dataclasses.replace(part, banded=())) == digest(group.parts[0]) != digest(part)
