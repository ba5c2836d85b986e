"""Every moulding there is, by the word it is written with."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import assert_never

from parametric.profiles.bead import BeadSpec, size_bead
from parametric.profiles.chamfer import ChamferSpec, size_chamfer
from parametric.profiles.cove import CoveSpec, size_cove
from parametric.profiles.moulding import CannotStick, Moulding, StickingBlock
from parametric.profiles.ogee import OgeeSpec, size_ogee
from parametric.profiles.ovolo import OvoloSpec, size_ovolo
from parametric.units import Unit

StickingSpec = ChamferSpec | OvoloSpec | OgeeSpec | CoveSpec | BeadSpec

STICKING_KINDS: Mapping[str, type[StickingBlock]] = MappingProxyType(
    {
        "chamfer": ChamferSpec,
        "ovolo": OvoloSpec,
        "ogee": OgeeSpec,
        "cove": CoveSpec,
        "bead": BeadSpec,
    }
)


def size_moulding(spec: StickingSpec, place: str, unit: Unit = "mm") -> Moulding | CannotStick:
    """A moulding's numbers, named at their place (`leaf A / sticking`), or why there is none."""
    match spec:
        case ChamferSpec():
            return size_chamfer(spec, place, unit)
        case OvoloSpec():
            return size_ovolo(spec, place, unit)
        case OgeeSpec():
            return size_ogee(spec, place, unit)
        case CoveSpec():
            return size_cove(spec, place, unit)
        case BeadSpec():
            return size_bead(spec, place, unit)
        case _:
            assert_never(spec)
