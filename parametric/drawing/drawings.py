"""The drawings of a job: which sheets there are, and what each says in its title block."""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass

from parametric.design.settings import SheetSpec
from parametric.drawing.arrangement import draw_arrangement
from parametric.drawing.audit import Finding, audit
from parametric.drawing.leaf import draw_leaves
from parametric.drawing.lists import draw_lists
from parametric.drawing.picture import elevation_picture
from parametric.drawing.sheet import Revision, Sheet, TitleBlock
from parametric.drawing.subject import Subject, subject
from parametric.model import Assembly
from parametric.problems import Problem
from parametric.resolve.door import Resolved
from parametric.trade.loads import LeafLoad


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawings:
    """The sheets in order, the front elevation alone for the client's page, what the audit found."""

    sheets: tuple[Sheet, ...]
    elevation: Sheet
    findings: tuple[Finding, ...]


def draw(
    resolved: Resolved,
    assembly: Assembly,
    loads: tuple[LeafLoad, ...],
    problems: tuple[Problem, ...],
    *,
    mark: str,
    not_for_making: bool = False,
) -> Drawings:
    """Draw a job: arrangement and leaves (group D), then the lists (group B).

    Args:
        resolved: its numbers.
        assembly: its parts.
        loads: its weights.
        problems: what the sheets must say of it.
        mark: the design's fingerprint as people read it.
        not_for_making: there are stops; every title block says so.
    """
    job = subject(resolved, assembly, loads, problems)
    block = _title(job, mark, not_for_making=not_for_making)
    letters = " and ".join(leaf.letter for leaf in resolved.door.leaves)
    doors = _of(block, "D", "Arrangement", "General arrangement")
    doors = dataclasses.replace(doors, sheets=2)
    leaves = dataclasses.replace(
        doors, document="Leaves", second_line=f"Leaves {letters} on one datum", sheet=2
    )
    arrangement = draw_arrangement(job, doors)
    sheets = (
        arrangement,
        draw_leaves(job, leaves),
        *draw_lists(job, _of(block, "B", "Lists", "Cut list and glass order")),
    )
    return Drawings(
        sheets=sheets,
        elevation=elevation_picture(arrangement),
        findings=tuple(finding for sheet in sheets for finding in audit(sheet)),
    )


def _of(block: TitleBlock, group: str, document: str, second_line: str) -> TitleBlock:
    """The title block of a group of sheets."""
    number = f"{block.number}-{group}" if block.number else ""
    return dataclasses.replace(block, number=number, document=document, second_line=second_line)


def _title(job: Subject, mark: str, *, not_for_making: bool) -> TitleBlock:
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
    return TitleBlock(
        owner=resolved.shop.maker.name,
        document="",
        title=resolved.job,
        second_line="",
        drawn=drawn,
        approved=approved.by if approved is not None and same else "",
        date=date or (revisions[-1].date if revisions else ""),
        scale="",
        sizes=job.rules.unit_words,
        number="" if spec is None else spec.number or "",
        revision=revisions[-1].letter if revisions else "–",
        sheet=1,
        sheets=1,
        fingerprint=mark,
        not_for_making=not_for_making,
        revisions=tuple(
            Revision(letter=r.letter, change=r.reason, date=r.date, by=drawn) for r in revisions
        )
        if len(revisions) > 1
        else (),
    )
