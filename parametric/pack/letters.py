"""Names in letters that the paper's own type has not: told, since paper cannot show them."""

from __future__ import annotations

from parametric.design.settings import ClientSpec, SheetSpec
from parametric.problems import Problem
from parametric.resolve.door import Resolved


def left_out(resolved: Resolved) -> tuple[Problem, ...]:
    """A note for each name of which paper prints only a part.

    Args:
        resolved: the design's numbers, and whose they are.
    """
    from parametric.drawing.lettering import LEFT_OUT, is_printable, printable

    design = resolved.design
    client, sheet = design.block("client"), design.block("sheet")
    names = {
        "the job's name": design.whole_title,
        "the maker's name": resolved.shop.maker.name,
        "the client's name": client.name if isinstance(client, ClientSpec) else "",
        "the client's place": client.place if isinstance(client, ClientSpec) else "",
        "who drew it": sheet.drawn_by if isinstance(sheet, SheetSpec) else "",
    }
    return tuple(
        Problem(
            code="letters_left_out",
            level="note",
            message=f'On paper {what} reads "{printable(name)}": the type there has Latin letters '
            f"only, and {LEFT_OUT} stands for the others. The client's page shows them.",
            about=what,
            found=str(name),
            allowed="Latin letters",
            fix="Write it in Latin letters too, where it must be read on paper.",
        )
        for what, name in names.items()
        if name and not is_printable(name)
    )
