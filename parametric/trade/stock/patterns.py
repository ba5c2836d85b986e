"""Patterns found as they are wanted: which cuttings are worth having, and how few can do.

The programme prices each piece by what it would save; the pattern worth most at those
prices is cut into its place; when none is worth more than it costs, no other would help.

Source: Gilmore and Gomory, A linear programming approach to the cutting stock problem,
Operations Research 9 (1961) 849-859; the bound along the way is Farley's, Operations
Research 38 (1990) 922-923 (both from memory).
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from parametric.trade.stock.programme import Column, solve

FINE = 1_000_000_000
"""Prices are rounded to so many parts; every whole set of prices gives a true bound."""
MOST_ROUNDS = 400
_WORTH_IT = 1e-7


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """The best cutting of one kind of stock at some prices, and what none is worth more than."""

    gives: tuple[int, ...]
    stock: int
    worth: int
    at_most: int


Pricing = Callable[[Sequence[int]], Sequence[Offer]]
"""The best cutting of every kind of stock, for the value of each kind of piece."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Generated:
    """Patterns, what the cheapest plan costs at least, whole or not, and the values of the
    pieces that show it.
    """

    columns: tuple[Column, ...]
    bound: Fraction
    prices: tuple[int, ...]


def generate(
    wanted: Sequence[int],
    stocked: Sequence[int | None],
    costs: Sequence[int],
    price: Pricing,
    columns: Sequence[Column],
    *,
    enough: int,
    rounds: int = MOST_ROUNDS,
) -> Generated:
    """Find patterns until no other helps, or until the bound proves a plan that is known.

    Args:
        wanted: how many pieces of each kind, all of which some column gives.
        stocked: how many of each kind of stock; None is without limit.
        costs: of each kind of stock; what is in stock anyway costs nothing.
        price: finds the best cuttings.
        columns: patterns to begin with.
        enough: what the best plan known costs.
        rounds: how often at most.
    """
    found = dict.fromkeys(columns)
    bound, prices = Fraction(-1), [0] * len(wanted)
    for _ in range(rounds):
        now = solve(tuple(found), wanted, stocked, whole=False)
        values = [round(one * FINE) for one in now.prices]
        offers = price(values)
        asked = least_cost(wanted, stocked, costs, values, offers)
        if asked > bound:
            bound, prices = asked, values
        if -(-bound.numerator // bound.denominator) >= enough:
            break
        fresh = [
            Column(cost=float(costs[offer.stock]), gives=offer.gives, stock=offer.stock)
            for offer in offers
            if offer.worth / FINE
            > costs[offer.stock] + now.saved[offer.stock] + _WORTH_IT * max(1, costs[offer.stock])
        ]
        fresh = [column for column in fresh if column not in found]
        if not fresh:
            break
        found.update(dict.fromkeys(fresh))
    return Generated(columns=tuple(found), bound=bound, prices=tuple(prices))


def least_cost(
    wanted: Sequence[int],
    stocked: Sequence[int | None],
    costs: Sequence[int],
    values: Sequence[int],
    offers: Sequence[Offer],
) -> Fraction:
    """What any plan costs at least, by values that no cutting beats.

    All pieces together are worth so much. What is in stock anyway carries off at most its
    best cutting each; the rest is bought, at no more worth for its cost than the best buys.
    """
    worth = sum(count * value for count, value in zip(wanted, values, strict=True))
    best = Fraction(0)
    for offer in offers:
        count = stocked[offer.stock]
        if count is None:
            best = max(best, Fraction(offer.at_most, costs[offer.stock]))
        else:
            worth -= count * offer.at_most
    return max(Fraction(0), Fraction(worth) / best) if best else Fraction(0)
