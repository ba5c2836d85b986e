"""The drawings of a job: which sheets there are, and what each says in its title block."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass

from parametric.design.settings import SheetSpec
from parametric.drawing.arrangement import draw_arrangement
from parametric.drawing.audit import Finding, audit
from parametric.drawing.bench import draw_bench
from parametric.drawing.cases import draw_casework
from parametric.drawing.cutting import draw_cutting_plan
from parametric.drawing.details import Called, Details, draw_details
from parametric.drawing.full_size.shaped_panes import (
    draw_glass_templates,
    draw_glass_templates_tiled,
)
from parametric.drawing.full_size.story_stick import draw_story_stick, draw_story_stick_tiles
from parametric.drawing.full_size.templates import draw_templates, draw_templates_tiled
from parametric.drawing.hardware import draw_hardware, draw_hinges
from parametric.drawing.hardware.flaps import draw_flaps
from parametric.drawing.labels import draw_labels
from parametric.drawing.leaf import draw_leaves, leaf_sets
from parametric.drawing.lettering import printable
from parametric.drawing.machine.pages import draw_machine_pages
from parametric.drawing.machine.work import MachineWork
from parametric.drawing.numbering import numbered
from parametric.drawing.on_site.cabinets import draw_cabinets
from parametric.drawing.on_site.care import draw_care
from parametric.drawing.on_site.delivery import draw_delivery
from parametric.drawing.on_site.install import draw_install
from parametric.drawing.orders.glass import draw_glass_order
from parametric.drawing.orders.hardware import draw_hardware_order
from parametric.drawing.orders.timber import draw_timber_order
from parametric.drawing.part_sheets import draw_part_sheets
from parametric.drawing.picture import elevation_picture
from parametric.drawing.revised import mark_moved, moved_names, moved_words
from parametric.drawing.sheet import Revision, Sheet, TitleBlock
from parametric.drawing.subject import Subject, subject
from parametric.model import Assembly
from parametric.problems import Problem
from parametric.resolve.door import Door, Resolved
from parametric.trade.case_kinds import alike_fronts, alike_leaves
from parametric.trade.case_names import together
from parametric.trade.comparing import Changes
from parametric.trade.glass import TEMPLATES
from parametric.trade.loads import LeafLoad
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import printed

ARRANGEMENT = "Arrangement"
"""The document that shows a whole door where it stands."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetSet:
    """Sheets that go together on one file, by its path in the pack without the ending.

    `each_as_dxf`: each sheet is also a file of its own that a CAD program opens.
    """

    file: str
    sheets: tuple[Sheet, ...]
    each_as_dxf: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawings:
    """The sets of sheets, each door's front elevation alone for the client's page, what the audit found.

    The shop drawings are the first set.
    """

    sets: tuple[SheetSet, ...]
    elevations: tuple[Sheet, ...]
    findings: tuple[Finding, ...]

    @property
    def sheets(self) -> tuple[Sheet, ...]:
        """Every sheet of every set."""
        return tuple(sheet for own in self.sets for sheet in own.sheets)


def draw(
    resolved: Resolved,
    assembly: Assembly,
    loads: tuple[LeafLoad, ...],
    problems: tuple[Problem, ...],
    *,
    mark: str,
    paper: Paperwork | None = None,
    machine: MachineWork | None = None,
    moved: Changes | None = None,
    revised: frozenset[str] = frozenset(),
    not_for_making: bool = False,
) -> Drawings:
    """Draw a job: shop drawings (groups D and P), then what bench, suppliers and site are given.

    Args:
        resolved: its numbers.
        assembly: its parts.
        loads: its weights.
        problems: what the sheets must say of it.
        mark: the design's fingerprint as people read it.
        paper: its lists and set-ups; without them only the shop drawings and the cut list.
        machine: the set-ups that its machine files make.
        moved: what changed since it was signed, where that can be told.
        revised: the numbers that the signed revision moved.
        not_for_making: there are stops; every title block says so.
    """
    job = subject(resolved, assembly, loads, problems, moved)
    block = _title(job, mark, moved, not_for_making=not_for_making)
    sets: tuple[SheetSet, ...] = (
        SheetSet(file="shop/drawings", sheets=_shop_drawings(job, block, paper), each_as_dxf=True),
        SheetSet(
            file="shop/bench", sheets=numbered(draw_bench(job, paper, _of(block, "B", "", "")))
        ),
        *(() if paper is None else _cutting_plan(job, paper, block)),
        *(() if paper is None else _full_size(job, paper, block)),
        *(() if paper is None else _orders_and_site(job, paper, block)),
    )
    if machine is not None:
        pages = draw_machine_pages(job, machine, _of(block, "M", "", ""))
        sets = (*sets, SheetSet(file="cnc/set-ups", sheets=numbered(pages)))
    elevations = tuple(
        elevation_picture(sheet) for sheet in sets[0].sheets if sheet.title.document == ARRANGEMENT
    )
    sets = tuple(_marked(job, own, moved, revised) for own in sets)
    return Drawings(
        sets=sets,
        elevations=elevations,
        findings=tuple(finding for own in sets for sheet in own.sheets for finding in audit(sheet)),
    )


