"""Forty cabinets of a design file on the client's page: cheap to draw, walked round, opened, ghosted."""

from __future__ import annotations

import numpy as np
import pytest

from tests.browser.conftest import QUICK
from tests.browser.designed import designed_html
from tests.browser.orbit import orbit
from tests.browser.test_cases import DESK, MOST_CALLS, opened, spot
from tests.solids.designed_run import WIDE, designed_run

pytestmark = [pytest.mark.browser, pytest.mark.kernel]

COUNT = 40


def test_forty_designed_cabinets_are_walked_round(open_page):
    """40 doors and 80 drawers, shut, all open and ghosted: a frame for every step round them, and
    never 600 calls a frame. Eight times as many cabinets are the same shapes again, so that their
    page is not twice that of five.
    """
    data = designed_html(COUNT)
    assert len(data) < 2 * len(designed_html(COUNT // 8))
    seen = open_page(data, DESK, **QUICK)
    job = designed_run(COUNT)
    assert job.assembly is not None
    shown = seen.page.evaluate("stilewright.shown()")
    assert sorted(shown) == sorted(part.name for part in job.assembly.parts)
    fronts = [group.name for group in job.assembly.groups if group.motion]
    assert len(fronts) == COUNT * 3

    first = (WIDE / 2, 0.0, 800.0)
    before = spot(seen, first)
    walked = [orbit(seen.page, steps=3)]
    assert np.hypot(*np.subtract(spot(seen, first), before)) > 5
    seen.page.click("#all")
    assert {opened(seen, leaf) for leaf in fronts} == {1.0}
    walked.append(orbit(seen.page, steps=1))
    seen.page.click("#tab-stand")
    seen.page.set_checked("#inside", True, force=True)
    walked.append(orbit(seen.page, steps=1))
    for one in walked:
        assert one.frames >= len(one.each_ms)
        assert all(ms > 0 for ms in one.each_ms)
        assert 0 < one.calls <= MOST_CALLS
    assert seen.errors == []
