"""The design file of one case of the pairwise list: an opening large enough for all of it."""

from __future__ import annotations

from tests.pairwise.cases import Case

SLIDES = ("sliding", "biparting", "bypass", "three that pass", "pocket")
CABINETS = ("inset cabinet pair", "overlay cabinet run")

HANGINGS: dict[str, str] = {
    "sliding": "kind: sliding\nopens to: left",
    "biparting": "kind: biparting",
    "bypass": "kind: bypass",
    "three that pass": "kind: bypass\nleaves: 3",
    "pocket": "kind: pocket\npocket: right",
    "hinged": "kind: hinged\nhinge side: left\nlock gap: 5 mm",
    "pair": "kind: hinged pair\nmeeting gap: 5 mm",
    "rebated pair": "kind: hinged pair\nmeeting gap: 5 mm\nmeeting stiles: rebated",
    "pair with astragal": "kind: hinged pair\nmeeting gap: 5 mm\nmeeting stiles: astragal",
    "bifold of two": "kind: bifold\nleaves: 2\nfolds to: left\njamb gap: 8 mm",
    "bifold of four": "kind: bifold\nleaves: 4\nfolds to: left\njamb gap: 14 mm",
    "dutch": "kind: dutch\nhinge side: left\nlock gap: 5 mm\nsplit: 1040 mm\nupper leaf: up\nlower leaf: down",
    "inset cabinet pair": "kind: cabinet\nfronts: inset\nfront gap: 5 mm\nleft to right: [bay: rest]",
    "overlay cabinet run": "kind: cabinet\nfronts: overlay\ncase edge: 18 mm\npartition: 18 mm\n"
    "left to right: [bay: equal, bay: equal]",
}
BAYS: dict[str, str] = {
    "inset cabinet pair": "bay: {top to bottom: [door pair: rest]}",
    "overlay cabinet run": "bay: {top to bottom: [door: rest]}",
}
WIDE: dict[str, int] = {
    "sliding": 900,
    "pocket": 860,
    "hinged": 880,
    "dutch": 900,
    "bifold of two": 1300,
    "bifold of four": 2600,
    "three that pass": 2700,
    "inset cabinet pair": 1300,
    "overlay cabinet run": 1300,
}
"""Widths of the opening, mm; 1700 for all others."""
INFILLS: dict[str, tuple[str, ...]] = {
    "raised panel": ("panel: rest",),
    "flat panel": ("panel: rest",),
    "board panel": ("panel: rest",),
    "lite in stops": ("lite: rest",),
    "lite in a rebate": ("lite: rest",),
    "divided lite": ("lite: rest\n      wide: 2\n      high: 3",),
    "applied bars": ("lite: rest\n      wide: 2\n      high: 2",),
    "bars between stops": ("lite: rest\n      wide: 2\n      high: 2",),
    "divided lite over a panel": (
        "lite: rest\n      wide: 2\n      high: 2",
        "lock rail: 150 mm",
        "panel: {panel} mm",
    ),
}
HINGES: dict[str, str] = {
    "butt": "hinge: {kind: butt, length: 100 mm, thick: 2.5 mm, knuckle: 12 mm, from top: 130 mm, "
    "from bottom: 150 mm}",
    "cup": "hinge: {kind: cup, cup: 35 mm, cup from edge: 5 mm, from ends: 100 mm, depth: 12 mm, "
    "pilot: 2.5 mm x 11 mm, steps: {1100 mm: 2, 3000 mm: 5}}",
    "pivot": "hinge: {kind: pivot, pin: 12 mm x 30 mm, from edge: 60 mm}",
}
PULL = (
    "pull: {kind: recessed, body: 120 mm x 30 mm x 12 mm, body corner: 5 mm, "
    "flange: 130 mm x 40 mm x 2 mm, flange corner: 8 mm, height: 1060 mm, from edge: 55 mm}"
)
LOCK = (
    "lock: {kind: mortise latch, body: 60 mm x 14 mm x 40 mm, faceplate: 110 mm x 20 mm x 3 mm, "
    "backset: 28 mm, height: HEIGHT mm, above spindle: 30 mm, spindle: 9 mm, strike: 110 mm x 20 mm x 2 mm}"
)
JOINTS: dict[str, str] = {
    "loose tenon": "joint: {kind: loose tenon, slot: 10 mm x 52 mm x 40 mm, tenon: 10 mm x 50 mm x 78 mm, off end: 30 mm}",
    "stub tenon": "joint: {kind: stub tenon, length: 14 mm}",
}
STICKINGS: dict[str, str] = {
    "square": "",
    "coped ovolo": "sticking edge: {kind: ovolo, width: 7 mm, depth: 4 mm, fillet: 1 mm}",
    "mitred ogee": "sticking edge: {kind: ogee, corners: mitred, width: 8 mm, depth: 4 mm, "
    "fillet: 1 mm}",
    "mitred bead": "sticking edge: {kind: bead, round: 4 mm, quirk: 1.5 mm, sunk: 0.5 mm}",
}
PANELS: dict[str, str] = {
    "flat panel": "panel: {kind: flat, thickness: 9 mm, sawn: quarter, groove: 9 mm x 16 mm, "
    "clearance: 1.5 mm}",
    "board panel": "panel: {kind: board, board: plywood, thickness: 9 mm, groove: 9 mm x 16 mm, "
    "clearance: 1.5 mm}",
}
RAISED = (
    "panel: {kind: raised, thickness: 24 mm, sawn: quarter, groove: 8.2 mm x 16 mm, tongue: 8 mm x 17 mm, "
    "back rebate: 4 mm, edge thickness: 13 mm, bevel run: 40 mm}"
)