def draw_fronts(
    resolved: Resolved,
    assembly: Assembly,
    loads: tuple[LeafLoad, ...],
    problems: tuple[Problem, ...],
    *,
    mark: str,
    paper: Paperwork,
) -> tuple[Sheet, ...]:
    """The front elevations alone, as `draw` makes them for the client's page.

    Args:
        resolved: the numbers of the design, or of one of its options.
        assembly: its parts.
        loads: its weights.
        problems: what is said of it.
        mark: its fingerprint as people read it.
        paper: its lists and set-ups.
    """
    job = subject(resolved, assembly, loads, problems)
    block = _title(job, mark, None, not_for_making=False)
    fronts: list[Sheet] = []
    for door in resolved.walls:
        own, title = job.of(door), _of_door(block, door)
        # which sheet a detail stands on is said beside other views
        first = first_of_details(own)
        details = draw_details(
            own, paper.of(door), _of(title, "D", "Details", ""), first_sheet=first
        )
        fronts += map(elevation_picture, _arrangement(own, title, details.called))
    return tuple(fronts)


def _marked(
    job: Subject, own: SheetSet, moved: Changes | None, revised: frozenset[str]
) -> SheetSet:
    """A set with the letter of the revision at every value it moved: since it was signed, or,
    as long as the design is what was signed, against the revision signed before.
    """
    design = job.resolved.design
    approved, revisions = design.records.approved, design.revisions
    if approved is None:
        return own
    names, letter = revised, str(approved.revision)
    if moved is not None:
        current = revisions[-1].letter if revisions else ""
        names = moved_names(moved)
        letter = current if current not in ("", approved.revision) else "!"
    sheets = tuple(mark_moved(sheet, names, letter) for sheet in own.sheets)
    return dataclasses.replace(own, sheets=sheets)


def _shop_drawings(job: Subject, block: TitleBlock, paper: Paperwork | None) -> tuple[Sheet, ...]:
    """Group C, the cabinets, group D, one door after the other, and group P, the parts of all."""
    cases = draw_casework(job, _of(block, "C", "", ""))
    doors: list[Sheet] = []
    for kind in alike_fronts(job.resolved.doors, job.assembly):
        door = kind[0]
        own = None if paper is None else paper.of(door)
        drawn = dataclasses.replace(job.of(door), alike=_letters_alike(kind, job.assembly))
        title = _of_door(block, *kind)
        doors += _door_drawings(drawn, title, own, len(doors))
        if own is not None:
            doors += draw_flaps(job, door, _of(title, "D", "Flaps", _FLAPS))
    parts = () if paper is None else draw_part_sheets(job, paper, _of(block, "P", "Part", ""))
    return (*numbered(cases), *numbered(tuple(doors)), *numbered(parts))


def _door_drawings(
    job: Subject, block: TitleBlock, paper: Paperwork | None, before: int
) -> tuple[Sheet, ...]:
    """One door: where it stands, its leaves, their details and their hardware.

    Details come after the leaves in their group, and are drawn first: the others call them.

    A design with stops has none: it goes back to be mended, not to the bench.

    Args:
        job: the job, narrowed to the door.
        block: what its title blocks say alike.
        paper: its lists and set-ups.
        before: how many sheets stand before its own in the group.
    """
    details = (
        Details()
        if paper is None
        else draw_details(
            job,
            paper,
            _of(block, "D", "Details", ""),
            first_sheet=before + first_of_details(job),
        )
    )
    called = details.called
    hardware = (
        ()
        if paper is None
        else draw_hardware(job, paper, _of(block, "D", "Hardware", "Hardware on the leaves"))
    )
    hinges = (
        ()
        if paper is None
        else draw_hinges(job, _of(block, "D", "Hinges", "How the leaves open, and their hinges"))
    )
    return (
        *_arrangement(job, block, called),
        *draw_leaves(job, _of(block, "D", "Leaves", ""), called),
        *details.sheets,
        *hinges,
        *hardware,
    )


def _arrangement(job: Subject, block: TitleBlock, called: Sequence[Called]) -> tuple[Sheet, ...]:
    """The door in its wall; the fronts of a case stand on the sheets of their case."""
    if not job.resolved.walls:
        return ()
    return (draw_arrangement(job, _of(block, "D", ARRANGEMENT, "General arrangement"), called),)


def first_of_details(job: Subject) -> int:
    """The number of a door's first sheet of details: after the arrangement and the leaves."""
    return 1 + len(job.resolved.walls) + len(leaf_sets(job))


def _cutting_plan(job: Subject, paper: Paperwork, block: TitleBlock) -> tuple[SheetSet, ...]:
    """How sheets and lengths are sawn up, where the job has any."""
    sheets = draw_cutting_plan(job, paper, _of(block, "K", "", ""))
    return (SheetSet(file="shop/cutting-plan", sheets=numbered(sheets)),) if sheets else ()


