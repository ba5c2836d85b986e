"""The other options of a job, as the client's page shows them beside the pack's own."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.drawing import draw_fronts
from parametric.model import Assembly
from parametric.pack.preview import preview_page
from parametric.pack.verifying.known import Known, known_design
from parametric.problems import Problem
from parametric.resolve.door import Resolved
from parametric.trade.fingerprint import fingerprint, mark
from parametric.trade.loads import LeafLoad
from parametric.trade.paperwork import paperwork
from parametric.writers.client_page import PreviewPage
from parametric.writers.svg import write_svg


@dataclass(frozen=True, slots=True, kw_only=True)
class Other:
    """Another option of the job that a pack is of; `problems` are its own."""

    resolved: Resolved
    assembly: Assembly
    loads: tuple[LeafLoad, ...]
    problems: tuple[Problem, ...]

    def known(self) -> Known:
        """As the page must show it."""
        return known_design(self.resolved, self.assembly, self.loads)


def shown_beside(other: Other, *, use_cache: bool) -> tuple[PreviewPage, bytes]:
    """What the page is told of another option, and its model."""
    from parametric.solids.cache import user_cache
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb

    resolved, assembly, loads = other.resolved, other.assembly, other.loads
    whole = fingerprint(resolved, assembly)
    paper = paperwork(resolved, assembly, loads)
    fronts = draw_fronts(resolved, assembly, loads, other.problems, mark=mark(whole), paper=paper)
    page = preview_page(
        resolved,
        loads,
        fingerprint=whole,
        elevations=tuple(map(write_svg, fronts)),
        assembly=assembly,
        problems=other.problems,
        paper=paper,
    )
    solids = build_solids(assembly.parts, user_cache() if use_cache else None)
    return page, write_glb(assembly, solids)
