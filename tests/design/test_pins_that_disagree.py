"""Numbers held to what they do not come to: what is said, and that each way out is a way out.

Starters with a pin put in; the sums stand beside. Every offer is written into the file and the
file is read again: no length is offered that does not settle it.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from parametric.design.starters import templates
from parametric.job import check

Lines = tuple[tuple[str, str], ...]


def written(folder: Path, kind: str, lines: Lines) -> Path:
    text = (templates() / f"{kind}.yaml").read_text(encoding="utf-8")
    for old, new in lines:
        assert old in text, old
        text = text.replace(old, new, 1)
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    return path


PINS: dict[str, tuple[str, Lines, str, str]] = {
    # 907 + 2*45 = 997; (1002 - 907)/2 = 47.5
    "a sliding leaf's width": (
        "sliding",
        (("  opens to", "  pinned: {leaf width: 1002}\n  opens to"),),
        "leaf width is pinned at 1002 but works out at 997, 5 less.",
        "Make the side lap 47.5 in place of 45 (line 31), or pin leaf width at 997. `stilewright "
        "explain` shows the sum.",
    ),
    # (1606 + 2*45 + 105)/2 = 900.5: 10 more is 10 in either lap, or 20 in the stile that is covered
    "a bypass leaf's width": (
        "bypass",
        (("  leaves:", "  pinned: {leaf width: 910.5}\n  leaves:"),),
        "leaf width is pinned at 910.5 but works out at 900.5, 10 less.",
        "Make the side lap 55 in place of 45 (line 32), or make the stile width 125 in place of 105 "
        "(line 41), or pin leaf width at 900.5. `stilewright explain` shows the sum.",
    ),
    # 1050 - 1.5 + 12 - 10 - 130 - 200 = 720.5; a pin of the lower leaf's own block
    "a panel of one leaf of two": (
        "dutch",
        (("leaf solid:", "leaf solid:\n  pinned: {B panel height: 700}"),),
        "leaf B / panel / height is pinned at 700 but works out at 720.5, 20.5 more.",
        "Make the split 1029.5 in place of 1050 (line 31), or make the floor gap 30.5 in place of "
        "10 (line 38), or make the top rail 150.5 in place of 130 (line 66), or pin B panel height "
        "at 720.5. `stilewright explain` shows the sum.",
    ),
    # 1.25 + 6 + 44 = 51.25, and 60 - 51.25 = 8.75: in the thickness, or twice that in the gap
    "what an open leaf takes up": (
        "hinged",
        (("  opens:", "  pinned: {A stands in the way: 60}\n  opens:"),),
        "leaf A / stands in the way when open is pinned at 60 but works out at 51.25, 8.75 less.",
        "Make the leaf thickness 52.75 in place of 44 (line 41), or make the hinge gap 20 in place "
        "of 2.5 (line 32), or pin A stands in the way at 51.25. `stilewright explain` shows the sum.",
    ),
}
HELD: dict[str, tuple[str, Lines, str, str]] = {
    # foot of the rail 900 - 75 = 825; 640 + 210 = 850 below it, 25 too much
    "nothing gives below": (
        "sliding",
        (("- lock rail: 150", "- {lock rail: 150, centre: 900}"),),
        'The lock rail cannot be held at 900: nothing below it is "equal" or "rest". Free one size.',
        "What is written there is 25 too much: make one line there `rest`, write `bottom rail: 185` "
        "there, write `panel: 615` there, hold it at `centre: 925`, or take the pin away.",
    ),
    # top of the rail 975; of 2082, 1107 above it, and 110 + 1000 = 1110: 3 too much
    "nothing gives above": (
        "sliding",
        (
            ("- lock rail: 150", "- {lock rail: 150, centre: 900}"),
            ("- lite: rest", "- lite: 1000"),
            ("- panel: 640", "- panel: rest"),
        ),
        'The lock rail cannot be held at 900: nothing above it is "equal" or "rest". Free one size.',
        "What is written there is 3 too much: make one line there `rest`, write `lite: 997` there, "
        "write `top rail: 107` there, hold it at `centre: 897`, or take the pin away.",
    ),
    # 750 - (730 + 70) = -50 between them
    "two that leave nothing between": (
        "biparting",
        (
            ("- lock rail: 140", "- {lock rail: 140, centre: 730}"),
            ("- dividing rail: 90", "- {dividing rail: 90, bottom: 750}"),
        ),
        "The leaf A / lite 2 would be -50 high: the lock rail, held at 730 above the leaf's foot, "
        "leaves -50 between it and the dividing rail, held at 750.",
        "Hold the lock rail lower, below 680, or the dividing rail higher, above 800.",
    ),
}


@pytest.mark.parametrize("name", [*PINS, *HELD])
def test_what_is_said(name: str, tmp_path: Path) -> None:
    kind, lines, says, fix = (PINS | HELD)[name]
    job = check(written(tmp_path, kind, lines), user_house=False)
    found = [p for p in job.problems if p.message == says]
    assert len(found) == 1, [p.message for p in job.problems if p.level == "stop"]
    assert (found[0].level, job.exit_status) == ("stop", 1)
    assert found[0].fix == fix


@pytest.mark.parametrize("name", PINS)
def test_every_length_that_is_offered_settles_it(name: str, tmp_path: Path) -> None:
    kind, lines, _, _ = PINS[name]
    path = written(tmp_path, kind, lines)
    text = path.read_text(encoding="utf-8").splitlines()
    (found,) = (p for p in check(path, user_house=False).problems if p.code == "pin_disagrees")
    offers = re.findall(r"ake the [\w ]+? ([\d.]+) in place of ([\d.]+) \(line (\d+)\)", found.fix)
    assert offers
    for then, now, line in offers:
        changed = list(text)
        row = int(line) - 1
        changed[row] = re.sub(rf"(?<![\d.]){re.escape(now)}(?![\d.])", then, changed[row], count=1)
        assert changed[row] != text[row]
        path.write_text("\n".join(changed), encoding="utf-8")
        codes = [p.code for p in check(path, user_house=False).problems]
        assert "pin_disagrees" not in codes, (line, then)


def test_where_no_length_would_do_it(tmp_path: Path) -> None:
    """Two leaves of 775.5 in gaps of 2.5, 3 and 2.5: a leaf 10 wider asks 20 of gaps that have 8."""
    path = written(
        tmp_path, "hinged pair", (("  head gap", "  pinned: {leaf width: 785.5}\n  head gap"),)
    )
    (found,) = (p for p in check(path, user_house=False).problems if p.code == "pin_disagrees")
    assert found.message == "leaf width is pinned at 785.5 but works out at 775.5, 10 less."
    assert found.fix == (
        "Pin leaf width at 775.5, or take the pin away; no one length would do it alone. "
        "`stilewright explain` shows the sum."
    )
