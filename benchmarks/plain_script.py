"""The same two leaves as a plain CadQuery script, sizes typed in: what the tool is timed against.

    python benchmarks/plain_script.py OUT_FOLDER

Written as a practised user of the library writes it: each different part once, cuts one by
one, an assembly with colours, STEP and GLB by the library's own export.
"""

from __future__ import annotations

import sys
from pathlib import Path

import cadquery as cq

W, H, T = 1024.5, 2102.0, 40.0
STILE, TRIM, SHOULDER = 120.0, 12.0, 784.5
SLOTS = {
    "bottom rail": (71, 189),
    "lock rail": (785,),
    "dividing rail": (1416,),
    "top rail": (2042,),
}
RAILS = {
    "bottom rail": (0, 240),
    "lock rail": (700, 150),
    "dividing rail": (1371, 90),
    "top rail": (1982, 120),
}


def stile(pull: bool) -> cq.Workplane:
    """X up from the blank's foot, y from the outer edge in, z through."""
    body = cq.Workplane().box(H + 2 * TRIM, STILE, T, centered=False)
    for places in SLOTS.values():
        for y in places:
            body = (
                body.faces(">Y")
                .workplane(origin=(y + TRIM, STILE, T / 2))
                .slot2D(62, 12)
                .cutBlind(-46)
            )
    body = body.cut(cq.Workplane().box(488, 14, 8.2).translate((470 + TRIM, STILE - 7, T / 2)))
    body = body.cut(cq.Workplane().box(TRIM, STILE, T, centered=False))
    body = body.cut(cq.Workplane().box(TRIM, STILE, T, centered=False).translate((H + TRIM, 0, 0)))
    body = body.cut(
        cq.Workplane().box(18, STILE, 9, centered=(False, False, True)).translate((TRIM, 0, T / 2))
    )
    if pull:
        for z in (0, T):
            for length, width, corner, depth in ((160.6, 42.6, 6.3, 1.5), (150.6, 32.6, 3.3, 14.2)):
                tool = cq.Workplane().box(length, width, 2 * depth).edges("|Z").fillet(corner)
                body = body.cut(tool.translate((988 + TRIM, 60, z)))
    return body


def rail(name: str) -> cq.Workplane:
    """X along, y up, z through."""
    foot, high = RAILS[name]
    body = cq.Workplane().box(SHOULDER, high, T, centered=False)
    for y in SLOTS[name]:
        for face, x in (("<X", 0), (">X", SHOULDER)):
            body = (
                body.faces(face).workplane(origin=(x, y - foot, T / 2)).slot2D(62, 12).cutBlind(-46)
            )
    if name == "lock rail":
        body = body.cut(cq.Workplane().box(SHOULDER, 14, 8.2).translate((SHOULDER / 2, 7, T / 2)))
    if name == "bottom rail":
        body = body.cut(
            cq.Workplane().box(SHOULDER, 14, 8.2).translate((SHOULDER / 2, high - 7, T / 2))
        )
        body = body.cut(cq.Workplane().box(SHOULDER, 18, 9).translate((SHOULDER / 2, 9, T / 2)))
    return body


def panel() -> cq.Workplane:
    """Tongue, shoulder, bevel and field, one on another."""
    long, wide = 485.0, 803.53

    def face(inset: float, z: float) -> cq.Workplane:
        return cq.Workplane(origin=(long / 2, wide / 2, z)).rect(long - 2 * inset, wide - 2 * inset)

    body = face(0, 5).extrude(8).union(face(15, 0).extrude(17.3))
    bevel = face(15, 17.3).workplane(offset=9.2).rect(long - 150, wide - 150).loft(ruled=True)
    return body.union(bevel).union(face(75, 26.5).extrude(1.5))


def stop(length: float) -> cq.Workplane:
    """Mitred both ends."""
    outline = [(0, 0), (length, 0), (length - 12, 12), (12, 12)]
    return cq.Workplane().polyline(outline).close().extrude(14.5)


