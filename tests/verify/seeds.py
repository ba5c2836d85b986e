"""Ways to spoil a file: by making it anew from altered work, or by altering what is written."""

from __future__ import annotations

import dataclasses
import itertools
import json
import struct
from collections.abc import Callable

from parametric.cnc.operations import Operation
from parametric.cnc.setups import SetUp, set_ups
from parametric.model import Assembly, Cut, Part
from parametric.outlines import Outline, Vertex
from tests.verify.lopsided import assembly, cutting, written

Files = dict[str, bytes]


def spoiled_cut(name: str, change: Callable[[Cut], Cut]) -> Files:
    """Machine files and lists of a leaf in which one cut is another: whole in themselves, and wrong."""

    def altered(part: Part) -> Part:
        cuts = tuple(change(cut) if cut.name == name else cut for cut in part.cuts)
        return dataclasses.replace(part, cuts=cuts)

    return cutting(altered_parts(altered))


def altered_parts(change: Callable[[Part], Part]) -> Assembly:
    whole = assembly()
    groups = tuple(
        dataclasses.replace(group, parts=tuple(change(part) for part in group.parts))
        for group in whole.groups
    )
    return dataclasses.replace(whole, groups=groups)


def set_up(file: str) -> SetUp:
    return next(one for one in set_ups(assembly()) if one.file == file)


def spoiled_set_up(file: str, change: Callable[[SetUp], SetUp]) -> Files:
    """The files of the leaf, one of them written from an altered set-up."""
    return {**cutting(), f"cnc/{file}": written(change(set_up(file)))}


def with_operations(change: Callable[[Operation], Operation | None]) -> Callable[[SetUp], SetUp]:
    """Every operation of a set-up changed, or left out."""

    def changed(one: SetUp) -> SetUp:
        kept = tuple(made for op in one.operations if (made := change(op)) is not None)
        return dataclasses.replace(one, operations=kept)

    return changed


def mirrored(outline: Outline, width: float) -> Outline:
    """An outline as a mirror along y = width / 2 shows it, counter-clockwise again."""
    over = [Vertex(v.x, width - v.y, v.bulge) for v in outline][::-1]
    bulges = [v.bulge for v in over[1:] + over[:1]]
    return tuple(v._replace(bulge=b) for v, b in zip(over, bulges, strict=True))


def shifted(outline: Outline, x: float, y: float) -> Outline:
    return tuple(v._replace(x=v.x + x, y=v.y + y) for v in outline)


def spoiled_text(file: str, old: str, new: str, times: int = -1) -> Files:
    """The files of the leaf, one of them with some of its text changed."""
    whole = cutting()
    text = whole[f"cnc/{file}"].decode()
    assert old in text, old
    return {**whole, f"cnc/{file}": text.replace(old, new, times).encode()}


def spoiled_entity(
    file: str, layer: str, change: Callable[[list[tuple[str, str]]], list[tuple[str, str]]]
) -> Files:
    """The files of the leaf, the first outline on a layer of one of them changed, code by code."""
    whole = cutting()
    whole[f"cnc/{file}"] = changed_entity(whole[f"cnc/{file}"], "LWPOLYLINE", layer, change)
    return whole


def changed_entity(
    data: bytes,
    kind: str,
    layer: str,
    change: Callable[[list[tuple[str, str]]], list[tuple[str, str]]],
) -> bytes:
    lines = data.decode().split("\n")
    tags = list(zip(lines[::2], lines[1::2], strict=False))
    starts = [i for i, (code, _) in enumerate(tags) if code.strip() == "0"]
    for start, end in itertools.pairwise(starts):
        entity = tags[start:end]
        if entity[0][1] == kind and ("  8", layer) in entity:
            tags[start:end] = change(entity)
            break
    else:
        raise AssertionError(f"no {kind} on {layer}")
    return ("\n".join(line for tag in tags for line in tag) + "\n").encode()


def changed_scene(data: bytes, change: Callable[[dict[str, object], bytearray], None]) -> bytes:
    """A binary glTF file with its description and its numbers changed."""
    length = struct.unpack_from("<I", data, 12)[0]
    scene = json.loads(data[20 : 20 + length])
    binary = bytearray(data[28 + length :])
    change(scene, binary)
    text = json.dumps(scene).encode()
    text += b" " * (-len(text) % 4)
    body = struct.pack("<I4s", len(text), b"JSON") + text
    body += struct.pack("<I4s", len(binary), b"BIN\0") + bytes(binary)
    return b"glTF" + struct.pack("<II", 2, 12 + len(body)) + body
