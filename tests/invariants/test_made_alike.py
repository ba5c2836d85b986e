"""Cut list, solids, machine files and part sheets of random cabinets say one thing."""

from __future__ import annotations

import io
import re
from collections import Counter, defaultdict
from collections.abc import Iterator
from itertools import pairwise

import ezdxf
import pytest
from ezdxf.document import Drawing
from hypothesis import HealthCheck, given, settings

from parametric.cnc.bench_work import bench_work
from parametric.cnc.notes import Stamp
from parametric.cnc.setups import SetUp, set_ups
from parametric.drawing.part_sheets.plain_boards import fitted_on_site
from parametric.drawing.part_sheets.sheets import draw_part_sheets
from parametric.drawing.sheet import Sheet
from parametric.drawing.subject import subject
from parametric.job import Job
from parametric.model import (
    Cut,
    Drilled,
    Face,
    Groove,
    Part,
    Pocket,
    Shaped,
    Slot,
    Vector,
    face_depth,
    face_point,
    face_size,
)
from parametric.trade.cutlist import cut_list
from parametric.trade.paperwork import paperwork
from parametric.writers.dxf import write_cnc_dxf
from parametric.writers.dxf_sheets import write_dxf
from tests.cases.test_case_sheets import BLOCK
from tests.invariants.casework import bored_cabinets
from tests.invariants.test_casework import checked, made

CLOSE = 1e-4
TRIES = settings(max_examples=12, suppress_health_check=[HealthCheck.too_slow])
FEW = settings(TRIES, max_examples=4)
STAMP = Stamp(job="a cabinet", fingerprint="0123-4567", revision="A")


def made_parts(job: Job) -> list[Part]:
    """One part of every mark that is made here."""
    assert job.assembly is not None
    found: dict[str, Part] = {}
    for part in job.assembly.parts:
        if not part.supplied:
            found.setdefault(part.mark, part)
    return list(found.values())


# --- solids ----------------------------------------------------------------------------------


@pytest.mark.kernel
@FEW
@given(bored_cabinets())
def test_solids_are_as_large_as_the_cut_list_says(text: str) -> None:
    """The kernel's own volume and box of every part: its blank's, less what is cut from it."""
    from OCP.Bnd import Bnd_Box
    from OCP.BRepBndLib import BRepBndLib
    from OCP.BRepGProp import BRepGProp
    from OCP.GProp import GProp_GProps

    from parametric.solids.solid_set import build_solids

    job = checked(text)
    if made(job) is None:
        return
    assert job.assembly is not None
    parts = made_parts(job)
    solids = build_solids(parts)
    rows = {name: row for row in cut_list(job.assembly) for name in row.names}
    for part in parts:
        solid = solids.of(part)
        about, wood = Bnd_Box(), GProp_GProps()
        BRepBndLib.AddOptimal_s(solid, about, False, False)
        BRepGProp.VolumeProperties_s(solid, wood)
        assert wood.Mass() == pytest.approx(part.volume, rel=1e-7), part.name
        low, high = about.CornerMin(), about.CornerMax()
        found = (high.X() - low.X(), high.Y() - low.Y(), high.Z() - low.Z())
        row = rows[part.name]
        listed = (row.length, row.width, row.thickness)
        if fitted_on_site(part) or part.noun == "wall stile":
            # scribed: what is listed is the blank, and no more of it is left
            assert all(a <= b + CLOSE for a, b in zip(found, listed, strict=True)), part.name
        else:
            assert found == pytest.approx(listed, abs=CLOSE), part.name


# --- machine files ---------------------------------------------------------------------------

AHEAD: dict[Face, tuple[Vector, Vector]] = {
    "high face": ((0.0, 0.0, 1.0), (1.0, 0.0, 0.0)),
    "low face": ((0.0, 0.0, -1.0), (1.0, 0.0, 0.0)),
    "high edge": ((0.0, 1.0, 0.0), (1.0, 0.0, 0.0)),
    "low edge": ((0.0, -1.0, 0.0), (1.0, 0.0, 0.0)),
    "high end": ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0)),
    "low end": ((-1.0, 0.0, 0.0), (0.0, 1.0, 0.0)),
}
"""Out of the wood, and to the right of a file seen from there; up is what makes them right-handed."""
Place = tuple[float, float, float, float, float]
"""An outline's box in a file, and how deep: x0, y0, x1, y1, depth, mm to the hundredth."""


def dot(a: Vector, b: Vector) -> float:
    return sum(x * y for x, y in zip(a, b, strict=True))


