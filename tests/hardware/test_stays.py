"""Stays of flaps by hand: where they are screwed, what they hold, what they cannot be."""

from __future__ import annotations

import math

import pytest

from parametric.figures import Figure
from parametric.hardware.gas_strut import GasStruts, GasStrutSpec, size_gas_struts
from parametric.hardware.lid_stay import LidStays, LidStaySpec, size_lid_stays
from parametric.hardware.stay import HeldFlap, NoPlace, StayPlace
from parametric.units import FORCE

G = 9.80665
"""N a kg: standard gravity, 3rd CGPM, 1901."""


def flap(*, lifts: bool, height: float = 340, weight: float = 4, opens: float = 90) -> HeldFlap:
    """One of 20 over a case's edges, 900 wide."""
    return HeldFlap(
        leaf="leaf A",
        lifts=lifts,
        width=Figure(900),
        height=Figure(height),
        thickness=Figure(20),
        weight=Figure(weight, unit="kg"),
        angle=Figure(opens, unit="deg"),
        face_out=Figure(20),
    )


def strut(**of: object) -> GasStrutSpec:
    """244 long, 85 of stroke, 75 from the hinge edge, its bracket 8 off the back."""
    keys: dict[str, object] = {
        "kind": "gas strut",
        "opens": Figure(90, unit="deg"),
        "length": Figure(244),
        "stroke": Figure(85),
        "spare": Figure(5),
        "on_leaf": (Figure(75), Figure(8)),
        "beside": Figure(12),
        "fixing": (Figure(3), Figure(10)),
        "force": None,
        "on_case": None,
        "count": None,
        **of,
    }
    return GasStrutSpec.model_construct(**keys)  # type: ignore[arg-type]


def lid_stay(**of: object) -> LidStaySpec:
    """300 taut, 220 from the hinge edge, its bracket 10 off the back, 40 behind the case's edges."""
    keys: dict[str, object] = {
        "kind": "lid stay",
        "opens": Figure(90, unit="deg"),
        "length": Figure(300),
        "behind": Figure(40),
        "on_leaf": (Figure(220), Figure(10)),
        "beside": Figure(12),
        "fixing": (Figure(3), Figure(10)),
        "carries": None,
        "leant_on": Figure(20, unit="kg"),
        "count": None,
        **of,
    }
    return LidStaySpec.model_construct(**keys)  # type: ignore[arg-type]


def struts(held: HeldFlap, **of: object) -> GasStruts:
    found = size_gas_struts(strut(**of), held)
    assert isinstance(found, GasStruts), found
    return found


def test_where_a_strut_is_screwed_to_the_case() -> None:
    """Shut its fixing on the flap is 75 down and 20 + 8 in, open 28 down and 75 out: 47 and 103
    apart, 113.217. Pushed in but for 5 it is 244 - 85 + 5 = 164. From the open end the two circles
    meet (244^2 - 164^2 + 113.217^2) / (2 x 113.217) = 200.757 along and
    root(244^2 - 200.757^2) = 138.682 aside: 28 + 83.341 + 126.168 = 237.509 down, and
    -75 + 182.640 - 57.571 = 50.069 in, 20 of which is the flap before the case's edges.
    """
    place = struts(flap(lifts=True)).place
    assert float(place.down) == pytest.approx(237.509, abs=1e-3)
    assert float(place.behind) == pytest.approx(30.069, abs=1e-3)
    assert (float(place.shut), float(place.open)) == (pytest.approx(164), pytest.approx(244))
    # levers: (50.069 x 28 + 237.509 x 75) / 244, and (50.069 x 75 - 237.509 x 28) / 164
    assert float(place.arm_open) == pytest.approx(78.750, abs=1e-3)
    assert float(place.arm_shut) == pytest.approx(-17.653, abs=1e-3)


def length_at(place: StayPlace, held: HeldFlap, angle: float) -> float:
    """Between the fixings, by turning the flap's fixing about the hinge line."""
    a = math.radians(angle)
    along, deep = float(place.along), float(held.thickness + place.off)
    down, into = float(place.down), float(place.behind + held.face_out)
    return math.hypot(
        down - along * math.cos(a) - deep * math.sin(a),
        into - deep * math.cos(a) + along * math.sin(a),
    )


@pytest.mark.parametrize("opens", [75, 90, 105])
def test_a_lever_is_how_fast_the_strut_grows(opens: float) -> None:
    """Virtual work: the force does over its own length what its moment does over the angle."""
    held = flap(lifts=True, opens=opens)
    place = struts(held, on_leaf=(Figure(68), Figure(8))).place
    for angle, lever in ((0.0, place.arm_shut), (opens, place.arm_open)):
        step = 1e-3
        grown = length_at(place, held, angle + step) - length_at(place, held, angle - step)
        assert grown / math.radians(2 * step) == pytest.approx(float(lever), abs=1e-3)


