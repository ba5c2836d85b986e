"""A number that was signed has moved since.

What is wrong: the client signed one design, and this is another; what is made from it now
is not what was agreed.

Example: revision B was approved as 7c1f04ab with a lock rail of 150; the line now says 160,
and the fingerprint is 90ae1b22.

Records, notes and the ticking of parts change no fingerprint and undo no approval.

Source: common practice, no source.
"""

from __future__ import annotations

from parametric.design import Option
from parametric.design.records import ApprovedSpec
from parametric.problems import Problem
from parametric.trade.comparing import Changes, compare
from parametric.trade.inventory import Inventory

_MOST = 3
"""Changes told in one sentence; `stilewright compare` tells all."""
_DIGITS = 8


def short(fingerprint: str) -> str:
    """The first eight digits, as the record of an approval holds them."""
    return fingerprint.replace("-", "").lower()[:_DIGITS]


def is_signed(approved: ApprovedSpec, fingerprint: str) -> bool:
    """Whether an approval is of the design with this fingerprint."""
    signed = approved.fingerprint.replace("-", "").lower()
    return len(signed) >= _DIGITS and fingerprint.startswith(signed)


def moved_since(approved: ApprovedSpec, signed: Inventory | None, now: Inventory) -> Changes | None:
    """What moved since a design was signed; None when nothing did, or it cannot be told.

    Args:
        approved: the record of the approval.
        signed: the figures that were kept when it was signed, where they are still there.
        now: those of the design as it is.
    """
    if is_signed(approved, now.fingerprint):
        return None
    if signed is None or not is_signed(approved, signed.fingerprint):
        return None
    return compare(signed, now)


def not_approved(
    approved: ApprovedSpec,
    signed: Inventory | None,
    now: Inventory,
    option: Option | None = None,
) -> tuple[Problem, ...]:
    """The caution, when the design is no longer the one that was signed.

    Args:
        approved: the record of the approval.
        signed: the figures that were kept when it was signed, where they are still there.
        now: those of the design as it is.
        option: which of the design's options it is, if it has any.
    """
    if is_signed(approved, now.fingerprint):
        return ()
    was = "" if approved.option is None else f", option {approved.option},"
    this = "this design" if option is None else f"option {option.letter}"
    what, fix = (
        "",
        "Its figures were not kept beside it, so what moved cannot be told; show it all.",
    )
    changes = moved_since(approved, signed, now)
    if changes is not None:
        causes = changes.causes
        more = f", and {len(causes) - _MOST} more" if len(causes) > _MOST else ""
        what = f": {', '.join(causes[:_MOST])}{more}" if causes else ""
        fix = "Show the client what moved and approve it again, or put it back."
    return (
        Problem(
            code="not_approved",
            level="caution",
            message=f"Revision {approved.revision}{was} was approved as {short(approved.fingerprint)}; "
            f"{this} is {short(now.fingerprint)}. It is not approved{what}.",
            where=approved.line("fingerprint"),
            about="approved",
            found=short(now.fingerprint),
            allowed=short(approved.fingerprint),
            fix=fix,
        ),
    )
