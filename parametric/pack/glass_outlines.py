"""The outlines that the glazier cuts shaped panes by: one file a size."""

from __future__ import annotations

from parametric.cnc.notes import Stamp
from parametric.resolve.door import Resolved
from parametric.trade.glass_words import outline_words
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import printed
from parametric.writers.glass_dxf import write_glass_dxf


def glass_outlines(resolved: Resolved, paper: Paperwork, stamp: Stamp) -> dict[str, bytes]:
    """One DXF for each size of pane that is no rectangle, by its path in the pack."""
    order, said = paper.glazing, printed(resolved)
    revision = f"revision {stamp.revision}" if stamp.revision else ""
    title = ", ".join(word for word in (stamp.job, stamp.fingerprint, revision) if word)
    return {
        f"order/{row.template.outline_file}": write_glass_dxf(
            row.template.outline,
            row.mark,
            outline_words(order, row, row.template, said, title),
        )
        for row in order.rows
        if row.template is not None
    }
