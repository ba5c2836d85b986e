"""Moulded leaves as solids and as whole packs: sound, without common wood, closed at every corner."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.job import Job
from parametric.resolve.sticking import sight_below
from tests.glazing.lites import clashes, whole_pack
from tests.profiles.moulded_doors import (
    ARCHED,
    PANELLED,
    REBATE,
    STOPS,
    checked,
    design,
    leaf_of,
    part,
    written,
)

pytestmark = pytest.mark.kernel
CLOSE = 1e-3
"""The widest gap that is no gap, mm."""
WAYS = [
    (kind, corners)
    for kind in ("chamfer", "ovolo", "ogee", "cove", "bead")
    for corners in ("coped", "mitred")
    if kind != "bead" or corners == "mitred"
]


def moulded(kind: str, corners: str, bands: str, held: str = REBATE) -> str:
    return design(kind, blocks=f"sticking {kind}: {{corners: {corners}}}\n", bands=bands, held=held)


def corners_close(job: Job) -> None:
    """The top rail's end on the left stile, measured from either, in the leaf."""
    from parametric.solids.placing import placed
    from parametric.solids.shape import part_solid
    from tests.profiles.gaps import Joint, gap_at

    leaf = leaf_of(job)
    top, left = leaf.rails[0], float(leaf.left_stile)
    assert leaf.sticking is not None
    crown = 0.0 if top.head is None else float(top.head.crown)
    joint = Joint(
        sticking=leaf.sticking.on("high face"),
        path=sight_below(top, left, left + float(leaf.shoulder)),
        stile=left,
        thick=float(leaf.thickness),
        low=float(top.foot),
        top=float(leaf.height),
        # the glass rebate goes 10 past the sight edge
        plain=float(top.foot) + crown + 12.0,
    )
    stile, rail = (
        placed(part_solid(one), one.placement)
        for one in (part(job, "left stile"), part(job, "top rail"))
    )
    assert gap_at(joint, stile, rail).widest <= CLOSE
    found = gap_at(joint, rail, stile)
    assert found.points >= 40
    assert found.widest <= CLOSE


@pytest.mark.parametrize(("kind", "corners"), WAYS)
def test_a_panelled_leaf_goes_together(tmp_path: Path, kind: str, corners: str) -> None:
    job = checked(tmp_path, moulded(kind, corners, PANELLED))
    assert clashes(job) == []
    corners_close(job)


@pytest.mark.parametrize(("kind", "corners"), WAYS)
def test_an_arched_leaf_goes_together(tmp_path: Path, kind: str, corners: str) -> None:
    job = checked(tmp_path, moulded(kind, corners, ARCHED))
    assert clashes(job) == []
    corners_close(job)


@pytest.mark.parametrize(
    ("shape", "kind"), [("half round", "ogee"), ("pointed", "ovolo"), ("elliptical", "ogee")]
)
def test_other_heads_coped(tmp_path: Path, shape: str, kind: str) -> None:
    rise = {"half round": "", "pointed": ", rise: 420", "elliptical": ", rise: 200"}[shape]
    text = moulded(kind, "coped", ARCHED).replace(
        "shape: segmental, across: leaf, rise: 90", f"shape: {shape}, across: leaf{rise}"
    )
    corners_close(checked(tmp_path, text))


def test_glass_between_stops_that_lie_below_the_moulding(tmp_path: Path) -> None:
    assert clashes(checked(tmp_path, moulded("ovolo", "coped", PANELLED, STOPS))) == []


@pytest.mark.parametrize("corners", ["coped", "mitred"])
def test_leaves_stepped_in_their_face_go_together(tmp_path: Path, corners: str) -> None:
    """The lower leaf of a dutch door is stepped at its top, the upper one at its foot."""
    from parametric.design.starters import templates

    text = (templates() / "dutch.yaml").read_text(encoding="utf-8")
    lines = [
        line for line in text.splitlines() if not line.strip().startswith(("wide: ", "high: "))
    ]
    text = "\n".join(lines).replace("\n  stiles:", "\n  sticking: ovolo\n  stiles:")
    text += f"\nsticking ovolo: {{corners: {corners}}}\n"
    job = checked(tmp_path, text)
    assert job.resolved is not None
    faces = [s.face for leaf in job.resolved.door.leaves for s in leaf.hung.rebates]
    assert "front" in faces
    assert clashes(job) == []


@pytest.mark.parametrize(
    ("kind", "corners", "bands"),
    [("ovolo", "coped", PANELLED), ("ogee", "mitred", ARCHED), ("bead", "mitred", PANELLED)],
)
def test_its_pack_is_as_designed(tmp_path: Path, kind: str, corners: str, bands: str) -> None:
    text = moulded(kind, corners, bands)
    checks = whole_pack(written(tmp_path, text), tmp_path / "pack")
    assert checks["sheets"]["findings"] == []


def test_a_model_with_another_moulding_is_found(tmp_path: Path) -> None:
    """Fillets of 2.5 in place of 2: some 4 mm2 of section more along every sight edge."""
    from parametric.job import check
    from parametric.pack.verifying.step_file import StepFile, products
    from parametric.pack.verifying.step_solids import measure
    from parametric.solids.solid_set import build_solids
    from parametric.writers.step import write_step

    text = moulded("ovolo", "mitred", ARCHED)
    job = checked(tmp_path, text)
    assert job.assembly is not None
    file = StepFile(write_step(job.assembly, build_solids(job.assembly.parts)).decode("ascii"))
    other = check(
        written(tmp_path, text.replace("{corners: mitred}", "{corners: mitred, fillet: 2.5}")),
        user_house=False,
    )
    read = {one.name: measure(file, one.solids[0]) for one in products(file).values() if one.solids}
    for name in ("left stile", "top rail", "bottom rail"):
        own = part(job, name)
        solid = read[f"{own.mark} {own.noun}"]
        # the reader walks cylinders, cones and tori by their own sums
        assert solid.volume == pytest.approx(own.volume, rel=2e-6)
        assert abs(solid.volume - part(other, name).volume) > 2e-5 * own.volume