def leaf(case: Case, name: str, panel: int) -> str:
    """One leaf's block."""
    rows = ["top rail: 110 mm" + ("\n      underside: arch" if case.head != "straight" else "")]
    rows += [row.replace("{panel}", str(panel)) for row in INFILLS[case.infill]]
    rows.append("bottom rail: 200 mm")
    lines = "".join(f"    - {row}\n" for row in rows)
    return (
        f"{name}:\n  timber: ash\n  thickness: 42 mm\n  stiles: 110 mm\n  trim: 12 mm\n"
        + ("" if case.sight == "square" else "  sticking: edge\n")
        + f"  top to bottom:\n{lines}"
    )


def arch(case: Case) -> str:
    """The curve over each leaf, where it has one."""
    if case.head == "straight":
        return ""
    rise = {
        "segmental": "\n  rise: 60 mm",
        "half round": "",
        "pointed": "\n  rise: RISE mm",
        "elliptical": "\n  rise: 110 mm",
        "raked": "\n  rise: 90 mm\n  rises to: left",
    }[case.head]
    wide = WIDE.get(case.hanging, 1700)
    leaves = {"bifold of two": 2, "bifold of four": 4, "three that pass": 3}.get(
        case.hanging, 1 if case.hanging in ("sliding", "pocket", "hinged", "dutch") else 2
    )
    high = "400" if case.hanging == "dutch" else str(wide // leaves)
    return f"arch:\n  shape: {case.head}\n  across: leaf{rise.replace('RISE', high)}\n"


def written(case: Case) -> str:
    """The whole file."""
    wide = WIDE.get(case.hanging, 1700)
    cabinet = case.hanging in CABINETS
    door = HANGINGS[case.hanging].splitlines()
    if case.hinge == "pivot":
        door.append("hinge gap: 5 mm")
    if case.opens != "slides" and not cabinet:
        door.append(f"opens: {case.opens}")
    dutch = case.hanging == "dutch"
    leaves = (
        leaf(case, "leaf up", 200) + leaf(case._replace(head="straight"), "leaf down", 200)
        if dutch
        else leaf(case, "leaf", 500)
    )
    glass = "glass: {kind: toughened, thickness: 4 mm"
    if case.infill in ("lite in a rebate", "divided lite", "divided lite over a panel"):
        glass += ", held by: rebate"
    if case.infill == "applied bars":
        glass += ", bars: applied, muntin: 22 mm, bar thickness: 8 mm x 8 mm"
    if case.infill == "bars between stops":
        glass += ", muntin: 40 mm"
    high = 1303 if cabinet else 2103
    blocks = [
        arch(case),
        JOINTS[case.joint],
        STICKINGS[case.sight],
        PANELS.get(case.infill, RAISED) if "panel" in case.infill else "",
        "" if case.infill.endswith(" panel") and "lite" not in case.infill else glass + "}",
        BAYS.get(case.hanging, ""),
        "track: {off wall: 150 mm, spacing: 54 mm}" if case.hanging in SLIDES else "",
        HINGES.get(case.hinge, ""),
        PULL.replace("1060", "1300" if dutch else "1060") if case.fittings == "pull" else "",
        LOCK.replace("HEIGHT", "700" if dutch else "1060") if case.fittings == "lock" else "",
    ]
    return (
        "stilewright: 1\njob: Pairwise\n"
        f"units: {case.units}\n"
        "survey:\n"
        f"  widths: {{top: {wide + 2} mm, middle: {wide} mm, bottom: {wide + 1} mm}}\n"
        f"  heights: {{left: {high} mm, middle: {high - 2} mm, right: {high - 3} mm}}\n"
        + ("  foot above floor: 100 mm\n" if cabinet else "")
        + "  left side: plumb\n  right side: not measured\n  head: level\n  wall: 150 mm\n"
        "  fixing: solid timber\n"
        "door:\n"
        + "".join(f"  {line}\n" for line in door)
        + leaves
        + "\n".join(block for block in blocks if block)
        + "\n"
    )
