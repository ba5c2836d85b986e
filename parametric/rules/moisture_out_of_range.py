"""The moisture given lies where the movement figures do not hold, or contradicts itself.

Why: the coefficients are straight lines fitted from 6 to 14 %.
Example: 18 % is timber out of air of about 86 % humidity: it is not dry.
Source: Wood Handbook (FPL-GTR-190) ch. 13 for the range, ch. 4 for the humidity.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.catalog.moisture import DAMPEST, DRIEST, humidity_for, in_range
from parametric.figures import origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked

ROOM = 20.0
"""deg C at which the humidity in the message is worked out."""


def moisture_out_of_range(job: Checked) -> Iterator[Problem]:
    """Caution outside the range; stop when the driest is damper than the dampest."""
    moisture = job.shop.moisture
    for word, value in (
        ("made", moisture.made),
        ("driest", moisture.driest),
        ("dampest", moisture.dampest),
    ):
        if in_range(value):
            continue
        air = ""
        if 0 < float(value) < 24:
            air = f" Wood settles there in air of {humidity_for(value, ROOM):.0f} % humidity."
        yield Problem(
            code="moisture_out_of_range",
            level="caution",
            message=f"{float(value):g} % is outside {float(DRIEST):g} to {float(DAMPEST):g} %, "
            f"where the movement figures hold; is the timber dry?{air}",
            where=origin_line(value),
            about=f"moisture {word}",
            found=f"{float(value):g} %",
            allowed=f"{float(DRIEST):g} to {float(DAMPEST):g} %",
            fix="Measure the timber again, or let it come to the room.",
        )
    if not moisture.driest <= moisture.made <= moisture.dampest:
        yield Problem(
            code="moisture_contradicts_itself",
            level="caution",
            message=f"The timber is made at {float(moisture.made):g} %, outside the year of its "
            f"room, {float(moisture.driest):g} to {float(moisture.dampest):g} %.",
            where=origin_line(moisture.made),
            about="moisture made",
            found=f"{float(moisture.made):g} %",
            allowed=f"{float(moisture.driest):g} to {float(moisture.dampest):g} %",
            fix="Look at the three moisture figures again.",
        )
