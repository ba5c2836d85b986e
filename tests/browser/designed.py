"""The client's page of a design file, with its own model, as a pack has it."""

from __future__ import annotations

from functools import cache

from parametric.job import Job
from parametric.pack.preview import preview_page
from parametric.writers.html import write_html
from tests.solids.designed_run import designed_run


def html_of(job: Job) -> bytes:
    """The page's file of one job."""
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb

    assert job.resolved is not None
    assert job.assembly is not None
    page = preview_page(
        job.resolved,
        job.loads,
        fingerprint="0" * 64,
        elevations=(),
        assembly=job.assembly,
        problems=job.problems,
    )
    return write_html(page, write_glb(job.assembly, build_solids(job.assembly.parts)))


@cache
def designed_html(count: int) -> bytes:
    """The page's file of so many cabinets."""
    return html_of(designed_run(count))
