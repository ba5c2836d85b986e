"""Linear and whole-number programmes of cutting patterns, solved by HiGHS.

The solver is loaded when a plan cannot be proved without it. It is given one thread, one
seed and a limit in nodes, never in seconds: a plan is the same on every machine. What it
says is a proposal: bounds are worked out again in whole numbers by whoever asked.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass

MOST_NODES = 2000
_TINY = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A pattern: what it costs, how many pieces of each kind it gives, what stock it takes."""

    cost: float
    gives: tuple[int, ...]
    stock: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Solved:
    """How often each pattern is cut, what one more piece of each kind would cost, and what one
    more of each limited stock would save. `finished`: no cheaper way was left untried.
    """

    times: tuple[float, ...]
    prices: tuple[float, ...]
    saved: tuple[float, ...]
    cost: float
    finished: bool


def solve(
    columns: Sequence[Column],
    wanted: Sequence[int],
    stocked: Sequence[int | None],
    *,
    whole: bool,
) -> Solved:
    """The cheapest way to cut at least what is wanted from these patterns.

    Args:
        columns: the patterns.
        wanted: how many pieces of each kind.
        stocked: how many of each kind of stock there are; None is without limit.
        whole: each pattern a whole number of times.
    """
    import highspy
    import numpy as np

    with _nothing_said():
        solver = highspy.Highs()
    for option, value in (
        ("output_flag", False),
        ("threads", 1),
        ("parallel", "off"),
        ("random_seed", 0),
        ("mip_max_nodes", MOST_NODES),
        ("mip_rel_gap", 0.0),
        ("mip_abs_gap", 1e-7),
    ):
        solver.setOptionValue(option, value)
    limits = [i for i, count in enumerate(stocked) if count is not None]
    rows = len(wanted) + len(limits)
    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = len(columns), rows
    model.col_cost_ = np.array([column.cost for column in columns])
    model.col_lower_ = np.zeros(len(columns))
    model.col_upper_ = np.full(len(columns), highspy.kHighsInf)
    counts = [stocked[i] or 0 for i in limits]
    model.row_lower_ = np.array([*map(float, wanted), *(-highspy.kHighsInf for _ in limits)])
    model.row_upper_ = np.array([*(highspy.kHighsInf for _ in wanted), *map(float, counts)])
    starts, index, value_of = [0], [], []
    for column in columns:
        for row, count in enumerate(column.gives):
            if count:
                index.append(row)
                value_of.append(float(count))
        if column.stock in limits:
            index.append(len(wanted) + limits.index(column.stock))
            value_of.append(1.0)
        starts.append(len(index))
    model.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    model.a_matrix_.start_ = np.array(starts)
    model.a_matrix_.index_ = np.array(index)
    model.a_matrix_.value_ = np.array(value_of)
    if whole:
        model.integrality_ = [highspy.HighsVarType.kInteger] * len(columns)
    solver.passModel(model)
    solver.run()
    found = solver.getSolution()
    times = tuple(float(t) for t in found.col_value)
    duals = [] if whole else [float(p) for p in found.row_dual]
    saved = dict(zip(limits, duals[len(wanted) :], strict=True)) if duals else {}
    return Solved(
        times=tuple(float(round(t)) if abs(t - round(t)) < _TINY else t for t in times),
        prices=tuple(max(0.0, price) for price in duals[: len(wanted)]),
        saved=tuple(max(0.0, -saved.get(i, 0.0)) for i in range(len(stocked))),
        cost=float(solver.getInfo().objective_function_value),
        finished=solver.getModelStatus() == highspy.HighsModelStatus.kOptimal,
    )


@contextmanager
def _nothing_said() -> Iterator[None]:
    """The solver greets on the terminal as it is made, before it can be told not to; what
    `--json` prints must stand alone there.
    """
    sys.stdout.flush()
    kept = os.dup(1)
    nowhere = os.open(os.devnull, os.O_WRONLY)
    try:
        os.dup2(nowhere, 1)
        yield
    finally:
        os.dup2(kept, 1)
        os.close(kept)
        os.close(nowhere)
