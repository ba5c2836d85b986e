"""Random cabinets, written as a maker writes them: alone or in a run, bays of every share, fronts
of every kind, shelves and spaces inside, backs held in every way. Most are sound, some are not.
"""

from __future__ import annotations

from hypothesis import strategies as st

from tests.invariants.designs import halves

REST = """
leaf:
  timber: tulipwood
  thickness: 20
  stiles: 52
  trim: 0
  site trim: 0
  top to bottom: [top rail: 30, panel: rest, bottom rail: 30]
joint: {kind: stub tenon, length: 10}
panel: {kind: board, board: plywood, thickness: 6, groove: 6 x 10, clearance: 1}
drawer: {sides: 12, slides: 12.7, bottom: 6, bottom groove: 6, bottom clearance: 0.5}
board plywood: {sheet: 6000 x 6000}
finish: {kind: none}
"""
CUP = """
hinge:
  {kind: cup, cup: 35, cup from edge: 5, depth: 12, from ends: 50, least gap: 1, count: 2}
"""
BUTT = """
hinge: {kind: butt, length: 50, count: 2, from top: 40, from bottom: 40}
"""


@st.composite
def shares(draw: st.DrawFn, count: int, given: st.SearchStrategy[float]) -> list[str]:
    """How a list's lines share what there is: alike, in parts, or one takes what others leave."""
    way = draw(st.sampled_from(["equal", "parts", "given"]))
    if way == "equal" or count == 1:
        return ["equal" if count > 1 else "rest"] * count
    if way == "parts":
        return [f"{draw(st.integers(1, 2))} parts" for _ in range(count)]
    rest = draw(st.integers(0, count - 1))
    return ["rest" if i == rest else f"{draw(given)}" for i in range(count)]


@st.composite
def stacks(draw: st.DrawFn, high: float) -> list[str]:
    """What stands in one bay, from the top: fronts, with shelves or spaces behind them."""
    if high > 1100:
        kinds = draw(
            st.lists(
                st.sampled_from(["door", "door pair", "open", "drawer", "fixed front"]),
                min_size=1,
                max_size=3,
            )
        )
    else:
        kinds = draw(
            st.lists(
                st.sampled_from(["door", "drawer", "open", "fixed front"]), min_size=1, max_size=2
            )
        )
    sizes = draw(shares(len(kinds), halves(200, 260)))
    lines = ["top to bottom:"]
    for kind, size in zip(kinds, sizes, strict=True):
        lines.append(f"  - {kind}: {size}")
        if kind == "door":
            lines.append(f"    hinge side: {draw(st.sampled_from(['left', 'right']))}")
        if kind in ("door", "door pair", "open") and draw(st.booleans()):
            lines.append(f"    shelves: {draw(st.integers(1, 2))}")
    if (
        kinds[0] in ("door", "door pair")
        and len(kinds) == 1
        and high > 1100
        and draw(st.booleans())
    ):
        inside = draw(
            st.lists(
                st.sampled_from(["shelf space", "hanging", "drawer", "equipment"]),
                min_size=1,
                max_size=3,
            )
        )
        lines = [line for line in lines if "shelves" not in line]
        lines.append("inside:")
        lines += [
            f"  - {word}: {size}"
            for word, size in zip(inside, draw(shares(len(inside), halves(180, 300))), strict=True)
        ]
    return lines


CORNERS = ("dowel", "screw", "loose tenon", "pocket screw")
BORED = ("dowel", "screw", "loose tenon")
"""Those that both boards are cut for."""


@st.composite
def cabinets(
    draw: st.DrawFn,
    *,
    framed: bool,
    high: float,
    width: str = "",
    corners: tuple[str, ...] = CORNERS,
) -> list[str]:
    """One cabinet's keys."""
    fronts = "inset" if framed else draw(st.sampled_from(["overlay", "inset", "half overlay"]))
    lines = [
        f"kind: {'face frame' if framed else 'frameless'}",
        f"depth: {draw(halves(320, 620))}",
        f"height: {high}",
        f"fronts: {fronts}",
        f"front gap: {draw(halves(2, 4))}",
        f"corners: {draw(st.sampled_from(corners))}",
        f"dado: {draw(st.sampled_from([0, 0, 4, 6, 9]))}",
    ]
    if fronts != "inset":
        lines.append(f"edge reveal: {draw(halves(1, 3))}")
    if width:
        lines.append(f"width: {width}")
    if draw(st.booleans()):
        lines.append(f"kick: {draw(halves(50, 120))} x {draw(halves(20, 70))}")
    if high < 1100 and draw(st.booleans()):
        lines.append(f"counter: {draw(halves(20, 40))}")
    if draw(st.integers(0, 3)) == 0:
        lines.append(f"stretchers: {draw(halves(60, 120))}")
    if draw(st.integers(0, 4)) == 0:
        lines.append("back: none")
    count = draw(st.integers(1, 3))
    if count == 1:
        return lines + draw(stacks(high))
    lines.append("left to right:")
    for size in draw(shares(count, halves(380, 460))):
        own = draw(stacks(high))
        lines.append(f"  - bay: {size}")
        lines += [f"    {line}" for line in own]
    return lines


def block(heading: str, lines: list[str]) -> str:
    """A block of the file."""
    return "\n".join([f"{heading}:", *(f"  {line}" for line in lines)])


