"""A design as written: all its layers merged, every block understood, nothing worked out yet."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from parametric.design.options import Option
from parametric.design.records import Records, Revision
from parametric.hangings import DoorSpec
from parametric.units import Unit
from parametric.written import Block


@dataclass(frozen=True, slots=True, kw_only=True)
class Design:
    """One job. `blocks` are by kind and name, "" for the block without one.

    `option` is which of its options this is; None when it has none.
    """

    file: str
    job: str
    unit: Unit
    blocks: Mapping[tuple[str, str], Block]
    revisions: tuple[Revision, ...]
    records: Records
    option: Option | None = None

    @property
    def titled(self) -> str:
        """The job as papers and files name it: with the letter of its option, if it has any."""
        return self.job if self.option is None else f"{self.job}, option {self.option.letter}"

    @property
    def whole_title(self) -> str:
        """The same with what the option is called, where there is room for it."""
        return self.job if self.option is None else f"{self.job}, option {self.option.said}"

    @property
    def doors(self) -> tuple[tuple[str, DoorSpec], ...]:
        """Every door with its name, in the order of the file."""
        return tuple(
            (name, block)
            for (kind, name), block in self.blocks.items()
            if kind == "door" and isinstance(block, DoorSpec)
        )

    def named(self, kind: str) -> dict[str, Block]:
        """All blocks of a kind by name; "" for the one without."""
        return {name: block for (found, name), block in self.blocks.items() if found == kind}

    def block(self, kind: str, name: str | None = None) -> Block | None:
        """A block by its kind and name; without a name the unnamed one.

        A single survey serves every door, named or not; anything else that has a name is
        used only where it is called.
        """
        if name is None and kind == "survey" and (kind, "") not in self.blocks:
            known = self.named(kind)
            return next(iter(known.values())) if len(known) == 1 else None
        return self.blocks.get((kind, name or ""))