def test_what_two_struts_must_push() -> None:
    """4 kg x 9.80665 = 39.227 N at 340 / 2 = 170 before the hinge line are 6.6685 N m; over twice
    78.750 that is 42.340 N each, with a fifth in hand 50.8: 60 is the next that is sold. Shut, the
    flap's middle hangs 10 behind the line: 0.392 N m open it, 2 x 60 x 17.653 = 2.118 keep it.
    """
    found = struts(flap(lifts=True))
    assert int(found.count) == 2
    assert float(found.weight_open) == pytest.approx(-4 * G * 0.170)
    assert float(found.least) == pytest.approx(42.340, abs=1e-3)
    assert float(found.force) == 60
    assert float(found.struts_open) == pytest.approx(9.450, abs=1e-3)
    assert float(found.weight_shut) == pytest.approx(0.392, abs=1e-3)
    assert float(found.struts_shut) == pytest.approx(-2.118, abs=1e-3)
    # (9450.0 - 6668.5) / 340
    assert float(found.to_shut) == pytest.approx(8.181, abs=1e-3)


def test_where_it_begins_to_rise_by_itself() -> None:
    """To the tenth of a degree past which struts turn it more than its weight."""
    held = flap(lifts=True)
    found = struts(held)
    assert found.takes_over is not None
    over = float(found.takes_over)

    def turning(angle: float) -> float:
        a = math.radians(angle)
        lever = 170 * math.sin(a) - 10 * math.cos(a)
        step = 1e-3
        grown = length_at(found.place, held, angle + step) - length_at(
            found.place, held, angle - step
        )
        return 2 * 60 * grown / math.radians(2 * step) - 4 * G * lever

    assert turning(over - 0.1) <= 0 < turning(over)
    assert all(turning(angle) > 0 for angle in range(math.ceil(over), 91))


def test_struts_that_never_lift_it() -> None:
    found = struts(flap(lifts=True), force=Figure(20, unit="N"))
    assert found.takes_over is None
    assert float(found.struts_open + found.weight_open) < 0


def test_what_lid_stays_hold() -> None:
    """Open, the fixing on the flap is 220 before its shut face and 20 + 10 up; from 40 + 20 behind
    that it is 280 level, so 300 taut leave root(300^2 - 280^2) = 107.70 up: 137.70. Their line
    passes (60 x 30 + 137.703 x 220) / 300 = 106.98 from the hinge line. 3 kg at 210 and 20 at 420
    are 9030 kg mm: 9030 / (2 x 106.98) = 42.20 kg each.
    """
    held = flap(lifts=False, height=420, weight=3)
    found = size_lid_stays(lid_stay(), held)
    assert isinstance(found, LidStays)
    assert float(found.place.down) == pytest.approx(137.703, abs=1e-3)
    assert float(found.place.arm_open) == pytest.approx(106.982, abs=1e-3)
    assert float(found.turning) == pytest.approx(9030)
    assert float(found.pull) == pytest.approx(42.203, abs=1e-3)


def test_a_narrow_light_flap_has_one() -> None:
    held = flap(lifts=False, height=300, weight=4)
    for width, weight, count in ((600, 4, 1), (601, 4, 2), (600, 4.1, 2)):
        own = HeldFlap(
            leaf=held.leaf,
            lifts=False,
            width=Figure(width),
            height=held.height,
            thickness=held.thickness,
            weight=Figure(weight, unit="kg"),
            angle=held.angle,
            face_out=held.face_out,
        )
        found = size_lid_stays(lid_stay(), own)
        assert isinstance(found, LidStays)
        assert int(found.count) == count


@pytest.mark.parametrize(
    ("of", "why"),
    [
        # hypot(260 - 28, 75 + 20 + 40) = 268.4
        ({"on_case": (Figure(40), Figure(260))}, "too short to open"),
        # hypot(150 - 75, 60 - 28) = 81.5, and 159 is the least it goes to
        ({"on_case": (Figure(40), Figure(150))}, "too long to shut"),
        # root(2) x root(40^2 + 28^2) = 69.05, and 85 - 5 = 80 are asked of it
        ({"on_leaf": (Figure(40), Figure(8))}, "travels too little"),
        # hypot(225 - 28, 75 + 50) = 233.3, hypot(225 - 75, 50 - 28) = 151.6: stroke to spare
        ({"on_case": (Figure(30), Figure(225)), "stroke": Figure(120)}, "opens too far"),
        # its fixing over the hinge line pushes the flap down
        (
            {
                "on_case": (Figure(30), Figure(-80)),
                "length": Figure(166),
                "stroke": Figure(60),
            },
            "holds nothing",
        ),
    ],
)
def test_a_strut_without_a_place(of: dict[str, object], why: str) -> None:
    found = size_gas_struts(strut(**of), flap(lifts=True))
    assert isinstance(found, NoPlace)
    assert found.why == why


def test_a_lid_stay_too_short() -> None:
    found = size_lid_stays(lid_stay(length=Figure(279)), flap(lifts=False))
    assert isinstance(found, NoPlace)
    assert (found.why, float(found.needs)) == ("too short to open", pytest.approx(280))


def test_a_pound_of_force() -> None:
    """One pound under standard gravity: 0.45359237 x 9.80665 = 4.44822 N (NIST SP 811)."""
    assert float(FORCE.read("1 lbf")) == pytest.approx(4.4482216, abs=1e-7)
