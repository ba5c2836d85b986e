"""What a rule looks at: the design resolved and made into parts, and how to say a length."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from parametric.catalog.shop import Shop
from parametric.design import Design
from parametric.model import Assembly
from parametric.parts import parts_of
from parametric.resolve.door import Door, Resolved
from parametric.resolve.leaf import Leaf
from parametric.resolve.panel_field import PanelField
from parametric.trade.loads import LeafLoad, loads_of
from parametric.units import length_text


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """A job as far as it could be worked out; a rule is shown one door of it at a time."""

    resolved: Resolved
    assembly: Assembly
    loads: tuple[LeafLoad, ...]

    @property
    def each(self) -> Iterator[Checked]:
        """Every door of the job by itself, with its own parts and weights."""
        for door in self.resolved.doors:
            yield Checked(
                resolved=self.resolved.of(door),
                assembly=parts_of(door, self.assembly),
                loads=loads_of(door, self.loads),
            )

    @property
    def design(self) -> Design:
        """The design as written."""
        return self.resolved.design

    @property
    def door(self) -> Door:
        """The door."""
        return self.resolved.door

    @property
    def shop(self) -> Shop:
        """The workshop."""
        return self.resolved.shop

    @property
    def leaves(self) -> tuple[Leaf, ...]:
        """The leaves of the door; what is the same of several is told once."""
        return self.resolved.leaves

    @property
    def panels(self) -> tuple[tuple[Leaf, PanelField], ...]:
        """Every panel, with the leaf it stands in."""
        return tuple((leaf, field) for leaf in self.leaves for field in leaf.panels)

    def size(self, value: float) -> str:
        """A length as wood is printed."""
        unit = self.design.unit
        return length_text(float(value), unit, self.shop.paper.wood_step(unit))

    def fine(self, value: float) -> str:
        """A length as pockets and glass are printed."""
        unit = self.design.unit
        return length_text(float(value), unit, self.shop.paper.fine_step(unit))


def with_article(number: str) -> str:
    """`a 40`, `an 18`: the article goes by how the number is said."""
    whole = number.split(".")[0].split("-")[0]
    return f"{'an' if whole.startswith('8') or whole in ('11', '18') else 'a'} {number}"
