"""client/preview.html: one file that shows the doors in their opening and moves them.

The file carries everything: fonts, script, model, drawing. It asks nothing of any network
and opens from a disk or a mail. The words and sizes are in the page as text, so that they
are there before the picture is, and when there can be no picture.
"""

from __future__ import annotations

import base64
import dataclasses
import hashlib
import itertools
import json
import math
import re
import struct
import xml.etree.ElementTree as ElementTree
from collections.abc import Mapping, Sequence
from importlib.resources import files
from typing import Any, assert_never

from parametric.catalog.finishes import RAW, ClearTimber, Glass, Metal, Paint
from parametric.model import Placement, Slide, Step, Turn, along
from parametric.writers.client_page import (
    Doorway,
    Fact,
    PageLeaf,
    Palette,
    PreviewPage,
    plain,
)
from parametric.writers.page_markup import (
    PAGE,
    all_of,
    beyond_of,
    colour_of,
    facts_list,
    finish_panel,
    foot_of,
    inside_of,
    option_template,
    options_choice,
    places_list,
    slip_words_of,
    text_of,
    words_of,
    yes_panel,
)
from parametric.writers.page_words import SLIP_FORMAT, WORDS
from parametric.writers.room_facts import room_facts

_VENDOR = files("parametric") / "vendor"

_ALLOWED = (
    "default-src 'none'; script-src '{0}'; style-src 'unsafe-inline'; font-src data:; "
    "base-uri 'none'; form-action 'none'"
)
_LONG = 36
"""Letters from which a job's name is set smaller, so that it stays off the doors."""
_WEIGHTS = ((400, "regular"), (500, "medium"), (700, "bold"))
_BUILD_DIGITS = 12
_TRIED = (0.0, 0.5, 1.0)
_SAME_PLACE = 0.01
"""mm: a leaf goes to one place in the page and in its model when it is no farther off."""


def write_html(
    page: PreviewPage, glb: bytes, beside: tuple[tuple[PreviewPage, bytes], ...] = ()
) -> bytes:
    """The page as one UTF-8 file; the same input gives the same bytes.

    Args:
        page: words, sizes and survey of the job.
        glb: the model; the only geometry of the leaves that the page has.
        beside: the other options of the job, each with its model.

    Raises:
        ValueError: page, model and drawing do not belong together.
    """
    for one, model in ((page, glb), *beside):
        _same_leaves(one, model)
        _same_clear_way(one)
    script = _vendored("viewer/viewer.min.js")
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    slots = {
        "language": WORDS["language"],
        "allowed": _ALLOWED.format(f"sha256-{digest}"),
        "title": " · ".join(text_of(t) for t in (page.job, page.subtitle) if t),
        "notice": _vendored("viewer/NOTICE.txt"),
        "fonts": _fonts(),
        "style": _vendored("viewer/viewer.min.css"),
        "finish": _shown(page.palette),
        "drawing": _drawings(page),
        "job": text_of(page.job),
        "options": options_choice((page, *(one for one, _ in beside))) if beside else "",
        "beside": "".join(
            option_template(one, _drawings(one)) + _model(model, one.option)
            for one, model in beside
        ),
        "long": ' class="long"' if len(page.job) > _LONG else "",
        "under": text_of(page.subtitle),
        "unit": text_of(WORDS[f"unit {page.unit}"]),
        "person": text_of(WORDS[f"person {page.unit}"]),
        "places": places_list(page.places),
        "beyond": beyond_of(page),
        "all": all_of(page),
        "inside": inside_of(any(_hides(model) for model in (glb, *(own for _, own in beside)))),
        "facts": facts_list(page.facts),
        "finish panel": finish_panel(page.palette),
        "yes panel": yes_panel(page),
        "foot": foot_of(page),
        "model": _model(glb),
        "script": script,
    }
    slots |= {f"words.{key}": text_of(word) for key, word in words_of(page).items()}
    # what the page is called in a slip: a digest of all of it but this name
    others = tuple(one for one, _ in beside)
    unnamed = _fill(PAGE, slots | {"data": _data(page, "", others)})
    build = hashlib.sha256(unnamed.encode("utf-8", "xmlcharrefreplace")).hexdigest()
    slots["data"] = _data(page, build[:_BUILD_DIGITS], others)
    return _fill(PAGE, slots).encode("utf-8", "xmlcharrefreplace")


