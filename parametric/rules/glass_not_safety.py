"""Glass in a door breaks over people.

Why: panes in doors that a 76 ball can pass must be safety glass in most places; local
codes decide, and may ask for more.
Example: an ordinary pane of 778.5 x 515.
Source: 16 CFR 1201; IRC 2015 R308.4.1 with its 3 in sphere exception.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.catalog.glass_facts import SAFETY_KINDS, Glazing, safety_glazing
from parametric.infill.glass import Pane
from parametric.problems import Problem
from parametric.rules.checked import Checked


def glass_not_safety(job: Checked) -> Iterator[Problem]:
    """Caution for any other kind; a note that names the kind once it is a safety one."""
    for pane, asked, size in _sizes(job):
        glass = pane.written
        if pane.kind in SAFETY_KINDS:
            yield Problem(
                code="glass_not_safety",
                level="note",
                message=f"Safety glass, {pane.kind}, {_thick(job, pane)} thick, {size}: "
                f"class asked for is category {asked.category}. Each pane carries its maker's "
                "permanent mark and is ordered to size; it cannot be cut again. Local codes decide.",
                where=glass.line("kind"),
                about=pane.name,
                found=pane.kind,
                allowed=asked.because,
            )
        else:
            yield Problem(
                code="glass_not_safety",
                level="caution",
                message="Glass in a door: safety glass unless a 76 ball cannot pass. Your "
                f"{'panes are' if ' and ' in size else 'pane is'} {size}.",
                where=glass.line("kind"),
                about="glass not safety",
                found=pane.kind,
                allowed=", ".join(sorted(SAFETY_KINDS)) + f" ({asked.source})",
                fix="Write `kind: toughened` or `kind: laminated`; or accept it under `accepted` "
                "with initials, date and reason. It stays printed. Local codes decide.",
            )


def _thick(job: Checked, pane: Pane) -> str:
    """As it is sold; of an insulated unit its two panes and the space between them."""
    if pane.unit is None:
        return job.fine(pane.nominal)
    return f"unit {' / '.join(job.fine(size) for size in pane.unit)}"


def _sizes(job: Checked) -> Iterator[tuple[Pane, Glazing, str]]:
    """The first pane of every kind and class, and the sizes of all that are like it."""
    found: dict[tuple[object, ...], tuple[Pane, Glazing, list[str]]] = {}
    for leaf in job.leaves:
        for lite in leaf.lites:
            for pane in lite.panes:
                wide, high = pane.opening
                asked = safety_glazing(
                    pane.width, pane.height, opening_width=wide, opening_height=high
                )
                if asked.exempt:
                    continue
                key = (pane.kind, pane.written.here, float(pane.thickness), asked.category)
                size = f"{job.fine(pane.width)} × {job.fine(pane.height)}"
                _, _, sizes = found.setdefault(key, (pane, asked, []))
                if size not in sizes:
                    sizes.append(size)
    for pane, asked, sizes in found.values():
        *first, last = sizes
        yield pane, asked, f"{', '.join(first)} and {last}" if first else last
