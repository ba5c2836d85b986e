"""Drawer boxes as solids: of their volume, within their blanks, nothing overlaps, joints touch."""

from __future__ import annotations

import pytest

from parametric.cases.drawer_written import DRAWER_KINDS
from tests.cases.drawers import JOINTS, SHUT, assembly_of, box_of

pytestmark = pytest.mark.kernel


@pytest.mark.parametrize("kind", DRAWER_KINDS)
@pytest.mark.parametrize("joint", JOINTS)
def test_a_box_goes_together(joint: str, kind: str) -> None:
    """`build_solids` holds every solid to its part's volume, and to one valid closed body."""
    from parametric.solids.clash import clashes, touching
    from parametric.solids.solid_set import build_solids

    assembly = assembly_of(box_of(joint=joint, kind=kind))
    solids = build_solids(assembly.parts)
    assert clashes(assembly, SHUT, solids) == ()
    for end in ("box front", "box back"):
        near = touching(assembly, SHUT, solids, f"leaf E / drawer / {end}")
        assert {"leaf E / drawer / left side", "leaf E / drawer / right side"} <= set(near)
