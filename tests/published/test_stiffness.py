"""Stiffness of timbers and boards against the tables they are from.

Wood Handbook: Wood as an Engineering Material, US Forest Products Laboratory, General Technical
Report FPL-GTR-190, 2010. Table 5-3a prints the same timbers in MPa as 5-3b in psi: ponderosa pine
8 900. ANSI A208.1: particleboard grade M-2, 2 250 N/mm2, 326 300 psi.
"""

from __future__ import annotations

import pytest

from parametric.catalog.boards import BOARDS
from parametric.catalog.stiffness import BOARD_STIFFNESS, TIMBER_STIFFNESS, least_stiff_board
from parametric.catalog.timbers import TIMBERS
from parametric.figures import leaves
from parametric.units import STIFFNESS


def test_every_timber_and_board_has_its_stiffness_and_source() -> None:
    assert set(TIMBER_STIFFNESS) == set(TIMBERS)
    assert set(BOARD_STIFFNESS) == set(BOARDS)
    for figure in (*TIMBER_STIFFNESS.values(), *BOARD_STIFFNESS.values()):
        assert figure.unit == "N/mm2"
        assert all(leaf.source for leaf in leaves(figure))


def test_ponderosa_pine_in_both_tables() -> None:
    """To the hundred that table 5-3a prints."""
    assert round(TIMBER_STIFFNESS["ponderosa pine"], -2) == 8900


def test_particleboard_in_both_units() -> None:
    assert BOARD_STIFFNESS["chipboard"] == pytest.approx(
        float(STIFFNESS.read("326300 psi")), rel=2e-4
    )


def test_a_board_nobody_knows_is_taken_as_the_least_stiff() -> None:
    assert least_stiff_board("mystery") == min(BOARD_STIFFNESS.values())