@st.composite
def rooms(draw: st.DrawFn, width: float) -> str:
    """A survey of walls that lean, a floor that falls and a ceiling that dips."""
    crook = [draw(halves(0, 12)) for _ in range(3)]
    lean = [0.0, draw(halves(0, 6)), draw(halves(0, 9))]
    floor = [draw(halves(-6, 6)) for _ in range(3)]
    ceiling = [2400 + draw(halves(-8, 8)) for _ in range(3)]
    across, up = ("left", "middle", "right"), ("bottom", "middle", "top")
    return block(
        "survey",
        [
            "widths: {"
            + ", ".join(f"{p}: {width + c}" for p, c in zip(up, crook, strict=True))
            + "}",
            "left side: {" + ", ".join(f"{p}: {v}" for p, v in zip(up, lean, strict=True)) + "}",
            "floor: {" + ", ".join(f"{p}: {v}" for p, v in zip(across, floor, strict=True)) + "}",
            "ceiling: {"
            + ", ".join(f"{p}: {v}" for p, v in zip(across, ceiling, strict=True))
            + "}",
        ],
    )


@st.composite
def backs(draw: st.DrawFn) -> str:
    """How backs are held."""
    return block(
        "back",
        [
            f"held: {draw(st.sampled_from(['groove', 'rebate', 'planted']))}",
            "board: plywood",
            f"thickness: {draw(st.sampled_from([6, 8, 9]))}",
            f"groove: {draw(st.sampled_from([6, 8]))}",
            f"from back: {draw(st.sampled_from([10, 12, 16]))}",
            "clearance: 1",
        ],
    )


@st.composite
def lone_cabinets(draw: st.DrawFn, corners: tuple[str, ...] = CORNERS) -> str:
    """A cabinet by itself between two walls, with a face frame or without."""
    framed = draw(st.booleans())
    width = draw(halves(1300, 1900))
    high = draw(st.sampled_from([720.0, 860.0, 1500.0, 2100.0]))
    wide = f"{width - draw(halves(40, 90))}"
    own = draw(cabinets(framed=framed, high=high, width=wide, corners=corners))
    return "\n".join(
        [
            "stilewright: 1\njob: A cabinet at random\nunits: mm",
            draw(rooms(width)),
            block("cabinet", own),
            draw(backs()),
            REST,
            BUTT if framed else CUP,
        ]
    )


@st.composite
def bored_cabinets(draw: st.DrawFn) -> str:
    """A cabinet by itself of any board, bored by one workshop's habits or another's."""
    habits = {
        "dowel": st.sampled_from(["6 x 30", "8 x 30", "8 x 40", "10 x 40"]),
        "dowel pitch": st.sampled_from([64, 96, 128, 160]),
        "dowel from edge": halves(30, 60),
        "screw": st.sampled_from(["7 x 50", "6 x 60"]),
        "pitch": st.sampled_from([25, 30, 32]),
        "pins": st.sampled_from(["5 x 13", "3 x 9", "7 x 10"]),
        "rows": st.sampled_from(["shared out", "about the middle"]),
        "from front": halves(25, 50),
        "from ends": halves(30, 90),
        "plate holes": st.sampled_from(["5 x 12", "3.5 x 10"]),
    }
    changed = draw(st.lists(st.sampled_from(list(habits)), max_size=4, unique=True))
    own = ", ".join(f"{key}: {draw(habits[key])}" for key in changed)
    parts = [draw(lone_cabinets(corners=BORED))]
    if changed:
        parts.append(f"boring: {{{own}}}")
    parts.append(f"board: {{thickness: {draw(st.sampled_from([15, 16, 18, 19, 22, 25]))}}}")
    return "\n".join(parts)


@st.composite
def runs(draw: st.DrawFn) -> str:
    """A run of cabinets from wall to wall, with fillers and perhaps a space among them."""
    width = draw(halves(2600, 4200))
    high = draw(st.sampled_from([720.0, 2100.0]))
    count = draw(st.integers(1, 3))
    words = [f"cabinet {name}" for name in "abc"[:count]]
    if count > 1 and draw(st.booleans()):
        words.insert(1, "space")
    lines = [f"  - filler: at least {draw(halves(20, 40))}"]
    lines += [f"  - {word}: {'600' if word == 'space' else 'equal'}" for word in words]
    if draw(st.booleans()):
        lines.append(f"  - filler: at least {draw(halves(20, 40))}")
    run = [f"plinth: {draw(st.sampled_from([0, 80, 120]))}"]
    if draw(st.booleans()):
        run.append("round widths: 1")
    if high < 1100 and draw(st.booleans()):
        run.append("counter: 40")
    if high > 1100 and draw(st.booleans()):
        run.append("top filler: at least 30")
    blocks = []
    for name in "abc"[:count]:
        own = draw(cabinets(framed=False, high=high))
        blocks.append(block(f"cabinet {name}", [k for k in own if not k.startswith("counter:")]))
    return "\n".join(
        [
            "stilewright: 1\njob: A run at random\nunits: mm",
            draw(rooms(width)),
            block("run", [*run, "left to right:", *lines]),
            *blocks,
            draw(backs()),
            REST,
            CUP,
        ]
    )


def casework() -> st.SearchStrategy[str]:
    """Any of them."""
    return st.one_of(lone_cabinets(), runs())
