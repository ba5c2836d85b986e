"""What a job pack holds: every file by its path in the pack, as bytes.

Folders are by who receives them: client, shop, cnc, order, site, model.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Mapping
from typing import Any, Literal

from parametric.cnc.bench_work import bench_work
from parametric.cnc.notes import Stamp
from parametric.cnc.setups import SetUp, set_ups
from parametric.cnc.tool_list import (
    BENCH_LIST_HEADER,
    TOOL_LIST_HEADER,
    bench_list,
    tool_list,
)
from parametric.drawing import Drawings, draw
from parametric.drawing.subject import subject
from parametric.model import Assembly
from parametric.pack.glass_outlines import glass_outlines
from parametric.pack.machine_pictures import machine_work
from parametric.pack.numbers import numbers
from parametric.pack.pictures import FACING_SHUT, HALF_OPEN, pictures
from parametric.pack.preview import palette, preview_page
from parametric.pack.preview_options import Other, shown_beside
from parametric.pack.proposal import proposal
from parametric.pack.verifying.known import known_design
from parametric.pack.verifying.pack import MODELS, FaultyPackError, faults_of, verify
from parametric.problems import Problem
from parametric.resolve.door import Resolved
from parametric.trade.bench_tables import (
    block_table,
    by_door_table,
    length_table,
    milling_table,
    order_table,
    stop_table,
)
from parametric.trade.comparing import Changes
from parametric.trade.cutlist import cut_list
from parametric.trade.cutting_tables import bar_table, cutting_table, offcuts_table
from parametric.trade.file_names import slug
from parametric.trade.fingerprint import fingerprint, mark
from parametric.trade.loads import LeafLoad
from parametric.trade.order_tables import (
    board_table,
    edge_band_table,
    finish_table,
    glass_gate_table,
    glazing_table,
    hardware_table,
    timber_table,
    timber_totals,
)
from parametric.trade.paperwork import Paperwork, paperwork
from parametric.trade.printed import printed
from parametric.trade.site_tables import (
    delivery_table,
    fixing_table,
    of_doors,
    pane_table,
    work_table,
)
from parametric.trade.tables import Table, cut_table
from parametric.units import Unit
from parametric.writers.client_page import Palette
from parametric.writers.csv import write_csv
from parametric.writers.dxf import write_cnc_dxf
from parametric.writers.dxf_sheets import write_dxf
from parametric.writers.html import write_html
from parametric.writers.json import write_json
from parametric.writers.pdf import write_pdf
from parametric.writers.svg import write_svg

Pictured = Literal["no", "yes", "fine"]


def contents(
    resolved: Resolved,
    assembly: Assembly,
    loads: tuple[LeafLoad, ...],
    problems: tuple[Problem, ...],
    *,
    others: tuple[Other, ...] = (),
    moved: Changes | None = None,
    revised: frozenset[str] = frozenset(),
    not_for_making: bool,
    usdz: bool = False,
    use_cache: bool,
    pictured: Pictured = "no",
    progress: Callable[[str], None],
) -> dict[str, bytes]:
    """Every file of the pack.

    Args:
        resolved: the design's numbers.
        assembly: its parts.
        loads: its weights.
        problems: what is printed on the sheets and into numbers.json.
        others: the other options of the job, which the client's page shows beside it.
        moved: what changed since it was signed, where that can be told.
        revised: the numbers that the signed revision moved.
        not_for_making: there are stops: drawings and model only, and marked so.
        usdz: write the model for phones too.
        use_cache: keep solids between runs.
        pictured: whether the client's pictures are made, and how fine.
        progress: told each step as it begins.

    Raises:
        FaultyPackError: a file, read back, does not make or show the design.
    """
    name = slug(resolved.job)
    whole = fingerprint(resolved, assembly)
    short = mark(whole)
    revisions = resolved.design.revisions
    revision = revisions[-1].letter if revisions else ""
    paper = None if not_for_making else paperwork(resolved, assembly, loads)
    found = set_ups(assembly, resolved.shop.router.cutters, resolved.shop.layers) if paper else ()
    files: dict[str, bytes] = {}

    progress("drawing the sheets")
    drawings = draw(
        resolved,
        assembly,
        loads,
        problems,
        mark=short,
        paper=paper,
        machine=machine_work(assembly, found, printed(resolved).fine) if paper else None,
        moved=moved,
        revised=revised,
        not_for_making=not_for_making,
    )
    files |= _sheets(drawings)

    progress("building the solids")
    worn = palette(resolved) if usdz else None
    models, solids = _models(assembly, use_cache, not_for_making, worn)
    model = f"{name}-NOT-FOR-MAKING" if not_for_making else name
    files |= {f"model/{model}.{ending}": data for ending, data in models.items()}
    verification = {"solids": solids, "sheets": _audited(drawings)}

    if paper is not None:
        progress("writing the machine files")
        stamp = Stamp(job=resolved.job, fingerprint=short, revision=revision)
        files |= _machine(assembly, found, stamp)
        progress("writing the orders")
        files |= _orders(resolved, assembly, paper)
        files |= glass_outlines(resolved, paper, stamp)
        files |= _bench(resolved, assembly, paper)
        files |= _site(resolved, paper)
        progress("writing the client's page")
        page = preview_page(
            resolved,
            loads,
            fingerprint=whole,
            elevations=tuple(map(write_svg, drawings.elevations)),
            assembly=assembly,
            problems=problems,
            paper=paper,
        )
        beside = tuple(shown_beside(other, use_cache=use_cache) for other in others)
        files["client/preview.html"] = write_html(page, models["glb"], beside)
        titled = dataclasses.replace(page, job=resolved.design.whole_title)
        if pictured != "no":
            fine = pictured == "fine"
            files |= pictures(titled, assembly, models["glb"], fine=fine, progress=progress)
        progress("writing the proposal")
        job = subject(resolved, assembly, loads, problems, moved)
        signed = proposal(job, titled, paper, picture=files.get(HALF_OPEN, files.get(FACING_SHUT)))
        files["client/proposal.pdf"] = signed.file
        verification["proposal"] = {
            "pages": signed.pages,
            "findings": [str(finding) for finding in signed.findings],
        }

    progress("reading every file back")
    known = dataclasses.replace(
        known_design(resolved, assembly, loads, not_for_making=not_for_making),
        beside=() if not_for_making else tuple(other.known() for other in others),
    )
    verdicts = verify(files, known)
    # With stops, solids go only as far as their cuts can be made: what the models lack is said.
    binding = {k: v for k, v in verdicts.items() if not (not_for_making and k in MODELS)}
    if faults := faults_of(binding):
        raise FaultyPackError(faults)
    verification |= {name: verdict.record() for name, verdict in verdicts.items()}

    files["numbers.json"] = write_json(
        numbers(
            resolved,
            loads,
            assembly,
            problems,
            paper=paper,
            fingerprint=whole,
            verification=verification,
        )
    )
    return dict(sorted(files.items()))


def _sheets(drawings: Drawings) -> dict[str, bytes]:
    """Each set as one PDF; what a CAD program should open as a DXF a sheet beside it."""
    files = {f"{own.file}.pdf": write_pdf(own.sheets) for own in drawings.sets}
    for own in drawings.sets:
        if own.each_as_dxf:
            for n, sheet in enumerate(own.sheets, 1):
                name = f"{own.file.removesuffix('s')}-{n}-{slug(sheet.title.document)}.dxf"
                files[name] = write_dxf(sheet)
    return files


def _models(
    assembly: Assembly, use_cache: bool, not_for_making: bool, worn: Palette | None
) -> tuple[dict[str, bytes], Mapping[str, Any]]:
    """Models by their ending, from one set of solids; the kernel is loaded here and not before.

    The one for phones is written where it is said what it wears.
    """
    from parametric.solids.cache import user_cache
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb
    from parametric.writers.step import write_step
    from parametric.writers.usdz import write_usdz

    solids = build_solids(
        assembly.parts, user_cache() if use_cache else None, with_stops=not_for_making
    )
    verdict = {
        "shapes": len(solids.shapes),
        "each": "as far as its cuts can be made"
        if not_for_making
        else "valid, closed, one solid, volume as its part's to 1e-6",
    }
    models = {"step": write_step(assembly, solids), "glb": write_glb(assembly, solids)}
    if worn is not None:
        models["usdz"] = write_usdz(assembly, solids, worn)
    return models, verdict


def _machine(assembly: Assembly, found: tuple[SetUp, ...], stamp: Stamp) -> dict[str, bytes]:
    """One DXF a set-up, the tool list, and the work that no router does."""
    files = {f"cnc/{s.file}": write_cnc_dxf(s, stamp) for s in found}
    files["cnc/tool-list.csv"] = write_csv(TOOL_LIST_HEADER, tool_list(found))
    files["cnc/saw-and-bench-work.csv"] = write_csv(
        BENCH_LIST_HEADER, bench_list(bench_work(assembly))
    )
    return files


def _orders(resolved: Resolved, assembly: Assembly, paper: Paperwork) -> dict[str, bytes]:
    unit, shop, said = resolved.design.unit, resolved.shop, printed(resolved)
    cut = cut_table(cut_list(assembly), unit, shop)
    boards = board_table(paper.boards, said)
    bands = edge_band_table(paper.edge_bands, said)
    return {
        **({"order/boards.csv": _csv_with_unit(boards, unit)} if paper.boards else {}),
        **({"order/edge-band.csv": _csv_with_unit(bands, unit)} if paper.edge_bands else {}),
        "order/cut-list.csv": _csv_with_unit(cut, unit),
        "order/glass.csv": _csv_with_unit(glazing_table(paper.glazing, said), unit),
        "order/glass-measure-first.csv": _csv_with_unit(
            glass_gate_table(paper.glazing, said), unit
        ),
        "order/timber.csv": _csv_with_unit(timber_table(paper.timber, said), unit),
        "order/timber-totals.csv": _csv_with_unit(timber_totals(paper.timber, said), unit),
        "order/hardware.csv": _csv_with_unit(hardware_table(paper.hardware, said), unit),
        "order/finish.csv": _csv(finish_table(paper.finish)),
    }


def _bench(resolved: Resolved, assembly: Assembly, paper: Paperwork) -> dict[str, bytes]:
    unit, said = resolved.design.unit, printed(resolved)
    cutting = cutting_table(paper.boards, said)
    bars = bar_table(paper.bars, said)
    left = offcuts_table(paper.boards, paper.bars, said)
    return {
        **({"shop/cutting-plan.csv": _csv_with_unit(cutting, unit)} if paper.boards else {}),
        **({"shop/cutting-plan-bars.csv": _csv_with_unit(bars, unit)} if paper.bars else {}),
        **({"shop/offcuts.csv": _csv_with_unit(left, unit)} if left.rows else {}),
        "shop/order-of-work.csv": _csv(order_table(paper, assembly)),
        "shop/milling.csv": _csv_with_unit(milling_table(paper, said), unit),
        "shop/stop-blocks.csv": _csv_with_unit(stop_table(paper, said), unit),
        "shop/stop-blocks-grooves.csv": _csv_with_unit(block_table(paper, said), unit),
        "shop/length-stops.csv": _csv_with_unit(length_table(paper, said), unit),
        "shop/cut-list-by-door.csv": _csv_with_unit(by_door_table(assembly, said), unit),
    }


def _site(resolved: Resolved, paper: Paperwork) -> dict[str, bytes]:
    unit, said = resolved.design.unit, printed(resolved)
    return {
        "site/delivery.csv": _csv_with_unit(delivery_table(paper.delivery, said), unit),
        "site/fixings.csv": _csv(of_doors(paper.installs, lambda one: fixing_table(one, said))),
        "site/order-of-work.csv": _csv(of_doors(paper.installs, work_table)),
        "site/panes.csv": _csv_with_unit(pane_table(paper.care, said), unit),
    }


def _csv(table: Table) -> bytes:
    return write_csv(table.header, table.rows)


def _csv_with_unit(table: Table, unit: Unit) -> bytes:
    """A file has no heading on the paper beside it, so every row says its unit."""
    return write_csv((*table.header, "unit"), [(*row, unit) for row in table.rows])


def _audited(drawings: Drawings) -> Mapping[str, Any]:
    """What the audit of the sheets found: nothing, or it is said."""
    return {
        "sheets": len(drawings.sheets),
        "findings": [str(finding) for finding in drawings.findings],
    }
