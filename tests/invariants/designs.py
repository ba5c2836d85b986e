"""Random bypass pairs, written as a maker writes them; some are sound, some are not."""

from __future__ import annotations

import re
from fractions import Fraction

from hypothesis import strategies as st


def halves(low: float, high: float) -> st.SearchStrategy[float]:
    """Sizes to the half millimetre."""
    return st.integers(int(low * 2), int(high * 2)).map(lambda n: n / 2)


@st.composite
def infills(draw: st.DrawFn) -> list[str]:
    """One to four openings, a panel among them or not, as lines between rails."""
    count = draw(st.integers(1, 4))
    kinds = draw(st.lists(st.sampled_from(["lite", "panel"]), min_size=count, max_size=count))
    sizes = draw(
        st.one_of(
            st.just(["equal"] * count),
            st.just(["equal"] * (count - 1) + ["380"]),
            st.just([f"{n + 1} parts" for n in range(count)]),
        )
    )
    return [f"{kind}: {size}" for kind, size in zip(kinds, sizes, strict=True)]


@st.composite
def bypass_designs(draw: st.DrawFn) -> str:
    """A whole design file."""
    width = draw(halves(1200, 2600))
    height = draw(halves(1900, 2500))
    rise = draw(halves(0, 20))
    crook = draw(halves(0, 12))
    stile = draw(halves(85, 150))
    thickness = draw(halves(34, 54))
    between = draw(halves(70, 160))
    openings = draw(infills())
    lines = [f"    - top rail: {draw(halves(85, 140))}"]
    for index, opening in enumerate(openings):
        lines.append(f"    - {opening}")
        if index < len(openings) - 1:
            lines.append(f"    - rail: {between}")
    lines.append(f"    - bottom rail: {draw(halves(180, 260))}")
    tenons = draw(st.integers(1, 2))
    lines.append(f"      tenons: {tenons}")
    hung = draw(st.sampled_from(["on the wall", "in the opening"]))
    faces = draw(st.sampled_from(["front", "back", "both"]))
    side = draw(halves(0, 4))
    panel_thickness = draw(halves(22, 28))
    return "\n".join(
        (
            "stilewright: 1",
            "job: A pair at random",
            "units: mm",
            "survey:",
            f"  widths: {{top: {width}, middle: {width + crook}, bottom: {width + crook / 2}}}",
            f"  heights: {{left: {height + rise}, middle: {height + rise / 2}, right: {height}}}",
            f"  left side: {{bottom: 0, middle: {side / 2}, top: {side}}}",
            "  head: level",
            "  fixing: solid timber",
            "door:",
            "  kind: bypass",
            f"  hung: {hung}",
            f"  floor gap: {draw(halves(6, 20))}",
            "leaf:",
            f"  timber: {draw(st.sampled_from(['tulipwood', 'white oak', 'ash']))}",
            f"  thickness: {thickness}",
            f"  stiles: {stile}",
            "  top to bottom:",
            *lines,
            "joint:",
            "  kind: loose tenon",
            "  slot: 12 x 46 x 40",
            "  tenon: 12 x 44 x 78",
            "panel:",
            "  kind: raised",
            f"  thickness: {panel_thickness}",
            f"  grain: {draw(st.sampled_from(['upright', 'level']))}",
            f"  sawn: {draw(st.sampled_from(['flat', 'quarter']))}",
            f"  groove: 8.2 x {draw(halves(12, 16))}",
            f"  groove by: {draw(st.sampled_from(['router', 'saw']))}",
            "  tongue: 8 x 16",
            f"  back rebate: {max(panel_thickness - thickness / 2 - 4, 0) + 1}",
            "  edge thickness: 15",
            f"  bevel run: {draw(halves(30, 70))}",
            "  fillet: 1.5",
            "glass: {kind: toughened, thickness: 6, stop: 12 x 12}",
            f"track: {{spacing: {thickness + draw(halves(8, 16))}, off wall: 90}}",
            "guide: {groove: 9 x 18, cutter: 6}",
            "pull:",
            "  kind: recessed",
            "  body: 150 x 32 x 12",
            "  body corner: 3",
            "  flange: 160 x 42 x 1.5",
            "  flange corner: 6",
            f"  faces: {faces}",
            f"  height: {draw(halves(900, 1200))}",
            "",
        )
    )


_NO_LENGTH = re.compile(r"tenons:|parts|stilewright:|units:")
_NUMBER = re.compile(r"(?<![\w.])\d+(?:\.\d+)?(?![\w.])")


def in_inches(text: str) -> str:
    """The same design in inches, every size to the nearest 1/32 and none of them nothing."""
    lines = []
    for line in text.splitlines():
        if line == "units: mm":
            line = "units: inch"
        elif not _NO_LENGTH.search(line):
            line = _NUMBER.sub(lambda found: _thirty_seconds(float(found[0])), line)
        lines.append(line)
    return "\n".join(lines) + "\n"


def _thirty_seconds(mm: float) -> str:
    count = round(mm / 25.4 * 32)
    if mm > 0:
        count = max(count, 1)
    whole, rest = divmod(Fraction(count, 32), 1)
    return f"{whole}-{rest}" if whole and rest else str(whole + rest)
