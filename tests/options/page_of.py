"""The client's page of a design with options, without the rest of its pack."""

from __future__ import annotations

from parametric.job import Job
from parametric.pack.preview_options import Other, shown_beside
from parametric.writers.html import write_html


def page_of(job: Job) -> bytes:
    """The page as a build writes it, the job's own option shown first."""
    first, *others = (
        shown_beside(
            Other(
                resolved=one.resolved,
                assembly=one.assembly,
                loads=one.loads,
                problems=one.own,
            ),
            use_cache=True,
        )
        for one in (job, *job.others)
    )
    return write_html(*first, tuple(others))
