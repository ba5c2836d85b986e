"""All files of a pack against the design they were made from."""

from __future__ import annotations

from collections.abc import Mapping

from parametric.pack.verifying.cutting_plan import check_cutting_plan
from parametric.pack.verifying.drawings import check_drawings
from parametric.pack.verifying.figures_file import FIGURES, check_figures
from parametric.pack.verifying.glass_outlines import (
    check_glass_outlines,
    outline_paths,
    shaped_panes,
)
from parametric.pack.verifying.known import Known, Verdict
from parametric.pack.verifying.lists import check_lists
from parametric.pack.verifying.model_glb import check_glb
from parametric.pack.verifying.model_step import check_step
from parametric.pack.verifying.model_usdz import check_usdz
from parametric.pack.verifying.not_for_making import check_not_for_making
from parametric.pack.verifying.page import check_page
from parametric.pack.verifying.rebuilt import check_cutting

MODELS = ("glb", "step", "usdz")
_ASKED_FOR = "usdz"
"""A model that only some packs have."""


class FaultyPackError(Exception):
    """Files that do not make or show the design: a fault of ours, and no pack is written."""

    def __init__(self, faults: tuple[str, ...]) -> None:
        """Say all of them."""
        super().__init__("the files do not agree with the design:\n  " + "\n  ".join(faults))
        self.faults = faults


def verify(files: Mapping[str, bytes], known: Known) -> dict[str, Verdict]:
    """Read the files of a pack back and hold each against the design.

    Args:
        files: the files by their path in the pack; numbers.json may still be wanting.
        known: the design.

    Returns:
        What was looked at and what is wrong, by comparison.
    """
    drawings = {
        path: data
        for path, data in files.items()
        if path.startswith("shop/") and path.endswith(".dxf")
    }
    if known.not_for_making:
        return {
            "marks": check_not_for_making(files),
            "drawings": check_drawings(drawings, known),
            **_models(files, known),
            **_numbers(files, known),
        }
    return {
        "cnc": check_cutting(files, known),
        "drawings": check_drawings(drawings, known),
        **_models(files, known),
        "lists": check_lists(files, known),
        **_cutting_plan(files, known),
        **_outlines(files, known),
        "page": check_page(files, known),
        **_numbers(files, known),
    }


def _models(files: Mapping[str, bytes], known: Known) -> dict[str, Verdict]:
    there = {path.rpartition(".")[2] for path in files if path.startswith("model/")}
    return {
        ending: _one(files, f".{ending}", known)
        for ending in MODELS
        if ending != _ASKED_FOR or ending in there
    }


def _cutting_plan(files: Mapping[str, bytes], known: Known) -> dict[str, Verdict]:
    """Of a design with parts of sheet material, or of a pack that saws some."""
    verdict = check_cutting_plan(files, known)
    return {"cutting plan": verdict} if verdict.looked_at or verdict.faults else {}


def _outlines(files: Mapping[str, bytes], known: Known) -> dict[str, Verdict]:
    """Of a design that has shaped panes, or of a pack that has their files."""
    if not shaped_panes(known) and not outline_paths(files):
        return {}
    return {"glass": check_glass_outlines(files, known)}


def _numbers(files: Mapping[str, bytes], known: Known) -> dict[str, Verdict]:
    return {"numbers": check_figures(files[FIGURES], known)} if FIGURES in files else {}


def _one(files: Mapping[str, bytes], ending: str, known: Known) -> Verdict:
    """The one model of a kind."""
    found = [path for path in files if path.startswith("model/") and path.endswith(ending)]
    if len(found) != 1:
        return Verdict(
            looked_at={}, faults=(f"there are {len(found)} models that end in {ending}",)
        )
    checks = {".glb": check_glb, ".step": check_step, ".usdz": check_usdz}
    verdict = checks[ending](files[found[0]], known)
    return Verdict(
        looked_at=verdict.looked_at,
        faults=tuple(f"{found[0]}: {fault}" for fault in verdict.faults),
    )


def faults_of(verdicts: Mapping[str, Verdict]) -> tuple[str, ...]:
    """Everything that was found wrong."""
    return tuple(fault for verdict in verdicts.values() for fault in verdict.faults)
