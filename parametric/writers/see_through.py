"""Which parts hide what a client looks for: the boards round a case, and the doors before it."""

from __future__ import annotations

from parametric.model import Group, Part

_ROUND = frozenset(("side", "top", "bottom", "back", "end", "stretcher", "nailer"))
"""What the boards round a case are called, by the last word of it: shelves and partitions are
what is looked for."""
_FRONT = "leaf "
"""How the group of a front is called, though it be fixed."""
_BOX = " / drawer / "
"""In the name of each piece of a drawer's box, that hangs behind its front."""


def hides(group: Group, part: Part) -> bool:
    """Whether a part may be ghosted.

    Of what stands still that is the boards round it; of a front all but what is metal and the
    drawer's box behind it.
    """
    if not group.see_through:
        return False
    if group.motion or group.name.startswith(_FRONT):
        return part.material.look != "metal" and _BOX not in part.name
    # a side that is seen is a `left side, finished outside`
    return part.noun.split(",")[0].split()[-1] in _ROUND