def seen(part: Part, face: Face, point: Vector) -> tuple[float, float]:
    """A place of a part as a machine sees it from above a face, from the lower left corner."""
    out, right = AHEAD[face]
    up = (
        out[1] * right[2] - out[2] * right[1],
        out[2] * right[0] - out[0] * right[2],
        out[0] * right[1] - out[1] * right[0],
    )
    blank = part.blank
    corners = [
        (x, y, z)
        for x in (0.0, float(blank.length))
        for y in (0.0, float(blank.width))
        for z in (0.0, float(blank.thickness))
    ]
    return (
        dot(point, right) - min(dot(corner, right) for corner in corners),
        dot(point, up) - min(dot(corner, up) for corner in corners),
    )


def boxes_of(part: Part, cut: Cut) -> Iterator[Place]:
    """Where a cut lies in the file of its face."""
    match cut:
        case Drilled():
            half = float(cut.diameter) / 2
            corners = [((u - half, v - half), (u + half, v + half)) for u, v in cut.places]
        case Groove() | Slot():
            half = float(cut.width) / 2
            corners = [((cut.u0, cut.v - half), (cut.u1, cut.v + half))]
        case Pocket():
            along, across = float(cut.length) / 2, float(cut.width) / 2
            corners = [((cut.u - along, cut.v - across), (cut.u + along, cut.v + across))]
        case Shaped():
            us, vs = [v.x for v in cut.outline], [v.y for v in cut.outline]
            corners = [((min(us), min(vs)), (max(us), max(vs)))]
        case _:
            return
    depth = min(float(cut.depth), float(face_depth(cut.face, part.blank)))
    for ends in corners:
        places = [
            seen(part, cut.face, face_point(cut.face, part.blank, float(u), float(v), 0.0))
            for u, v in ends
        ]
        xs, ys = zip(*places, strict=True)
        yield rounded(min(xs), min(ys), max(xs), max(ys), depth)


def rounded(*sizes: float) -> Place:
    x0, y0, x1, y1, depth = (round(size, 2) + 0.0 for size in sizes)
    return (x0, y0, x1, y1, depth)


def drawn_in(document: Drawing, layers: set[str]) -> Counter[Place]:
    """Every closed outline of a file but those of its stock and its datum."""
    found: Counter[Place] = Counter()
    for line in document.modelspace().query("LWPOLYLINE"):
        if line.dxf.layer in layers:
            continue
        assert line.closed
        points = list(line.vertices())
        xs, ys = [x for x, _ in points], [y for _, y in points]
        bulges = [b for *_, b in line.get_points("xyb")]
        if len(points) == 2 and bulges == pytest.approx([1.0, 1.0]):
            # two half turns: a circle about the middle of what they begin at
            x, y = sum(xs) / 2, sum(ys) / 2
            half = ((xs[1] - xs[0]) ** 2 + (ys[1] - ys[0]) ** 2) ** 0.5 / 2
            xs, ys = [x - half, x + half], [y - half, y + half]
        else:
            box = ezdxf.path.bbox([ezdxf.path.make_path(line)])
            xs, ys = [box.extmin.x, box.extmax.x], [box.extmin.y, box.extmax.y]
        found[rounded(min(xs), min(ys), max(xs), max(ys), -line.dxf.elevation)] += 1
    return found


@TRIES
@given(bored_cabinets())
def test_machine_files_hold_what_the_parts_do(text: str) -> None:
    """Read back by ezdxf: the stock is the blank's face, and every cut that is made by a router
    before the glue stands in one file, where and as deep as the part has it, or on the bench's list.
    """
    job = checked(text)
    if made(job) is None:
        return
    assert job.assembly is not None
    assert job.shop is not None
    files: dict[tuple[str, Face], tuple[SetUp, Drawing]] = {}
    for one in set_ups(job.assembly, job.shop.router.cutters):
        if one.face is not None:
            document = ezdxf.read(io.StringIO(write_cnc_dxf(one, STAMP).decode()))
            assert (one.mark, one.face) not in files
            files[one.mark, one.face] = one, document
    at_the_bench: dict[str, Counter[str]] = defaultdict(Counter)
    for work in bench_work(job.assembly):
        at_the_bench[work.mark][work.cut] += 1
    for part in made_parts(job):
        for face in AHEAD:
            wanted: Counter[Place] = Counter()
            benched: Counter[Place] = Counter()
            for cut in part.cuts:
                if getattr(cut, "face", None) != face or cut.making.when != "before glue-up":
                    continue
                places = Counter(boxes_of(part, cut))
                by_hand = cut.making.by != "router" or at_the_bench[part.mark][cut.name]
                (benched if by_hand else wanted).update(places)
            one, document = files.get((part.mark, face), (None, None))
            if one is None or document is None:
                assert not wanted, f"{part.name}: {face}"
                continue
            (stock,) = document.modelspace().query(f'LWPOLYLINE[layer=="{one.layers.stock}"]')
            size = ezdxf.path.bbox([ezdxf.path.make_path(stock)]).extmax
            corner = [
                seen(part, face, (x, y, z))
                for x in (0.0, part.blank.length)
                for y in (0.0, part.blank.width)
                for z in (0.0, part.blank.thickness)
            ]
            assert (size.x, size.y) == pytest.approx(max(corner), abs=CLOSE), one.file
            drawn = drawn_in(document, {one.layers.stock, one.layers.datum})
            assert not wanted - drawn, (one.file, wanted - drawn)
            assert not drawn - wanted - benched, (one.file, drawn - wanted)


