"""Each part rebuilt from paper: blank, less the machine files, less the saw and bench list.

What is left must be the part. The list itself is held against the part cut by cut, so
that nothing is dropped and no size is said wrong; and so is the list of cutters against
the machine files.
"""

from __future__ import annotations

import csv
import dataclasses
import io
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from parametric.model import Cut, Groove, Part, Shaped
from parametric.pack.verifying.bench_words import Said, read_words, said_of, volume_said
from parametric.pack.verifying.expected import by_router, in_some_file
from parametric.pack.verifying.hollows import hollow
from parametric.pack.verifying.known import Known, Verdict
from parametric.pack.verifying.machine_file import PRINTED, MachineFile, Taken
from parametric.pack.verifying.machine_files import Machined, face_called, machine_files

TRUST = 1e-6
"""How far what is left may be from the part, relative to its blank: sizes in words are
printed to a thousandth of a millimetre."""

TOOLS = "cnc/tool-list.csv"
BENCH = "cnc/saw-and-bench-work.csv"


def check_cutting(files: Mapping[str, bytes], known: Known) -> Verdict:
    """Machine files, cutters, saw and bench list: do they make the parts?

    Args:
        files: the files of the pack by their path.
        known: the design.
    """
    drawn = {
        path.removeprefix("cnc/"): data
        for path, data in files.items()
        if path.startswith("cnc/") and path.endswith(".dxf")
    }
    machined = machine_files(drawn, known)
    faults = [*machined.faults]
    listed: list[_Line] = []
    faults += [f"{path} is missing" for path in (TOOLS, BENCH) if path not in files]
    if TOOLS in files:
        faults += _cutters(files[TOOLS], machined.files)
    if BENCH in files:
        listed, problems = _lines(files[BENCH])
        faults += problems
        faults += _list_against_parts(listed, known)
    rebuilt = 0
    for parts in _cut_here(known).values():
        own = [line for line in listed if line.mark == parts[0].mark]
        for part in parts:
            rebuilt += 1
            faults += _rebuilt(part, own, machined)
    return Verdict(
        looked_at={
            "files": len(machined.files),
            "outlines": machined.outlines,
            "saw and bench cuts": len(listed),
            "parts rebuilt": rebuilt,
        },
        faults=tuple(faults),
    )


def rows(data: bytes) -> list[dict[str, str]]:
    """A table of comma-separated values, each row by its headings."""
    return list(csv.DictReader(io.StringIO(data.decode("utf-8"), newline="")))


# --- the saw and bench list ----------------------------------------------------------------


@dataclass(frozen=True, slots=True, kw_only=True)
class _Line:
    """One line of the list."""

    mark: str
    count: str
    cut: str
    by: str
    when: str
    said: Said


def _lines(data: bytes) -> tuple[list[_Line], list[str]]:
    found: list[_Line] = []
    faults: list[str] = []
    for row in rows(data):
        said = read_words(row.get("what", ""))
        if said is None:
            faults.append(f'{BENCH}: "{row.get("what", "")}" says no cut that can be read')
            continue
        found.append(
            _Line(
                mark=row.get("mark", ""),
                count=row.get("count", ""),
                cut=row.get("cut", ""),
                by=row.get("by", ""),
                when=row.get("when", ""),
                said=said,
            )
        )
    return found, faults


def _list_against_parts(listed: Sequence[_Line], known: Known) -> Iterator[str]:
    """Every cut that no machine file makes, once, as the part has it; and none besides."""
    left = list(listed)
    for mark, parts in _cut_here(known).items():
        for cut in parts[0].cuts:
            wanted = _wanted(parts[0], cut)
            if wanted is None:
                continue
            by = "bench" if wanted.kind == "chop" else cut.making.by
            same = [
                line
                for line in left
                if (line.mark, line.cut, line.by, line.when)
                == (mark, cut.name, by, cut.making.when)
                and line.said.kind == wanted.kind
            ]
            exact = next((line for line in same if _agree(line.said, wanted)), None)
            line = exact or next(iter(same), None)
            if line is None:
                yield f"{BENCH}: {cut.name} of {mark} is missing"
                continue
            left.remove(line)
            if exact is None:
                yield f"{BENCH}: {cut.name} of {mark} says {_told(line.said)}, the part has {_told(wanted)}"
            if line.count != str(len(parts)):
                yield f"{BENCH}: {cut.name} of {mark} is {line.count} off, and there are {len(parts)}"
    for line in left:
        yield f"{BENCH}: {line.cut} of {line.mark} is not in the part"


def _cut_here(known: Known) -> dict[str, list[Part]]:
    """All but shaped panes: the glazier cuts them, and they are held against their own outlines."""
    return {
        mark: parts
        for mark, parts in known.made().items()
        if parts[0].material.look != "glass" or not parts[0].cuts
    }


def _wanted(part: Part, cut: Cut) -> Said | None:
    """What the list must say of a cut; None when a machine file makes all of it."""
    if not in_some_file(part, cut):
        return said_of(part, cut)
    if isinstance(cut, Groove) and cut.squared and _left_round(part, cut) > 0:
        word = said_of(part, cut).faces
        return Said(
            kind="chop",
            sizes=(float(cut.corner), float(cut.depth)),
            faces=word,
        )
    return None


