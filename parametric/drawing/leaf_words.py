"""Lists, checks, warnings and notes of a leaf's sheet, worked out from the job by rule."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import assert_never

from parametric.drawing.arrangement_words import ON_ARRANGEMENT, ON_CABINETS, ON_CASE, said
from parametric.drawing.column import Item, Sentences, TableItem, list_width
from parametric.drawing.leaf_head import arched_rail, radii
from parametric.drawing.leaf_views import bevels, degrees
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column, fitted, table_height
from parametric.hardware.handle import Handle
from parametric.infill.panel_kinds import PANEL_NOUNS, AnyPanel
from parametric.joints.loose_tenon import LooseTenon
from parametric.joints.stub_tenon import StubTenon
from parametric.names import short
from parametric.resolve.leaf import Leaf
from parametric.trade.cutlist import cut_list

ON_EVERY_BLOCK = frozenset({"not_approved"})
"""What the title block says itself."""
ON_ORDERS = frozenset({"glass_not_safety"})
"""Notes that go with the glass order."""

_OF_CASES = ON_CABINETS | ON_CASE


def leaf_items(job: Subject, chosen: Sequence[int], note: str = "") -> list[Item]:
    """The column in the order it is read.

    Args:
        job: the job.
        chosen: the leaves on the sheet; the cut list of all stands with the first.
        note: said first where there is one.
    """
    first = chosen[0] == 0
    leaf = job.resolved.door.leaves[chosen[0]]
    notes = (
        *((note,) if note else ()),
        *_matched(job, chosen),
        *_notes(job, leaf, len(chosen)),
    )
    if not first:
        notes = ("Cut list and warnings on the first leaf's sheet.", *notes)
    return [
        *([_cut_list(job)] if first else []),
        _checks(job, leaf),
        Sentences(title="Mind", kind="warning", texts=_cautions(job) if first else ()),
        Sentences(title="Notes", kind="numbered", texts=notes),
    ]


def _matched(job: Subject, chosen: Sequence[int]) -> tuple[str, ...]:
    """Which panel of a matched set goes into which leaf."""
    names = [field.name for i in chosen for field in job.resolved.door.leaves[i].panels]
    parts = {part.name: part for part in job.assembly.parts}
    said = [
        f"{own.mark} {own.matched.words}"
        for own in (parts[name] for name in names)
        if own.matched is not None
    ]
    return (
        (f"Matched: {', '.join(said)}. In no other place; thin lines are its set's triangle.",)
        if said
        else ()
    )


def _reading_order(mark: str) -> tuple[int, int]:
    """Frame first, then what fills it, then the small parts."""
    return ("SRBMPGLTE".find(mark[0]), int(mark[1:]))


def _cut_list(job: Subject) -> TableItem:
    """Length along the grain, width, thickness, as the cut list has them."""
    leaves = job.resolved.door.leaves
    names = {leaf.name for leaf in leaves}
    # boards of a case are on the sheet of their case
    own = tuple(group for group in job.assembly.groups if group.name in names)
    made = cut_list(replace(job.assembly, groups=own))
    rows = []
    for row in sorted(made, key=lambda r: _reading_order(r.mark)):
        glass = row.look == "glass"
        down = glass or row.noun in PANEL_NOUNS
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
        title="Cut list" + {1: "", 2: ", both leaves"}.get(len(leaves), ", all leaves"),
        columns=fitted(columns, rows, height, most=list_width(job.rules.unit)),
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


def _checks(job: Subject, leaf: Leaf) -> TableItem:
    checks = _made_checks(job, leaf)
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


def _made_checks(job: Subject, leaf: Leaf) -> list[_Check]:
    limits = job.resolved.shop.limits
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
                what=f"{name} in its groove{', driest' if panel.moves else ''}",
                found=job.fine(panel.engagement_dry),
                allowed=f"{job.fine(limits.engagement)} or more",
                codes=("panel_leaves_groove",),
            ),
            *_damp(job, name, panel),
            _Check(
                what=f"{name}'s {'field' if panel.tongue else 'face'} below the face",
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


def _damp(job: Subject, name: str, panel: AnyPanel) -> list[_Check]:
    """What the dampest season does to a panel that moves, and the length of its tongue."""
    limits, checks = job.resolved.shop.limits, []
    if panel.moves:
        checks.append(
            _Check(
                what=f"{name} in its groove, dampest",
                found=job.fine(panel.engagement_damp),
                allowed=f"under {job.fine(panel.groove_depth)}",
                codes=(),
            )
        )
    if panel.tongue is not None:
        checks.append(
            _Check(
                what=f"{name}'s tongue",
                found=job.fine(panel.tongue.length),
                allowed=f"{job.fine(panel.engagement_damp + limits.tongue_spare)} or more",
                codes=("tongue_too_short",),
            )
        )
    return checks


def _cautions(job: Subject) -> tuple[str, ...]:
    """Everything to mind that the arrangement does not already say."""
    return tuple(
        said(p)
        for p in job.problems
        if p.level == "caution" and p.code not in ON_ARRANGEMENT | ON_EVERY_BLOCK | _OF_CASES
    )


def _notes(job: Subject, leaf: Leaf, together: int) -> tuple[str, ...]:
    """What the bench must know, each from a number of the job."""
    joint = leaf.joint
    notes = []
    if float(leaf.trim) > 0:
        notes.append(f"Stiles stand {job.wood(leaf.trim)} long at each end; trim after glue-up.")
    if together > 1:
        notes.append("Mark both leaves together, from one story stick.")
    notes += [*_edge_notes(leaf), *_glazing_notes(job, leaf)]
    match joint:
        case LooseTenon():
            notes.append(
                f"Tenons dashed: {job.wood(joint.tenon_thickness)} × "
                f"{job.wood(joint.tenon_width)} × {job.wood(joint.tenon_length)}, in slots "
                f"{job.wood(joint.slot_depth)} deep."
            )
        case StubTenon():
            notes.append(
                f"Stub tenons on the rails {job.fine(joint.thickness)} thick × "
                f"{job.fine(joint.length)} long: rails are cut longer than between the stiles "
                f"by {job.fine(2 * joint.length)}."
            )
        case _:
            assert_never(joint)
    if leaf.sticking is not None:
        moulding, reach = leaf.sticking.moulding, leaf.sticking.reach
        notes.append(
            f"{moulding.name.capitalize()} {job.fine(moulding.width)} × "
            f"{job.fine(moulding.depth)} round every opening, on the face; rails "
            f"{leaf.sticking.corners}: blanks go {job.fine(reach)} past either shoulder."
        )
    for field in leaf.panels[:1] if isinstance(joint, StubTenon) else leaf.panels:
        low, high = job.wood(field.groove_low), job.wood(field.groove_high)
        stops = "from end to end" if field.through else f"stopped: {low} to {high} up"
        notes.append(
            f"Groove for the panel {job.fine(field.panel.groove_width)} × "
            f"{job.fine(field.panel.groove_depth)}, in the stiles {stops}. "
            + ("Panel loose in it: no glue." if field.panel.moves else "Panel dry in it.")
        )
    if leaf.handle is not None:
        notes.append(_handle(job, leaf.handle))
    if leaf.guide is not None:
        notes.append(
            f"Guide groove {job.fine(leaf.guide.width)} × {job.fine(leaf.guide.depth)} in the "
            "foot, run after trimming."
        )
    notes += [
        said(p)
        for p in job.problems
        if p.level == "note" and p.code not in ON_ARRANGEMENT | ON_ORDERS | _OF_CASES
    ]
    return tuple(notes)


def _handle(job: Subject, handle: Handle) -> str:
    """Its holes, and where they stand."""
    if handle.kind == "knob":
        return f"Knob: one hole {job.fine(handle.hole)} across through from the face."
    lies = "level" if handle.level else "upright"
    return (
        f"Bar handle, {lies}: two holes {job.fine(handle.hole)} across through from the face, "
        f"{job.fine(handle.apart)} apart, its middle where the chains say."
    )


def _edge_notes(leaf: Leaf) -> list[str]:
    """Which edges are planed out of square, and which face keeps the full width."""
    planed = bevels(leaf)
    if not planed:
        return []
    full = {"front": "face", "back": "back"}[leaf.hung.knuckles or "front"]
    sides = " and ".join(f"{side} edge" for side, _ in planed)
    angle = degrees(planed[0][1])
    return [f"Plane the {sides} {angle} out of square after trimming: full width at the {full}."]


def _glazing_notes(job: Subject, leaf: Leaf) -> list[str]:
    """Bars, the rebate of the glass, and where an arch is struck from."""
    notes = []
    barred = next((lite for lite in leaf.lites if lite.bars), None)
    if barred is not None:
        face = barred.bars[0].high - barred.bars[0].low
        notes.append(f"Bars {job.wood(face)} wide on the face, in one line over the whole leaf.")
    found = arched_rail(leaf)
    if found is not None:
        _, head = found
        sizes = " and ".join(job.wood(radius) for radius in radii(head))
        over = f", of radius {sizes}," if sizes else ""
        notes.append(
            f"The curve{over} rises {job.wood(head.curve.rise)} over a span of "
            f"{job.wood(head.curve.span)}; its left springing point lies "
            f"{job.wood(abs(head.left))} {'right' if float(head.left) >= 0 else 'left'} of leaf "
            f"{leaf.letter}'s left edge."
        )
    return notes