# --- part sheets -----------------------------------------------------------------------------


@FEW
@given(bored_cabinets())
def test_part_sheets_print_what_the_parts_are(text: str) -> None:
    """Read back by ezdxf: the blank of every board that is bored, and in its list each cut, of holes
    with how many, how far apart, where, how wide and how deep.
    """
    job = checked(text)
    if made(job) is None:
        return
    assert job.resolved is not None
    assert job.assembly is not None
    drawn = subject(job.resolved, job.assembly, job.loads, job.own)
    paper = paperwork(job.resolved, job.assembly, job.loads)
    sheets = {
        sheet.title.document.removeprefix("Part "): written(sheet)
        for sheet in draw_part_sheets(drawn, paper, BLOCK)
    }
    for part in made_parts(job):
        if not any(isinstance(cut, Drilled) for cut in part.cuts):
            continue
        own = sheets[part.mark]
        blank = re.search(r"Blank ([\d.]+) × ([\d.]+) × ([\d.]+)", " ".join(own))
        assert blank is not None, part.name
        sizes = (part.blank.length, part.blank.width, part.blank.thickness)
        assert [float(size) for size in blank.groups()] == pytest.approx(sizes, abs=HALF)
        rows = list(listed(own, {cut.name for cut in part.cuts}))
        assert Counter(name for name, _ in rows) == Counter(cut.name for cut in part.cuts)
        for cut in part.cuts:
            if isinstance(cut, Drilled):
                assert any(name == cut.name and says(words, part, cut) for name, words in rows), (
                    part.name,
                    cut,
                )


HALF, TENTH = 0.2501, 0.0501
"""Wood is printed to half a millimetre, depths and bits to a tenth."""


def written(sheet: Sheet) -> list[str]:
    """Every text on a sheet's own paper, in order."""
    document = ezdxf.read(io.StringIO(write_dxf(sheet).decode()))
    return [text.dxf.text for text in document.paperspace().query("TEXT")]


def listed(texts: list[str], names: set[str]) -> Iterator[tuple[str, list[str]]]:
    """The rows of a sheet's list of cuts: the name of each, and what stands in its cells."""
    begins = [
        at
        for at, (number, name) in enumerate(pairwise(texts))
        if number.isdigit() and name in names
    ]
    rows = []
    for at in begins:
        if int(texts[at]) == len(rows) + 1:
            rows.append(at)
    ends = [*rows[1:], next(i for i, words in enumerate(texts) if words == "Complete when")]
    for begin, end in zip(rows, ends, strict=True):
        yield texts[begin + 1], texts[begin + 2 : end]


def says(words: list[str], part: Part, cut: Drilled) -> bool:
    """Whether a row of the list speaks of a row of holes; places count from either end of a side."""
    numbers = [float(found[0]) for word in words if (found := re.match(r"[\d.]+", word))]
    bits = [float(word.removesuffix(" dia")) for word in words if word.endswith(" dia")]

    def printed(value: float, close: float) -> bool:
        return any(abs(number - float(value)) <= close for number in numbers)

    along, across = (float(size) for size in face_size(cut.face, part.blank))
    (u, v), (u1, v1) = cut.places[0], cut.places[-1]
    return (
        any(abs(bit - float(cut.diameter)) <= TENTH for bit in bits)
        and printed(cut.depth - cut.surface, TENTH)
        and (cut.count == 1 or (printed(cut.count, 0) and printed(cut.pitch, HALF)))
        and any(printed(at, HALF) for at in (u, along - u, u1, along - u1))
        and any(printed(at, HALF) for at in (v, across - v, v1, across - v1))
    )
