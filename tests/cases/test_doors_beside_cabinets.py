"""One job with a door in a wall and cabinets beside it: its client is told of both."""

from __future__ import annotations

from pathlib import Path

from parametric.job import check
from parametric.pack.preview import preview_page
from parametric.trade.fingerprint import fingerprint

DESIGN = Path(__file__).with_name("door-and-cabinets.yaml")


def test_the_page_tells_of_the_door_too() -> None:
    """The door is 800 - 2.5 - 3 = 794.5 wide; each of the cabinets' fronts has its facts before it."""
    job = check(DESIGN, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    page = preview_page(
        job.resolved,
        job.loads,
        fingerprint=fingerprint(job.resolved, job.assembly),
        elevations=("<svg/>",),
        assembly=job.assembly,
        problems=job.own,
    )
    told = [fact.key for fact in page.facts]
    assert told.index("cabinet") < told.index("clear way")
    (door,) = (fact for fact in page.facts if fact.label == "The door")
    assert "794.5" in "".join(getattr(part, "text", part) for part in door.value)
    words = ["".join(getattr(part, "text", part) for part in tick) for tick in page.ticks]
    assert len(words) == len(set(words))
    assert any("opens away from me" in tick for tick in words)