def widest_clear_way(page: PreviewPage) -> float:
    """The widest stretch of the way that the leaves leave, over all ways of standing them, mm."""
    return _widest_way(page.leaves, page.way)


def _widest_way(leaves: Sequence[PageLeaf], way: tuple[float, float]) -> float:
    best = 0.0
    together = tuple(dict.fromkeys(leaf.goes_with or leaf.name for leaf in leaves))
    for parts in itertools.product((0.0, 1.0), repeat=len(together)):
        opened = dict(zip(together, parts, strict=True))
        covers = sorted(leaf.across(opened[leaf.goes_with or leaf.name]) for leaf in leaves)
        edge, right = map(float, way)
        for start, end in (*covers, (right, right)):
            best = max(best, min(start, right) - edge)
            edge = max(edge, end)
    return best


def _same_clear_way(page: PreviewPage) -> None:
    shown = {leaf.name: leaf for leaf in page.leaves}
    ways = [
        ([shown[name] for name in one.leaves], one.way, one.clear_way) for one in page.doorways
    ] or [(list(page.leaves), page.way, page.clear_way)]
    for leaves, way, clear_way in ways:
        found = None if clear_way is None else _widest_way(leaves, way)
        if found is not None and clear_way is not None and abs(found - clear_way) > 0.05:
            message = f"the page would show {found} clear, the job says {clear_way}"
            raise ValueError(message)


def _same_leaves(page: PreviewPage, glb: bytes) -> None:
    """The model's leaves are the page's: by name, and by where they go."""
    found = {
        node["name"]: _motion_of(node["extras"])
        for node in _nodes(glb)
        if node.get("extras", {}).get("role") == "leaf"
    }
    wanted = {leaf.name: leaf.motion for leaf in page.leaves}
    if found.keys() != wanted.keys():
        message = f"the model's leaves {sorted(found)} are not the page's {sorted(wanted)}"
        raise ValueError(message)
    for leaf in page.leaves:
        for x, part in itertools.product((leaf.x, leaf.x + leaf.width), _TRIED):
            at = Placement(origin=(x, leaf.front, leaf.foot))
            ours, theirs = (along(at, m, part).origin for m in (leaf.motion, found[leaf.name]))
            if math.dist(ours, theirs) > _SAME_PLACE:
                message = (
                    f"{leaf.name} goes to {theirs} in the model, in the page's leaves to {ours}"
                )
                raise ValueError(message)


def _nodes(glb: bytes) -> list[dict[str, Any]]:
    """The nodes of a model."""
    length = struct.unpack_from("<I", glb, 12)[0]
    nodes: list[dict[str, Any]] = json.loads(glb[20 : 20 + length]).get("nodes", [])
    return nodes


def _hides(glb: bytes) -> bool:
    """Whether a model has parts that hide something that is looked for."""
    return any("seeThrough" in node.get("extras", {}) for node in _nodes(glb))


def _motion_of(extras: Mapping[str, Any]) -> tuple[Step, ...]:
    """How a leaf of the model moves, back in the world: mm, Z up."""
    if "axis" in extras:
        far = extras["travel"][1]
        told: list[dict[str, Any]] = [
            {"slide": [far if axis == extras["axis"] else 0.0 for axis in "xyz"]}
        ]
    else:
        told = extras["motion"]
    steps: list[Step] = []
    for step in told:
        if "slide" in step:
            x, y, z = step["slide"]
            steps.append(Slide(direction=(x, -z, y), travel=1000.0))
        else:
            (x, y, z), (a, b, c) = step["point"], step["axis"]
            at = (x * 1000, -z * 1000, y * 1000)
            steps.append(Turn(point=at, axis=(a, -c, b), angle=step["turn"]))
    return tuple(steps)


