"""numbers.json: every resolved number with its provenance, the problems, the parts."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from parametric.figures import Figure, collect, formula, inputs
from parametric.model import Assembly, Part
from parametric.problems import Problem
from parametric.resolve.door import Resolved
from parametric.trade.case_shelves import case_shelves
from parametric.trade.loads import LeafLoad
from parametric.trade.paperwork import Paperwork


def numbers(
    resolved: Resolved,
    loads: tuple[LeafLoad, ...],
    assembly: Assembly,
    problems: tuple[Problem, ...],
    *,
    paper: Paperwork | None,
    fingerprint: str,
    verification: Mapping[str, Any],
) -> dict[str, Any]:
    """The contract of numbers.json, format 1. Values in mm, kg, deg at full precision."""
    option = resolved.design.option
    return {
        "format": 1,
        "design": resolved.design.job,
        **({} if option is None else {"option": option.letter, "called": option.called}),
        "fingerprint": fingerprint,
        "units": "mm",
        "figures": [figure_record(f) for f in figures(resolved, loads, paper).values()],
        "problems": [problem_record(p) for p in problems],
        "parts": part_records(assembly),
        "verification": dict(verification),
    }


def figures(
    resolved: Resolved, loads: tuple[LeafLoad, ...], paper: Paperwork | None = None
) -> dict[str, Figure]:
    """Every named number of a job by its name, inputs before what follows from them.

    Those of its lists and set-ups too, where there is paper: a design with stops has none.
    """
    return collect((resolved.doors, resolved.casework, loads, case_shelves(resolved), paper))


def figure_record(figure: Figure) -> dict[str, Any]:
    """One figure with its sum and where its inputs came from."""
    where = None if figure.where is None else f"{figure.where.file}:{figure.where.line}"
    return {
        "name": figure.name,
        "value": float(figure),
        "unit": figure.unit,
        "origin": figure.origin,
        "formula": formula(figure),
        "inputs": {name: float(value) for name, value in inputs(figure).items()},
        "source": figure.source or where,
    }


def problem_record(problem: Problem) -> dict[str, Any]:
    """One problem; `where` is the name of the thing it is about."""
    return {
        "code": problem.code,
        "level": problem.level,
        "file": problem.where.file if problem.where else None,
        "line": problem.where.line if problem.where else None,
        "where": problem.about,
        "message": problem.message,
        "found": problem.found,
        "allowed": problem.allowed,
        "fix": problem.fix,
    }


def part_records(assembly: Assembly) -> list[dict[str, Any]]:
    """Every part type; what is supplied has no mass of ours."""
    types: dict[str, list[Part]] = {}
    for part in assembly.parts:
        types.setdefault(part.mark, []).append(part)
    return [
        {
            "mark": mark,
            "noun": parts[0].noun,
            "names": [part.name for part in parts],
            "count": len(parts),
            "material": parts[0].material.name,
            "supplied": parts[0].supplied,
            "blank": [
                float(size)
                for size in (parts[0].blank.length, parts[0].blank.width, parts[0].blank.thickness)
            ],
            "finished": [float(size) for size in parts[0].finished],
            "volume_mm3": float(parts[0].volume),
            "mass_kg": None if parts[0].supplied else float(parts[0].mass),
        }
        for mark, parts in types.items()
    ]
