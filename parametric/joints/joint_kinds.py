"""Every joint between a rail and a stile, by the word it is written with."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import assert_never

from parametric.figures import Figure
from parametric.joints.joint import JointBlock
from parametric.joints.loose_tenon import LooseTenon, LooseTenonSpec, size_loose_tenon
from parametric.joints.stub_tenon import StubTenon, StubTenonSpec, size_stub_tenon
from parametric.written import LengthPair

JointSpec = LooseTenonSpec | StubTenonSpec
Joint = LooseTenon | StubTenon

JOINT_KINDS: Mapping[str, type[JointBlock]] = MappingProxyType(
    {"loose tenon": LooseTenonSpec, "stub tenon": StubTenonSpec}
)


def size_joint(spec: JointSpec, place: str, *, groove: LengthPair | None, frame: Figure) -> Joint:
    """A joint's numbers, named at their place (`leaf A / joint`).

    Args:
        spec: the joint as written.
        place: its place.
        groove: of the leaf's panels, wide and deep, mm; None where it has none.
        frame: thickness of the frame, mm.
    """
    match spec:
        case LooseTenonSpec():
            return size_loose_tenon(spec, place)
        case StubTenonSpec():
            assert groove is not None, "the reader has seen that there is a panel"
            return size_stub_tenon(spec, place, groove=groove, frame=frame)
        case _:
            assert_never(spec)
