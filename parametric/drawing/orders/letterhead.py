"""What stands at the head of an order: who asks, and lines for whom it goes to."""

from __future__ import annotations

import dataclasses

from parametric.drawing.lettering import printable
from parametric.drawing.running import Field, Fields
from parametric.drawing.sheet import TitleBlock
from parametric.drawing.subject import Subject
from parametric.trade.printed import pounds
from parametric.units import Unit


def letterhead(job: Subject) -> Fields:
    """The maker's name, address and telephone; what is not known is a line to fill in."""
    maker = job.resolved.shop.maker
    return Fields(
        rows=(
            (Field(name="From", value=printable(maker.name)), Field(name="To")),
            (Field(name="Address", value=printable(maker.address)), Field(name="Deliver to")),
            (
                Field(name="Telephone", value=printable(maker.phone)),
                Field(name="Wanted by"),
                Field(name="Ordered on"),
            ),
        )
    )


def headed(title: TitleBlock, document: str, more: str, job: Subject) -> TitleBlock:
    """The title of a page: what it is, and the units that it is read in."""
    words = (
        f"All sizes in {job.rules.unit_words}. {more}"
        if more
        else f"All sizes in {job.rules.unit_words}."
    )
    return dataclasses.replace(title, document=document, second_line=words, scale="no scale")


def weighed(value: float | None, text: str, unit: Unit) -> str:
    """A weight as its table has it, in kg; before it in pounds for whoever reads inches."""
    if value is None or not text or unit == "mm":
        return text
    return f"{pounds(value)} ({text})"


def shown(text: str) -> str:
    """A table's text as a page prints it: a true times sign between sizes."""
    return text.replace(" x ", " × ")