def _full_size(job: Subject, paper: Paperwork, block: TitleBlock) -> tuple[SheetSet, ...]:
    """What is laid on the wood as it is, whole and in tiles for a plain printer, and the labels."""
    stick, template = _of(block, "F", "", ""), _of(block, "T", "", "")
    drawn = (
        ("shop/story-stick", draw_story_stick(job, paper, stick), True),
        ("shop/story-stick-tiled", draw_story_stick_tiles(job, paper, stick), False),
        ("shop/templates", draw_templates(job, paper, template), True),
        ("shop/templates-tiled", draw_templates_tiled(job, paper, template), False),
        ("shop/labels", draw_labels(job, paper, _of(block, "L", "", "")), False),
    )
    return tuple(
        SheetSet(file=file, sheets=numbered(sheets), each_as_dxf=as_dxf)
        for file, sheets, as_dxf in drawn
        if sheets
    )


def _orders_and_site(job: Subject, paper: Paperwork, block: TitleBlock) -> tuple[SheetSet, ...]:
    """What suppliers are sent, each under the job's own number, and what goes to site."""
    drawn = (
        ("order/glass", draw_glass_order(job, paper, block)),
        (f"order/{TEMPLATES}", draw_glass_templates(job, paper, _of(block, "G", "", ""))),
        (
            f"order/{TEMPLATES}-tiled",
            draw_glass_templates_tiled(job, paper, _of(block, "G", "", "")),
        ),
        ("order/timber", draw_timber_order(job, paper, block)),
        ("order/hardware", draw_hardware_order(job, paper, block)),
        ("site/install", _install(job, paper, _of(block, "S", "", ""))),
        ("site/cabinets", draw_cabinets(job, paper, _of(block, "S", "", ""))),
        ("site/delivery", draw_delivery(job, paper, block)),
        ("site/care", draw_care(job, paper, block)),
    )
    return tuple(SheetSet(file=file, sheets=numbered(sheets)) for file, sheets in drawn if sheets)


def _install(job: Subject, paper: Paperwork, block: TitleBlock) -> tuple[Sheet, ...]:
    """The install sheets of every door in a wall."""
    sheets: list[Sheet] = []
    for door in job.resolved.walls:
        title = _of_door(block, door)
        sheets += draw_install(job.of(door), paper.of(door), title, len(sheets) + 1)
    return tuple(sheets)


_FLAPS = "How they open, and what holds them"


def _letters_alike(kind: Sequence[Door], assembly: Assembly) -> dict[str, tuple[str, ...]]:
    """By the letter of each leaf that is drawn, those of the others it serves, in all of the doors."""
    lots = (
        [door.leaves[index].letter for door in kind for index in lot]
        for lot in alike_leaves(kind[0], assembly)
    )
    return {first: tuple(others) for first, *others in lots}


def _of_door(block: TitleBlock, *doors: Door) -> TitleBlock:
    """The title block of the sheets of one of several doors, or of some that are alike."""
    if not doors[0].place:
        return block
    places = together([door.place for door in doors])
    return dataclasses.replace(block, title=f"{block.title}, {printable(places)}")


def _of(block: TitleBlock, group: str, document: str, second_line: str) -> TitleBlock:
    """The title block of a group of sheets."""
    number = f"{block.number}-{group}" if block.number else ""
    return dataclasses.replace(block, number=number, document=document, second_line=second_line)


def _tolerance(job: Subject) -> str:
    """The unit, and how true the house marks and cuts: for sizes that have no other tolerance."""
    trust = job.resolved.shop.accuracy
    either_way = max(trust.slot, trust.marking, key=float)
    return f"{job.rules.unit_words} ±{printed(job.resolved).error(either_way)}"


def _title(job: Subject, mark: str, moved: Changes | None, *, not_for_making: bool) -> TitleBlock:
    """What every sheet of the job says alike."""
    resolved = job.resolved
    design = resolved.design
    spec = design.block("sheet")
    spec = spec if isinstance(spec, SheetSpec) else None
    revisions = design.revisions
    approved = design.records.approved
    same = approved is not None and approved.fingerprint.upper().replace("-", "").startswith(
        mark.replace("-", "")
    )
    drawn = "" if spec is None else spec.drawn_by or ""
    date = "" if spec is None else spec.date or ""
    number = "" if spec is None else spec.number or ""
    changed = any(p.code == "not_approved" for p in job.problems)
    first = f"sheet {number}-D 1" if number else "sheet 1 of the arrangement"
    return TitleBlock(
        owner=printable(resolved.shop.maker.name),
        document="",
        title=printable(design.whole_title),
        second_line="",
        drawn=printable(drawn),
        approved=printable(approved.by) if approved is not None and same else "",
        date=date or (revisions[-1].date if revisions else ""),
        scale="",
        sizes=_tolerance(job),
        number=printable(number),
        revision=revisions[-1].letter if revisions else "–",
        fingerprint=mark,
        not_for_making=not_for_making,
        projection="third" if job.third_angle else "first",
        not_approved=changed,
        moved=moved_words(approved.revision, moved, first)
        if changed and approved is not None
        else "",
        revisions=tuple(
            Revision(letter=r.letter, change=printable(r.reason), date=r.date, by=printable(drawn))
            for r in revisions
        ),
    )