def _model(glb: bytes, option: str = "") -> str:
    """A model as the page carries it, that of another option under its letter."""
    return (
        f'<script type="application/octet-stream" id="model{f"-{option}" if option else ""}">'
        f"{base64.b64encode(glb).decode()}</script>\n"
    )


_OF_AN_OPTION = (
    *("option", "called", "mark", "fingerprint", "leaves", "way", "top", "scenery", "glued"),
    *("doorways", "facts", "palette", "ticks"),
)
"""What may differ from one option to another; the room, the words and the job are the same."""


def _data(page: PreviewPage, build: str, beside: tuple[PreviewPage, ...]) -> str:
    data = _facts_of(page)
    data["build"] = build
    if beside:
        data["options"] = [
            {key: told for key, told in _facts_of(one).items() if key in _OF_AN_OPTION}
            for one in beside
        ]
    # JSON knows these signs by number too, and no reader of HTML takes a number for a tag
    text = json.dumps(data, ensure_ascii=True, separators=(",", ":"))
    for sign in "<>&":
        text = text.replace(sign, f"\\u{ord(sign):04x}")
    return text


def _facts_of(page: PreviewPage) -> dict[str, Any]:
    leaves = [
        {
            "name": leaf.name,
            "label": leaf.label,
            "pull": None if leaf.pull is None else float(leaf.pull),
            "pull_up": None if leaf.pull_up is None else float(leaf.pull_up),
            "motion": [_step(step) for step in leaf.motion],
            "goes_with": leaf.goes_with,
            "after": leaf.after,
            "behind": list(leaf.behind),
            "along": [float(v) for v in leaf.along],
            **{
                key: float(getattr(leaf, key))
                for key in ("width", "height", "x", "foot", "front", "thickness")
            },
        }
        for leaf in page.leaves
    ]
    words = {
        key: word for key, word in words_of(page).items() if " mm" not in key and " in" not in key
    }
    data: dict[str, Any] = {
        "unit": page.unit,
        "job": page.job,
        "revision": page.revision,
        "revision_date": page.revision_date,
        "mark": page.mark,
        "fingerprint": page.fingerprint,
        "build": "",
        "leaves": leaves,
        "opening": [[float(x), float(z)] for x, z in page.opening],
        "floor": [[float(x), float(z)] for x, z in page.floor],
        "wall": float(page.wall),
        "way": [float(x) for x in page.way],
        "top": float(page.top),
        "scenery": {
            "skirting": [float(v) for v in page.scenery.skirting],
            "clear": [float(v) for v in page.scenery.skirting_clear],
            "brackets": [[float(v) for v in at] for at in page.scenery.brackets],
        }
        | _trims(page),
        "scene": room_facts(),
        "places": [
            {"seated": place.seated, "far": float(place.far), "side": place.side}
            for place in page.places
        ],
        "glued": {mark: float(width) for mark, width in page.glued.items()},
        "facts": [_shown_fact(fact) for fact in page.facts],
        "palette": _palette(page.palette),
        "ticks": [plain(tick) for tick in page.ticks],
        "words": words | {"open_by": WORDS[f"open_by {page.unit}"]},
        "slip": {
            "format": SLIP_FORMAT,
            "words": slip_words_of(page),
        },
    }
    if page.niche is not None:
        data["niche"] = {
            "face": float(page.niche.face),
            "back": float(page.niche.back),
            "surfaces": [
                {"kind": one.kind, "corners": [[float(v) for v in at] for at in one.corners]}
                for one in page.niche.surfaces
            ],
        }
    if page.doorways:
        data["doorways"] = [_doorway(way) for way in page.doorways]
    if page.option:
        data |= {"option": page.option, "called": page.called}
    return data


def _doorway(way: Doorway) -> dict[str, Any]:
    """One of several doorways, as the page stands it in the room."""
    return {
        "called": way.called,
        "at": float(way.at),
        "leaves": list(way.leaves),
        "opening": [[float(x), float(z)] for x, z in way.opening],
        "floor": [[float(x), float(z)] for x, z in way.floor],
        "way": [float(x) for x in way.way],
        "clear": [float(v) for v in way.skirting_clear],
        "walked": way.clear_way is not None,
    }


