"""numbers.json against the design: every number by its name, every type of part."""

from __future__ import annotations

import json
import math
from collections.abc import Iterator, Mapping
from typing import Any

from parametric.pack.verifying.known import Known, Verdict

FIGURES = "numbers.json"
_SAME = 1e-9
"""Relative: numbers are written at full precision."""


def check_figures(data: bytes, known: Known) -> Verdict:
    """Hold numbers.json against the design.

    Args:
        data: the file.
        known: the design.
    """
    try:
        content = json.loads(data)
        faults = [*_figures(content, known), *_parts(content, known)]
        count = len(content["figures"])
    except (ValueError, KeyError, TypeError) as error:
        return Verdict(looked_at={}, faults=(f"{FIGURES} cannot be read back: {error!r}",))
    return Verdict(looked_at={"figures": count}, faults=tuple(faults))


def _figures(content: Mapping[str, Any], known: Known) -> Iterator[str]:
    if content["format"] != 1 or content["units"] != "mm":
        yield f"{FIGURES}: is not of format 1 in mm"
    said = {row["name"]: row for row in content["figures"]}
    for name in said:
        if name not in known.figures:
            yield f"{FIGURES}: {name} is no number of the design"
    for name, figure in known.figures.items():
        row = said.get(name)
        if row is None:
            yield f"{FIGURES}: {name} is missing"
        elif not math.isclose(row["value"], float(figure), rel_tol=_SAME, abs_tol=_SAME):
            yield f"{FIGURES}: {name} is {row['value']}, not {float(figure)}"
        elif row["unit"] != figure.unit:
            yield f"{FIGURES}: {name} is in {row['unit']}, not in {figure.unit}"


def _parts(content: Mapping[str, Any], known: Known) -> Iterator[str]:
    said = {row["mark"]: row for row in content["parts"]}
    types: dict[str, list[str]] = {}
    for part in known.assembly.parts:
        types.setdefault(part.mark, []).append(part.name)
        row = said.get(part.mark)
        if row is None:
            yield f"{FIGURES}: {part.mark} is missing"
            continue
        blank = (part.blank.length, part.blank.width, part.blank.thickness)
        sizes = [*blank, *part.finished, part.volume]
        told = [*row["blank"], *row["finished"], row["volume_mm3"]]
        if not all(
            math.isclose(a, float(b), rel_tol=_SAME, abs_tol=_SAME)
            for a, b in zip(told, sizes, strict=True)
        ):
            yield f"{FIGURES}: the sizes of {part.name} are not those of {part.mark}"
    for mark, row in said.items():
        if row["names"] != types.get(mark) or row["count"] != len(row["names"]):
            yield f"{FIGURES}: {mark} is not the pieces that the design has"
