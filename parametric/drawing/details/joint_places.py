"""The tightest places of a leaf: where a groove comes nearest to a slot."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.joints.loose_tenon import SlotPlace
from parametric.model import Groove, Part
from parametric.resolve.leaf import Leaf
from parametric.resolve.panel_field import PanelField
from parametric.resolve.rail import Rail


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """A slot, its rail, and the edge of the rail that it comes nearest to."""

    rail: Rail
    slot: SlotPlace
    edge: Literal["low", "high"]


@dataclass(frozen=True, slots=True, kw_only=True)
class GrooveEnd:
    """One end of a stopped groove in a stile, and the slot it comes nearest to.

    `at` is where it ends, mm up from the finished foot; `end` which end that is.
    """

    field: PanelField
    groove: Groove
    end: Literal["low", "high"]
    at: float
    slot: SlotPlace


def tightest_joint(leaf: Leaf) -> Joint:
    """The slot nearest to a groove of its own rail; without grooves, the highest of the lowest rail."""
    found: list[tuple[float, Joint]] = []
    for rail in reversed(leaf.rails):
        if rail.high_groove is not None:
            top = max(rail.slots, key=lambda s: float(s.high))
            spare = float(rail.top - rail.high_groove - top.high)
            found.append((spare, Joint(rail=rail, slot=top, edge="high")))
        if rail.low_groove is not None:
            low = min(rail.slots, key=lambda s: float(s.low))
            spare = float(low.low - rail.foot - rail.low_groove)
            found.append((spare, Joint(rail=rail, slot=low, edge="low")))
    if not found:
        rail = leaf.rails[-1]
        return Joint(rail=rail, slot=max(rail.slots, key=lambda s: float(s.high)), edge="high")
    return min(found, key=lambda f: f[0])[1]


def tightest_groove_end(leaf: Leaf, stile: Part) -> GrooveEnd | None:
    """The end of a stopped groove that is nearest to a slot of the stile; None without one."""
    found: list[tuple[float, GrooveEnd]] = []
    slots = [slot for rail in leaf.rails for slot in rail.slots]
    grooves = [c for c in stile.cuts if isinstance(c, Groove) and "edge" in c.face]
    trim = float(leaf.trim)
    for field in leaf.panels:
        groove = next(
            (
                g
                for g in grooves
                if float(g.u0) - trim <= float(field.foot)
                and float(field.top) <= float(g.u1) - trim
            ),
            None,
        )
        if groove is None:
            continue
        low, high = float(groove.u0) - trim, float(groove.u1) - trim
        under = [s for s in slots if float(s.high) <= float(field.foot)]
        over = [s for s in slots if float(s.low) >= float(field.top)]
        if under:
            slot = max(under, key=lambda s: float(s.high))
            end = GrooveEnd(field=field, groove=groove, end="low", at=low, slot=slot)
            found.append((low - float(slot.high), end))
        if over:
            slot = min(over, key=lambda s: float(s.low))
            end = GrooveEnd(field=field, groove=groove, end="high", at=high, slot=slot)
            found.append((float(slot.low) - high, end))
    return min(found, key=lambda f: f[0])[1] if found else None
