"""What must be true of every flap that can be hung, tried on random ones."""

from __future__ import annotations

import math
import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from parametric.hardware.gas_strut import GasStruts
from parametric.hardware.lid_stay import LidStays
from parametric.hardware.stay import NoPlace
from parametric.job import Job, check
from parametric.problems import stops
from tests.cases.flaps import apart, cups, plates, stays_in
from tests.invariants.designs import halves

TRIES = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@st.composite
def cupboards(draw: st.DrawFn) -> str:
    """A cabinet with one to three flaps and fronts between them, in one bay or two; on the wall."""
    fronts = draw(st.sampled_from(["overlay", "inset", "half overlay"]))
    count = draw(st.integers(1, 3))
    high = count * draw(st.integers(300, 380)) + 60
    lines, given = [], draw(st.integers(0, count - 1))
    for index in range(count):
        kind = (
            "flap" if index == given else draw(st.sampled_from(["flap", "drawer", "open", "door"]))
        )
        lines.append(f"    - {kind}: {'equal' if count > 1 else 'rest'}")
        if kind == "flap":
            side = draw(st.sampled_from(["top", "bottom"]))
            lines += [f"      hinge side: {side}", f"      stay: {side}"]
        if kind == "door":
            lines.append("      hinge side: left")
    strut, stroke = draw(st.sampled_from([(244, 85), (244, 95), (300, 130), (200, 70)]))
    return f"""stilewright: 1
job: Weir Cottage
units: mm
survey:
  widths: {{middle: 2000}}
  left side: plumb
  heights: {{left: 2500, right: 2500}}
  floor: level
cabinet:
  above floor: {draw(st.integers(600, 1300))}
  width: {draw(st.integers(420, 1100))}
  height: {high}
  depth: {draw(halves(260, 450))}
  fronts: {fronts}
  front gap: {draw(halves(2, 4))}
  dado: {draw(st.sampled_from([0, 5]))}
  corners: {draw(st.sampled_from(["dowel", "screw"]))}
  top to bottom:
{chr(10).join(lines)}
leaf:
  timber: {draw(st.sampled_from(["tulipwood", "ash"]))}
  thickness: {draw(st.sampled_from([18, 20, 22]))}
  stiles: {draw(st.integers(52, 75))}
  trim: {draw(st.sampled_from([0, 10]))}
  site trim: 0
  top to bottom: [top rail: 60, panel: rest, bottom rail: 60]
joint: {{kind: stub tenon, length: 10}}
panel: {{kind: board, thickness: 9, groove: 9 x 10, clearance: 1}}
hinge: {{kind: cup, depth: 12, from ends: 110, steps: {{700: 2, 1600: 3}}}}
drawer: {{sides: 12, slides: 12.7}}
stay top:
  kind: gas strut
  opens: {draw(st.integers(80, 100))} deg
  length: {strut}
  stroke: {stroke}
  on leaf: {draw(st.integers(60, 95))} x 8
stay bottom:
  kind: lid stay
  length: {draw(st.integers(230, 340))}
  on leaf: {draw(st.integers(80, 200))} x 10
"""


def checked(text: str) -> Job:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "design.yaml"
        path.write_text(text, encoding="utf-8")
        return check(path, user_house=False)


@TRIES
@given(cupboards())
def test_what_is_bored_meets_and_what_holds_balances(text: str) -> None:
    """Whatever the sizes: a design ends in numbers or in a stop that says where; plates stand at the
    cups, stays are as long as their holes are apart, and the moments add up.
    """
    job = checked(text)
    for problem in stops(job.problems):
        assert problem.where
        assert problem.fix
        assert not problem.unreadable, problem.message
    if job.resolved is None or job.assembly is None:
        return
    assert job.resolved.casework is not None
    case = job.resolved.casework.cases[0].case
    for leaf in job.resolved.leaves:
        flap = leaf.hung.flap
        if flap is None:
            continue
        (bored,) = (
            one
            for own in job.resolved.casework.bored
            for one in own.plates
            if one.plates.name.startswith(f"{leaf.name} /")
        )
        found = plates(job, case.name, bored.board.name.rpartition(" / ")[2])
        own = [x for x, _, on in found if on.startswith("under" if flap.side == "top" else "upper")]
        assert own == pytest.approx(cups(job, leaf.name))
        # the board's face stands no farther from the hinge edge than half a board and the gap
        face = bored.board.z + (0.0 if flap.side == "top" else float(bored.board.thickness))
        line = float(flap.line - case.box.foot)
        assert abs(face - line) <= float(bored.board.thickness + case.spec.front_gap)
        assert leaf.stays is not None
        sized = leaf.stays.sized
        if isinstance(sized, GasStruts):
            turning = float(leaf.weights.estimate) * 9.80665 / 1000
            angle = math.radians(float(flap.angle))
            lever = float(leaf.height) / 2 * math.sin(angle) - float(leaf.thickness) / 2 * math.cos(
                angle
            )
            assert float(sized.weight_open) == pytest.approx(-turning * lever)
            assert float(sized.struts_open) >= -float(sized.weight_open)
            assert float(sized.place.shut) >= float(sized.pushed_in) - 1e-6
        if isinstance(sized, LidStays):
            held = float(sized.pull) * float(sized.count) * float(sized.place.arm_open)
            assert held == pytest.approx(
                float(leaf.weights.estimate) * float(leaf.height) / 2 + 20 * float(leaf.height)
            )
    if any(leaf.stays and isinstance(leaf.stays.sized, NoPlace) for leaf in job.resolved.leaves):
        assert "stay_has_no_place" in {problem.code for problem in stops(job.problems)}
    for shut, opened in zip(stays_in(job, "shut"), stays_in(job, "open"), strict=True):
        assert shut.leaf.stays is not None
        sized = shut.leaf.stays.sized
        assert not isinstance(sized, NoPlace)
        assert apart(shut) == pytest.approx(float(sized.place.shut), abs=1e-6)
        assert apart(opened) == pytest.approx(float(sized.place.open), abs=1e-6)
