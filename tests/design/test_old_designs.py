"""Designs of every version of the language open for ever and say what they said.

Beside each file in tests/designs/old stands what it says: every value under its block and key,
in mm, kg and per cent, as the first tool that read it understood it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from parametric.cases.at_least import AtLeast
from parametric.design import load
from parametric.design.language import KINDS, NEWEST, PLAIN, keys_of, specs
from parametric.design.leaf import Band
from parametric.design.places import EyePoint
from parametric.design.survey import Taken
from parametric.figures import Figure, plain
from parametric.written import Block, Equal, Group, NotMeasured, Parts, Rest

OLD = sorted((Path(__file__).parents[1] / "designs" / "old").glob("*.yaml"))


def said(value: Any) -> str:
    """A value as a line of text, whatever class later versions hold it in."""
    match value:
        case Figure():
            return ("about " if value.about else "") + plain(value)
        case NotMeasured():
            return "not measured"
        case Equal():
            return "equal"
        case Rest():
            return "rest"
        case AtLeast():
            return f"at least {plain(value.least)}"
        case Parts():
            return f"{plain(value.count)} parts"
        case Band():
            beside = [k for k in ("tenons", "centre") if getattr(value, k) is not None]
            more = "".join(f", {key} {said(getattr(value, key))}" for key in beside)
            return f"{value.kind} {said(value.size)}{more}"
        case Taken():
            return f"{value.place} {said(value.reading)}"
        case EyePoint():
            return f"{value.posture}, {said(value.distance)}, {value.side}"
        case Group():
            fields = type(value).model_fields
            written = [k for k in fields if getattr(value, k) is not None]
            return ", ".join(f"{k} {said(getattr(value, k))}" for k in written)
        case dict():
            return ", ".join(f"{k} {said(v)}" for k, v in value.items())
        case tuple() | list():
            return "; ".join(said(v) for v in value)
        case _:
            return str(value)


def listed(blocks: dict[tuple[str, str], Block]) -> Iterator[str]:
    for (kind, name), block in sorted(blocks.items()):
        for field in sorted(type(block).model_fields):
            if (value := getattr(block, field)) is not None:
                yield f"{kind} / {name} / {field.replace('_', ' ').strip()} = {said(value)}"
        for field, value in sorted((block.model_extra or {}).items()):
            yield f"{kind} / {name} / {field} = {said(value)}"


@pytest.mark.parametrize("path", OLD, ids=lambda p: p.stem)
def test_it_says_what_it_said(path: Path) -> None:
    found = load(path, user_house=False)
    assert found.design is not None, [p.message for p in found.problems]
    records = found.design.records
    lines = [
        *listed(dict(found.design.blocks)),
        *(f"revision {r.letter} = {r.date} {r.reason}" for r in found.design.revisions),
        *(f"accepted {a.caution} = {a.initials} {a.date} {a.reason}" for a in records.accepted),
        *(f"as built {name} = {said(sizes)}" for name, sizes in records.as_built.items()),
        f"cut = {said(records.cut)}",
    ]
    actual = "\n".join(lines) + "\n"
    expected = path.with_suffix(".txt")
    if not expected.exists() or expected.read_text(encoding="utf-8") != actual:
        expected.with_suffix(".actual.txt").write_text(actual, encoding="utf-8")
    assert actual == expected.read_text(encoding="utf-8")


def test_there_is_one_of_every_version() -> None:
    versions = {
        int(version)
        for path in OLD
        for version in re.findall(
            r"^stilewright: (\d+)", path.read_text(encoding="utf-8"), re.MULTILINE
        )
    }
    assert versions == set(range(1, NEWEST + 1))


def test_the_newest_has_every_key_that_builds() -> None:
    """A key that no old file holds could be lost without anybody noticing."""
    files = [path for path in OLD if path.stem.startswith(f"version-{NEWEST}")]
    designs = [found.design for path in files if (found := load(path, user_house=False)).design]
    assert len(designs) == len(files)
    for kind in (*KINDS, *PLAIN):
        blocks = [block for design in designs for block in design.named(kind).values()]
        assert blocks, kind
        written = {key for block in blocks for key in block._origins}
        for spec in specs(kind):
            keys = set(keys_of(spec)) - {"like", "note", "pinned", "set carries"}
            if kind in ("guide", "pull"):
                keys -= {"measured", "maker mark", "price"}
            assert keys <= written, (kind, keys - written)