def _left_round(part: Part, cut: Groove) -> float:
    """The wood a cutter leaves in the ends of a groove that is to be square, mm3."""
    routed = by_router(cut)
    if not isinstance(routed, Groove):
        return 0.0
    square, left = (hollow(part, routed, at_machine=at) for at in (False, True))
    return square.volume - left.volume


def _agree(a: Said, b: Said) -> bool:
    return (a.faces, len(a.sizes)) == (b.faces, len(b.sizes)) and all(
        abs(one - other) <= PRINTED for one, other in zip(a.sizes, b.sizes, strict=True)
    )


def _told(said: Said) -> str:
    return ", ".join((*(f"{size:g}" for size in said.sizes), *said.faces))


# --- the part, rebuilt ---------------------------------------------------------------------


def _rebuilt(part: Part, listed: Sequence[_Line], machined: Machined) -> Iterator[str]:
    """Blank less machine files less the list, against the part."""
    taken = machined.taken.get(part.name, 0.0)
    said = tuple(line.said for line in listed)
    own = [file for file in machined.files if part.name in file.names]
    pool = [(file.face_up, cut) for file in own for cut in file.taken]
    for one in said:
        ends = _round_ends(part, one, pool) if one.kind == "chop" else 0.0
        taken += volume_said(one, part.blank, said, ends)
    left, whole = part.blank.volume - taken, part.blank.volume
    if abs(left - part.volume) > TRUST * whole + _lost_in_print(part):
        yield (
            f"{part.name}: blank less machine files less saw and bench list leaves "
            f"{left:.1f} mm3, the part is {part.volume:.1f}"
        )


def _lost_in_print(part: Part) -> float:
    """What rounding on the list to a thousandth may move, mm3; nothing where no size is rounded.

    Sizes in inches do not fall on thousandths of a millimetre. Each cut's walls may then
    stand off by as much as the worst of its sizes was rounded, over the whole of the part.
    """
    sizes = [
        float(value)
        for cut in part.cuts
        for field in dataclasses.fields(cut)
        if isinstance(value := getattr(cut, field.name), float)
    ]
    shaped = (cut for cut in part.cuts if isinstance(cut, Shaped))
    sizes += [size for cut in shaped for size in said_of(part, cut).sizes]
    worst = max((abs(size - round(size, 3)) for size in sizes), default=0.0)
    if worst < 1e-9:
        return 0.0
    length, width, thick = map(float, (part.blank.length, part.blank.width, part.blank.thickness))
    return worst * len(part.cuts) * 2 * (length * width + length * thick + width * thick)


def _round_ends(part: Part, said: Said, pool: list[tuple[str, Taken]]) -> float:
    """The wood in the round ends of the one outline that a line tells the bench to chop, mm3.

    It is taken out of the pool, so that two grooves alike need two lines.
    """
    radius, depth = said.sizes
    face = face_called(part, said.faces[0])
    for index, (face_up, cut) in enumerate(pool):
        if face_called(part, face_up) == face and _is(cut, radius, depth):
            del pool[index]
            return _corners_left(cut)
    return 0.0


def _is(cut: Taken, radius: float, depth: float) -> bool:
    return (
        cut.kind == "groove"
        and abs(cut.floor - depth) <= PRINTED
        and abs(cut.outline.smallest_corner - radius) <= PRINTED
    )


def _corners_left(cut: Taken) -> float:
    x0, y0, x1, y1 = cut.outline.bounds
    return ((x1 - x0) * (y1 - y0) - cut.outline.area) * (cut.floor - cut.begins)


# --- the cutters ---------------------------------------------------------------------------


def _cutters(data: bytes, files: Sequence[MachineFile]) -> Iterator[str]:
    """The list of cutters says of every layer of every file what the file says."""
    listed = {(row.get("file", ""), row.get("layer", "")): row for row in rows(data)}
    for file in files:
        for layer, use in file.uses.items():
            row = listed.pop((file.name, layer), None)
            if row is None:
                yield f"{TOOLS}: {layer} of {file.name} is missing"
                continue
            corners = [c.outline.smallest_corner for c in file.taken if c.layer == layer]
            true = {
                "cutter diameter mm": use.cutter,
                "depth mm": use.depth,
                "stock thickness mm": file.thickness,
                "how many": float(use.count),
                "count": float(len(file.names)),
                "corner radius mm": min((c for c in corners if c), default=0.0),
            }
            for heading, value in true.items():
                if abs(float(row.get(heading) or "nan") - value) <= PRINTED:
                    continue
                yield f"{TOOLS}: {heading} of {layer} of {file.name} is {row.get(heading)}, not {value:g}"
            turned = [one for one in row.get("turned pieces", "").split("; ") if one]
            if len(turned) != file.words.count(" lies turned: ") or any(
                one not in file.words for one in turned
            ):
                yield f"{TOOLS}: {file.name} is told to lie turned otherwise than in its own words"
            if row.get("face up") != file.face_up:
                yield f"{TOOLS}: {file.name} lies {row.get('face up')} up, its own words say {file.face_up}"
    for name, layer in listed:
        yield f"{TOOLS}: {layer} of {name} is in no file"
