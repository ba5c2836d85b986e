"""The panel drops out of its groove in a dry winter, or closes on the frame in a damp summer.

Why: wood moves across the grain and must neither show daylight nor burst the frame.
Example: a panel of 803.5 keeps 7.2 in each groove at 6 %; 5 is enough. A tongue of 15 under
13 of engagement keeps its shoulder off the frame. A board of 9 does not go into a groove of 8.5.
Source: movement, Wood Handbook (FPL-GTR-190) eq. 13-2; limits common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds, origin_line
from parametric.infill.panel_kinds import in_groove
from parametric.problems import Problem
from parametric.rules.checked import Checked


def panel_will_not_move(job: Checked) -> Iterator[Problem]:
    """Stops: too little left in the groove at the driest; too wide to go in; tongue too short or thick."""
    limits = job.shop.limits
    for _, field in job.panels:
        panel = field.panel
        dry = panel.engagement_dry
        if exceeds(limits.engagement, dry):
            yield Problem(
                code="panel_leaves_groove",
                level="stop",
                message=(
                    "In the driest season the panel keeps " if panel.moves else "The panel has "
                )
                + f"{job.fine(dry)} in each groove; at "
                f"least {job.fine(limits.engagement)} is needed.",
                where=origin_line(panel.groove_depth),
                about=dry.name or "",
                found=job.fine(dry),
                allowed=f"{job.fine(limits.engagement)} or more",
                fix="Make the groove deeper, or the panel of a timber or cut that moves less "
                "(`sawn: quarter`)."
                if panel.moves
                else "Make the groove deeper, or the clearance smaller.",
            )
        if exceeds(panel.engagement_made, panel.groove_depth):
            yield Problem(
                code="panel_too_wide_to_go_in",
                level="stop",
                message=f"As made the panel is {job.fine(2 * panel.engagement_made)} wider than its "
                f"opening, and its two grooves are {job.fine(2 * panel.groove_depth)} deep "
                "together: it does not go in until it has dried.",
                where=origin_line(panel.groove_depth),
                about=panel.engagement_made.name or "",
                found=job.fine(panel.engagement_made),
                allowed=f"{job.fine(panel.groove_depth)} or less each side",
                fix="Let the timber dry to its room first, or make the grooves deeper.",
            )
        if field.arch is not None and exceeds(field.arch.out, field.arch.at_foot):
            free = panel.groove_depth - field.arch.out
            yield Problem(
                code="panel_closes_under_arch",
                level="stop",
                message=f"Under the arch the panel goes as far into its groove as at its sides, "
                f"{job.fine(field.arch.out)}, and leaves {job.fine(free)} there; its ends are to "
                f"have {job.fine(panel.groove_depth - field.arch.at_foot)}.",
                where=origin_line(panel.groove_depth),
                about=field.arch.out.name or "",
                found=job.fine(field.arch.out),
                allowed=f"{job.fine(field.arch.at_foot)} or less",
                fix="Make `end clearance` smaller, or `clearance` larger.",
            )
        deepest = max(panel.engagement_damp, panel.end_engagement)
        tongue, thick = panel.tongue, in_groove(panel)
        if tongue is not None and exceeds(deepest + limits.tongue_spare, tongue.length):
            yield Problem(
                code="tongue_too_short",
                level="stop",
                message=f"The tongue is {job.fine(tongue.length)} long and goes "
                f"{job.fine(deepest)} into its groove when the panel has swollen: the shoulder "
                "closes on the frame.",
                where=origin_line(tongue.length),
                about=tongue.length.name or "",
                found=job.fine(tongue.length),
                allowed=f"{job.fine(deepest + limits.tongue_spare)} or more",
                fix="Make the tongue longer.",
            )
        if exceeds(thick, panel.groove_width):
            what = "panel" if tongue is None else "tongue"
            yield Problem(
                code="panel_too_thick" if tongue is None else "tongue_too_thick",
                level="stop",
                message=f"The {what} is {job.fine(thick)} thick and the groove "
                f"{job.fine(panel.groove_width)} wide: it does not go in.",
                where=origin_line(thick),
                about=thick.name or "",
                found=job.fine(thick),
                allowed=f"{job.fine(panel.groove_width)} or less",
                fix=f"Make the groove wider or the {what} thinner.",
            )
