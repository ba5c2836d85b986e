"""Larch Hill as it is pictured: its page, its model and its scene, made once."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path

from parametric.job import check
from parametric.model import Assembly
from parametric.pack.pictures import picture_scene
from parametric.pack.preview import preview_page
from parametric.solids.cache import user_cache
from parametric.solids.solid_set import build_solids
from parametric.trade.paperwork import paperwork
from parametric.writers.client_page import PreviewPage
from parametric.writers.glb import write_glb
from parametric.writers.picture_scene import PictureScene

DESIGN = Path(__file__).resolve().parents[2] / "examples/larch-hill-reading-room/design.yaml"


@dataclass(frozen=True, slots=True, kw_only=True)
class Pictured:
    page: PreviewPage
    assembly: Assembly
    scene: PictureScene


@cache
def pictured() -> Pictured:
    job = check(DESIGN, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    page = preview_page(
        job.resolved,
        job.loads,
        fingerprint="0" * 64,
        elevations=("<svg/>",),
        paper=paperwork(job.resolved, job.assembly, job.loads),
    )
    return Pictured(page=page, assembly=job.assembly, scene=picture_scene(page, job.assembly))


@cache
def model() -> bytes:
    assembly = pictured().assembly
    return write_glb(assembly, build_solids(assembly.parts, user_cache()))
