"""Lists, checks, warnings and notes of a leaf's sheet, worked out from the job by rule."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.drawing.arrangement_words import ON_ARRANGEMENT, said
from parametric.drawing.column import Item, Sentences, TableItem
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column, fitted, table_height
from parametric.names import short
from parametric.trade.cutlist import cut_list

ON_EVERY_BLOCK = frozenset({"not_approved"})
"""What the title block says itself."""
ON_ORDERS = frozenset({"glass_not_safety"})
"""Notes that go with the glass order."""


def leaf_items(job: Subject, note: str = "") -> list[Item]:
    """The column in the order it is read; `note` is said first where there is one."""
    return [
        _cut_list(job),
        _checks(job),
        Sentences(title="Mind", kind="warning", texts=_cautions(job)),
        Sentences(title="Notes", kind="numbered", texts=(*((note,) if note else ()), *_notes(job))),
    ]


def _reading_order(mark: str) -> tuple[int, int]:
    """Frame first, then what fills it, then the small parts."""
    return ("SRMPGLT".find(mark[0]), int(mark[1:]))


def _cut_list(job: Subject) -> TableItem:
    """Length along the grain, width, thickness, as the cut list has them."""
    rows = []
    for row in sorted(cut_list(job.assembly), key=lambda r: _reading_order(r.mark)):
        glass = row.look == "glass"
        down = glass or row.noun == "raised panel"
        sizes = (
            (job.fine if glass else job.wood)(size, down=down)
            for size in (row.length, row.width, row.thickness)
        )
        rows.append((row.mark, row.noun, str(row.number), *sizes))
    columns = (
        Column(head="Mark", width=10.0),
        Column(head="Part", width=30.0),
        Column(head="No.", width=7.0, anchor="right"),
        Column(head="Length", width=13.5, anchor="right"),
        Column(head="Width", width=12.0, anchor="right"),
        Column(head="Thick", width=11.5, anchor="right"),
    )
    height = table_height(job.rules.unit)
    return TableItem(
        title="Cut list, both leaves",
        columns=fitted(columns, rows, height),
        rows=tuple(rows),
        height=height,
        pitch=2.08 * height,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Check:
    """One line of the checks, and the problems that say it failed."""

    what: str
    found: str
    allowed: str
    codes: tuple[str, ...]


def _checks(job: Subject) -> TableItem:
    checks = _made_checks(job)
    raised = {p.code for p in job.problems if p.level in ("stop", "caution")}
    rows = tuple((c.what, c.found, c.allowed) for c in checks)
    columns = (
        Column(head="Checked", width=48.0),
        Column(head="Found", width=14.0, anchor="right"),
        Column(head="Allowed", width=22.0, anchor="right"),
    )
    return TableItem(
        title="Checks",
        columns=fitted(columns, rows),
        rows=rows,
        wrong=frozenset(i for i, c in enumerate(checks) if raised & set(c.codes)),
    )


def _made_checks(job: Subject) -> list[_Check]:
    leaf, limits = job.resolved.door.leaves[0], job.resolved.shop.limits
    total = sum(float(band.height) for band in leaf.bands)
    checks = [
        _Check(
            what="Rails and openings add up",
            found=job.wood(total),
            allowed=job.wood(leaf.height),
            codes=("bands_do_not_add_up",),
        )
    ]
    for field in leaf.panels:
        panel = field.panel
        name = short(field.name).capitalize()
        checks += [
            _Check(
                what=f"{name} in its groove, driest",
                found=job.fine(panel.engagement_dry),
                allowed=f"{job.fine(limits.engagement)} or more",
                codes=("panel_leaves_groove",),
            ),
            _Check(
                what=f"{name} in its groove, dampest",
                found=job.fine(panel.engagement_damp),
                allowed=f"under {job.fine(panel.groove_depth)}",
                codes=(),
            ),
            _Check(
                what=f"{name}'s tongue",
                found=job.fine(panel.tongue_length),
                allowed=f"{job.fine(panel.engagement_damp + limits.tongue_spare)} or more",
                codes=("tongue_too_short",),
            ),
            _Check(
                what=f"{name}'s field below the face",
                found=job.fine(panel.field_below_face),
                allowed="0 or more",
                codes=("field_stands_proud",),
            ),
        ]
    for hung in leaf.pulls[:1]:
        checks.append(
            _Check(
                what="Wood between the pulls",
                found=job.fine(hung.pull.web),
                allowed=f"{job.fine(limits.pocket_wall)} or more",
                codes=("pockets_leave_no_web",),
            )
        )
    if leaf.wood_over_guide is not None and leaf.wood_over_guide_after_site_trim is not None:
        least = f"{job.wood(limits.below_guide)} or more"
        checks += [
            _Check(
                what="Wood over the guide groove",
                found=job.wood(leaf.wood_over_guide),
                allowed=least,
                codes=(),
            ),
            _Check(
                what=f"less {job.wood(leaf.site_trim)} planed off on site",
                found=job.wood(leaf.wood_over_guide_after_site_trim),
                allowed=least,
                codes=("little_wood_over_guide",),
            ),
        ]
    return checks


def _cautions(job: Subject) -> tuple[str, ...]:
    """Everything to mind that the arrangement does not already say."""
    return tuple(
        said(p)
        for p in job.problems
        if p.level == "caution" and p.code not in ON_ARRANGEMENT | ON_EVERY_BLOCK
    )


def _notes(job: Subject) -> tuple[str, ...]:
    """What the bench must know, each from a number of the job."""
    leaf = job.resolved.door.leaves[0]
    joint = leaf.joint
    notes = []
    if float(leaf.trim) > 0:
        notes.append(f"Stiles stand {job.wood(leaf.trim)} long at each end; trim after glue-up.")
    notes.append("Mark both leaves together, from one story stick.")
    notes.append(
        f"Tenons dashed: {job.wood(joint.tenon_thickness)} × {job.wood(joint.tenon_width)} × "
        f"{job.wood(joint.tenon_length)}, in slots {job.wood(joint.slot_depth)} deep."
    )
    for field in leaf.panels:
        low, high = job.wood(field.groove_low), job.wood(field.groove_high)
        notes.append(
            f"Groove for the panel {job.fine(field.panel.groove_width)} × "
            f"{job.fine(field.panel.groove_depth)}, in the stiles stopped: {low} to {high} up. "
            "Panel loose in it: no glue."
        )
    if leaf.guide is not None:
        notes.append(
            f"Guide groove {job.fine(leaf.guide.width)} × {job.fine(leaf.guide.depth)} in the "
            "foot, run after trimming."
        )
    notes += [
        said(p)
        for p in job.problems
        if p.level == "note" and p.code not in ON_ARRANGEMENT | ON_ORDERS
    ]
    return tuple(notes)
