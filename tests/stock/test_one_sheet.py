"""The most from one sheet, against every whole cut there is."""

from __future__ import annotations

import functools
import itertools

from hypothesis import given, settings
from hypothesis import strategies as st

from parametric.trade.stock.guillotine import Best, Grid, grid
from parametric.trade.stock.laying import Kind
from parametric.trade.stock.limited import Limited
from parametric.trade.stock.spots import Spot, pieces_of

KINDS = st.lists(
    st.tuples(st.integers(1, 8), st.integers(1, 6), st.integers(1, 2), st.integers(1, 9)),
    min_size=1,
    max_size=4,
    unique_by=lambda kind: kind[:2],
)


def most_of_all(kinds: list[tuple[int, int, int, int]], long: int, wide: int) -> int:
    """As often as one likes, by trying every cut at every whole number."""

    @functools.cache
    def most(long: int, wide: int) -> int:
        best = max((v for a, b, _, v in kinds if a <= long and b <= wide), default=0)
        for x in range(1, long // 2 + 1):
            best = max(best, most(x, wide) + most(long - x, wide))
        for y in range(1, wide // 2 + 1):
            best = max(best, most(long, y) + most(long, wide - y))
        return best

    return most(long, wide)


@settings(max_examples=60, deadline=None)
@given(kinds=KINDS, long=st.integers(1, 14), wide=st.integers(1, 10))
def test_the_best_of_a_grid_is_the_best_of_all_cuts(
    kinds: list[tuple[int, int, int, int]], long: int, wide: int
) -> None:
    # with as many pieces as could lie there, a grid leaves out no place that matters
    many = [Kind(long=a, wide=b, count=20, turns=False) for a, b, _, _ in kinds]
    made = grid(many, long, wide, 10**9)
    assert made is not None
    best = Best(made, [value for *_, value in kinds])
    assert best.of(long, wide) == most_of_all(kinds, long, wide)
    top = best.cut_up(Spot(0, 0, long, wide))
    assert sum(kinds[spot.kind][3] for spot in pieces_of(top)) == best.of(long, wide)


@settings(max_examples=60, deadline=None)
@given(kinds=KINDS, long=st.integers(1, 14), wide=st.integers(1, 10))
def test_a_grid_with_few_places_still_cuts_up_what_it_promises(
    kinds: list[tuple[int, int, int, int]], long: int, wide: int
) -> None:
    few = tuple(Kind(long=a, wide=b, count=n, turns=False) for a, b, n, _ in kinds)
    xs = tuple(sorted({0, long, *(a for a, *_ in kinds if a <= long)}))
    ys = tuple(sorted({0, wide, *(b for _, b, *_ in kinds if b <= wide)}))
    best = Best(Grid(kinds=few, xs=xs, ys=ys, every_cut=False), [value for *_, value in kinds])
    top = best.cut_up(Spot(0, 0, long, wide))
    assert sum(kinds[spot.kind][3] for spot in pieces_of(top)) >= best.of(long, wide)


def every_mix(
    kinds: list[tuple[int, int, int, int]], long: int, wide: int
) -> frozenset[tuple[int, ...]]:
    """Every mix of pieces that comes out of a sheet, no kind oftener than there are."""
    most = tuple(count for *_, count, _ in kinds)

    @functools.cache
    def mixes(long: int, wide: int) -> frozenset[tuple[int, ...]]:
        none = (0,) * len(kinds)
        found = {none}
        for n, (a, b, _, _) in enumerate(kinds):
            if a <= long and b <= wide:
                found.add((*none[:n], 1, *none[n + 1 :]))
        parts = [((x, wide), (long - x, wide)) for x in range(1, long // 2 + 1)]
        parts += [((long, y), (long, wide - y)) for y in range(1, wide // 2 + 1)]
        for one, other in parts:
            for first, second in itertools.product(mixes(*one), mixes(*other)):
                mix = tuple(a + b for a, b in zip(first, second, strict=True))
                if all(n <= m for n, m in zip(mix, most, strict=True)):
                    found.add(mix)
        return frozenset(found)

    return mixes(long, wide)


@settings(max_examples=40, deadline=None)
@given(kinds=KINDS, long=st.integers(1, 10), wide=st.integers(1, 7))
def test_the_most_with_limits_is_the_most_of_every_mix(
    kinds: list[tuple[int, int, int, int]], long: int, wide: int
) -> None:
    values = [value for *_, value in kinds]
    own = [Kind(long=a, wide=b, count=n, turns=False) for a, b, n, _ in kinds]
    made = grid(own, long, wide, 10**9)
    assert made is not None
    most = max(
        sum(n * v for n, v in zip(mix, values, strict=True)) for mix in every_mix(kinds, long, wide)
    )
    limited = Limited(Best(made, values))
    assert limited.most(long, wide) == most
    if most:
        top = Spot(0, 0, long, wide)
        assert limited.cut_up(top, most)
        assert sum(values[spot.kind] for spot in pieces_of(top)) == most