def pull() -> cq.Workplane:
    """Flange, body and hollow."""
    flange = cq.Workplane().box(160, 42, 1.5).edges("|Z").fillet(6).translate((0, 0, 13.25))
    body = cq.Workplane().box(150, 32, 14).edges("|Z").fillet(3).translate((0, 0, 7))
    hollow = cq.Workplane().box(147, 29, 12.5).edges("|Z").fillet(1.5).translate((0, 0, 7.75))
    return flange.union(body).cut(hollow)


def leaf(name: str, left_pull: bool, parts: dict[str, cq.Workplane]) -> cq.Assembly:
    """One leaf, every part where it stands: x right, y away, z up."""
    timber, clear, metal = (
        cq.Color(0.78, 0.7, 0.52),
        cq.Color(0.7, 0.85, 0.85, 0.35),
        cq.Color(0.6, 0.5, 0.3),
    )
    assembly = cq.Assembly(name=name)
    count = 0

    def add(key: str, at: tuple[float, float, float], x: tuple, z: tuple, colour: cq.Color) -> None:
        nonlocal count
        count += 1
        plane = cq.Plane(origin=at, xDir=x, normal=z)
        assembly.add(parts[key], name=f"{name} {key} {count}", loc=cq.Location(plane), color=colour)

    up, right, front, back = (0, 0, 1), (1, 0, 0), (0, -1, 0), (0, 1, 0)
    add("stile with pull" if left_pull else "stile", (0, 0, -TRIM), up, back, timber)
    add("stile" if left_pull else "stile with pull", (W, T, -TRIM), up, front, timber)
    for key, (foot, _) in RAILS.items():
        add(key, (STILE, T, foot), right, front, timber)
        for y in SLOTS[key]:
            for x in (STILE, W - STILE):
                add("tenon", (x - 45, T / 2 + 6, y - 30), right, front, timber)
    add("panel", (STILE + (SHOULDER + 803.53) / 2, 29, 227.5), up, front, timber)
    for foot in (850, 1461):
        add("glass", (STILE + 3, 23, foot + 3), right, front, clear)
        for y in (15.5, 39.0):
            add("stop across", (STILE, y, foot), right, front, timber)
            add("stop across", (STILE + SHOULDER, y, foot + 521), (-1, 0, 0), front, timber)
            add("stop upright", (STILE, y, foot + 521), (0, 0, -1), front, timber)
            add("stop upright", (STILE + SHOULDER, y, foot), up, front, timber)
        for y in (17.0, 24.5):
            add("tape", (STILE + 3, y, foot + 3), right, front, cq.Color(0.3, 0.3, 0.3))
    x = 60 if left_pull else W - 60
    add("pull", (x, 14, 988), up, front, metal)
    add("pull", (x, T - 14, 988), up, back, metal)
    return assembly


def main(out: Path) -> None:
    """Build both leaves and export them."""
    tenon = cq.Workplane("YZ").center(30, 6).slot2D(60, 12).extrude(90)
    parts = {
        "stile": stile(False),
        "stile with pull": stile(True),
        **{name: rail(name) for name in RAILS},
        "panel": panel(),
        "tenon": tenon,
        "glass": cq.Workplane().box(778.5, 515, 6, centered=False),
        "tape": cq.Workplane()
        .box(778.5, 515, 1.5, centered=False)
        .cut(cq.Workplane().box(760.5, 497, 1.5).translate((389.25, 257.5, 0.75))),
        "stop across": stop(SHOULDER),
        "stop upright": stop(521.0),
        "pull": pull(),
    }
    pair = cq.Assembly(name="pair")
    pair.add(leaf("leaf A", True, parts), loc=cq.Location((-50, -106, 12)))
    pair.add(leaf("leaf B", False, parts), loc=cq.Location((854.5, -54, 12)))
    pair.export(str(out / "plain.step"))
    pair.export(str(out / "plain.glb"), tolerance=0.1, angularTolerance=0.25)


if __name__ == "__main__":
    main(Path(sys.argv[1]))
