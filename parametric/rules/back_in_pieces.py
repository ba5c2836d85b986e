"""A back that no sheet is large enough for is made in pieces.

Why: whoever orders the sheets and whoever looks into the case must know that there is a joint,
and what is behind it.
Example: a back 1516 wide of sheets 1220 wide, with a partition in the middle, is two of 758.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.cases.case import Case, CaseBoard
from parametric.names import short
from parametric.problems import Problem
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_names import begun, listed


def back_in_pieces(cases: CheckedCases) -> Iterator[Problem]:
    """Note each, with where its joints stand."""
    for standing in cases.casework.cases:
        case = standing.case
        pieces = case.of_role("back")
        if len(pieces) < 2 or case.back is None:
            continue
        said = cases.said.wood
        # under a slope its pieces are as high as each must be
        high = case.back.height if case.box.slope is None else max(p.length for p in pieces)
        whole = f"{said(case.back.width)} wide and {said(high)} high"
        each = listed(
            f"{short(piece.name)} {said(piece.width)} x {said(piece.length)}" for piece in pieces
        )
        yield Problem(
            code="back_in_pieces",
            level="note",
            message=f"{begun(standing.name)}: no sheet is large enough for its back, {whole}. It is "
            f"made in {len(pieces)}, {_held(case, pieces)}: {each}.",
            where=case.spec.here,
            about=standing.name,
            found=whole,
            allowed="one sheet",
        )


def _held(case: Case, pieces: tuple[CaseBoard, ...]) -> str:
    """What the joints stand on."""
    if strips := case.of_role("cover strip"):
        one = len(strips) == 1
        return (
            f"with {'a cover strip behind the joint' if one else 'cover strips behind the joints'}"
        )
    over = len({piece.z for piece in pieces}) > 1
    return f"joined on the middle of {'a fixed shelf' if over else 'a partition'}"