def _step(step: Step) -> dict[str, Any]:
    """A step of a motion as the page moves it: a way in mm, or a turn in degrees about a line."""
    match step:
        case Slide():
            return {"slide": [float(d) * float(step.travel) + 0.0 for d in step.direction]}
        case Turn():
            return {
                "turn": float(step.angle),
                "point": [float(v) for v in step.point],
                "axis": [float(v) for v in step.axis],
            }
        case _:
            assert_never(step)


def _trims(page: PreviewPage) -> dict[str, Any]:
    """What stands round the opening, if anything does."""
    if not page.scenery.trims:
        return {}
    return {
        "trims": [
            {"outline": [[x, z] for x, z in outline], "near": near, "far": far}
            for outline, near, far in page.scenery.trims
        ]
    }


def _shown_fact(fact: Fact) -> dict[str, Any]:
    return {
        "label": fact.label,
        "value": plain(fact.value),
        "opened": {name: float(far) for name, far in fact.opened.items()},
        "walks": fact.walks,
        "chalk": [
            {
                "start": [float(v) for v in line.start],
                "end": [float(v) for v in line.end],
                "text": line.text,
                "leaf": line.leaf,
                "aside": [float(v) for v in line.aside],
            }
            for line in fact.chalk
        ],
    }


def _palette(palette: Palette) -> dict[str, Any]:
    return {
        "paints": [_entry(paint) for paint in palette.paints],
        "timbers": [_entry(timber) for timber in palette.timbers],
        "glasses": [_entry(glass) for glass in palette.glasses],
        "metals": [_entry(metal) for metal in palette.metals],
        "raw": _entry(RAW),
        "chosen": {"wood": palette.wood, "glass": palette.glass, "metal": palette.metal},
        "quoted": {
            "wood": list(palette.quoted_wood),
            "glass": list(palette.quoted_glass),
            "metal": list(palette.quoted_metal),
        },
        "named_wood": palette.named_wood,
    }


def _entry(what: Paint | ClearTimber | Glass | Metal) -> dict[str, Any]:
    entry = dataclasses.asdict(what)
    for name in ("colour", "early", "late"):
        if name in entry:
            entry[name] = colour_of(entry[name])
    return entry


def _shown(palette: Palette) -> str:
    """The colour of a bar in the strip before anything is chosen."""
    wood = palette.wood_shown
    return colour_of(wood.colour if isinstance(wood, Paint) else wood.early)


def _drawings(page: PreviewPage) -> str:
    """The drawing of the doors; of several doors one after the other."""
    svgs = [way.elevation_svg for way in page.doorways] or [page.elevation_svg]
    return "".join(map(_drawing, svgs))


def _drawing(svg: str) -> str:
    """The drawing, if it is one whole SVG element and nothing that acts."""
    root = ElementTree.fromstring(svg)
    names = [element.tag.rsplit("}", 1)[-1] for element in root.iter()]
    if names[0] != "svg" or {"script", "foreignObject"} & set(names):
        message = f"the elevation is not a plain SVG drawing but {names[0]}"
        raise ValueError(message)
    return re.sub(r"^\s*<\?xml.*?\?>\s*", "", svg)


def _fonts() -> str:
    rule = (
        "@font-face{{font-family:Stilewright;font-weight:{0};"
        "src:url(data:font/woff2;base64,{1}) format('woff2')}}"
    )
    return "".join(
        rule.format(weight, base64.b64encode(_bytes(f"fonts/stilewright-{name}.woff2")).decode())
        for weight, name in _WEIGHTS
    )


def _bytes(name: str) -> bytes:
    return _VENDOR.joinpath(*name.split("/")).read_bytes()


def _vendored(name: str) -> str:
    return _bytes(name).decode()


def _fill(page: str, slots: dict[str, str]) -> str:
    """Fill every {{slot}} once, so that nothing that was filled in is read again."""
    return re.sub(r"\{\{(.+?)\}\}", lambda found: slots[found[1]], page)
