"""client/preview.html: one file that shows the doors in their opening and slides them.

The file carries everything: fonts, script, model, drawing. It asks nothing of any network
and opens from a disk or a mail. The words and sizes are in the page as text, so that they
are there before the picture is, and when there can be no picture.
"""

from __future__ import annotations

import base64
import hashlib
import html
import itertools
import json
import re
import struct
import xml.etree.ElementTree as ElementTree
from dataclasses import dataclass
from importlib.resources import files
from typing import Any, Literal

_VENDOR = files("parametric") / "vendor"

WORDS = {
    "language": "en",
    "shut": "Shut",
    "clear": "Open: {0} clear to walk through",
    "open_by mm": "{0} millimetres open",
    "open_by in": "{0} inches open",
    "seen from above": "seen from above",
    "strip": "The doors seen from above",
    "waiting": "Hanging the doors…",
    "no picture": "This screen cannot draw the doors in the round. The drawing is to scale.",
    "no script": "The drawing and the sizes are here; sliding the doors needs a browser with script.",
    "hint touch": "Slide a door with your finger",
    "hint mouse": "Drag a door to slide it",
    "canvas": (
        "Picture of the doors in their opening. Drag a door to slide it, drag beside the doors "
        "to look round. Arrow keys look round, plus and minus step closer and back."
    ),
    "drawing": "Drawing of the doors seen from the front",
    "sizes": "Sizes",
    "unit mm": "in millimetres",
    "unit in": "in inches",
    "revision": "Revision {0}",
    "mark": "mark {0}",
    "maker": "Drawn by {0} from the measured opening.",
    "finish": "Pictured in {0}. Choose colours by a real sample: no two screens agree.",
    "made with": "Made with stilewright",
}
"""Every word the page says of itself; the rest comes with the job."""

_ALLOWED = "default-src 'none'; script-src '{0}'; style-src 'unsafe-inline'; font-src data:; base-uri 'none'; form-action 'none'"
_LONG = 36
"""Letters from which a job's name is set smaller, so that it stays off the doors."""
_WEIGHTS = ((400, "regular"), (500, "medium"), (700, "bold"))
_FRACTION = re.compile("[0-9]+\u2044[0-9]+")


@dataclass(frozen=True, slots=True, kw_only=True)
class PageLeaf:
    """A leaf as the page moves it. Lengths mm, in the world's frame.

    `name` is the model's node; `label` what the client is told it is ("Left door, in
    front"). `x` is its left outer edge when shut, `foot` its finished bottom, `front` the
    y of its front face (less than 0 when it hangs before the wall). `travel` is signed:
    less than 0 slides to the left. `pull` is the pull's centre from the left outer edge.
    """

    name: str
    label: str
    width: float
    height: float
    x: float
    foot: float
    front: float
    thickness: float
    travel: float
    pull: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """One size in plain words: "Gap under the doors", "21 left, 12 right", and why."""

    label: str
    value: str
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finish:
    """How the timber looks: a paint's name, its sRGB colour and its sheen (0 a mirror, 1 chalk)."""

    name: str = "a grey-green paint"
    colour: str = "#98a48c"
    rough: float = 0.45


@dataclass(frozen=True, slots=True, kw_only=True)
class PreviewPage:
    """All that the page shows of a job but the model itself.

    `opening` runs from the foot of the left jamb up, over the head and down to the foot of
    the right, as measured; `floor` from left to right; both (x, z) in mm, never squared up.
    `way` is the clear way's left and right jamb where it is narrowest, and `clear_way` the
    most that the open leaves leave of it. `top` is the highest thing that must be seen.
    `unit` is the unit of the job's numbers. `elevation_svg` is the drawing shown until the
    picture is there, and instead of it.
    """

    job: str
    subtitle: str
    revision: str
    mark: str
    unit: Literal["mm", "in"]
    leaves: tuple[PageLeaf, ...]
    opening: tuple[tuple[float, float], ...]
    floor: tuple[tuple[float, float], ...]
    wall: float
    way: tuple[float, float]
    clear_way: float
    top: float
    facts: tuple[Fact, ...]
    elevation_svg: str
    maker: str = ""
    finish: Finish = Finish()


def write_html(page: PreviewPage, glb: bytes) -> bytes:
    """The page as one UTF-8 file; the same input gives the same bytes.

    Args:
        page: words, sizes and survey of the job.
        glb: the model; the only geometry of the leaves that the page has.

    Raises:
        ValueError: page, model and drawing do not belong together.
    """
    _same_leaves(page, glb)
    _same_clear_way(page)
    script = _vendored("viewer/viewer.min.js")
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    slots = {
        "language": WORDS["language"],
        "allowed": _ALLOWED.format(f"sha256-{digest}"),
        "title": " · ".join(_text(t) for t in (page.job, page.subtitle) if t),
        "notice": _vendored("viewer/NOTICE.txt"),
        "fonts": _fonts(),
        "style": _vendored("viewer/viewer.min.css"),
        "finish": _colour(page.finish.colour),
        "drawing": _drawing(page.elevation_svg),
        "job": _text(page.job),
        "long": ' class="long"' if len(page.job) > _LONG else "",
        "under": _text(page.subtitle),
        "unit": _text(WORDS[f"unit {page.unit}"]),
        "facts": "".join(_fact(fact) for fact in page.facts),
        "in finish": _text(WORDS["finish"].format(page.finish.name)),
        "foot": _foot(page),
        "data": _data(page),
        "model": base64.b64encode(glb).decode(),
        "script": script,
    }
    words = {f"words.{key}": _text(word) for key, word in WORDS.items()}
    return _fill(_PAGE, slots | words).encode("utf-8", "xmlcharrefreplace")


def widest_clear_way(page: PreviewPage) -> float:
    """The widest stretch of the way that the leaves leave, over all ways of standing them, mm."""
    best = 0.0
    for moved in itertools.product(*((0.0, float(leaf.travel)) for leaf in page.leaves)):
        covers = sorted(
            (leaf.x + far, leaf.x + far + leaf.width)
            for leaf, far in zip(page.leaves, moved, strict=True)
        )
        edge, right = map(float, page.way)
        for start, end in (*covers, (right, right)):
            best = max(best, min(start, right) - edge)
            edge = max(edge, end)
    return best


def _same_clear_way(page: PreviewPage) -> None:
    found = widest_clear_way(page)
    if abs(found - page.clear_way) > 0.05:
        message = f"the page would show {found} clear, the job says {page.clear_way}"
        raise ValueError(message)


def _same_leaves(page: PreviewPage, glb: bytes) -> None:
    """The model's leaves are the page's: by name, and by how far they slide."""
    length = struct.unpack_from("<I", glb, 12)[0]
    nodes = json.loads(glb[20 : 20 + length]).get("nodes", [])
    found = {
        node["name"]: node["extras"]["travel"][1] * 1000
        for node in nodes
        if node.get("extras", {}).get("role") == "leaf"
    }
    wanted = {leaf.name: float(leaf.travel) for leaf in page.leaves}
    if found.keys() != wanted.keys() or any(
        abs(found[name] - travel) > 0.01 for name, travel in wanted.items()
    ):
        message = f"the model's leaves {found} are not the page's {wanted}"
        raise ValueError(message)


def _data(page: PreviewPage) -> str:
    leaves = [
        {
            "name": leaf.name,
            "label": leaf.label,
            "pull": None if leaf.pull is None else float(leaf.pull),
            **{
                key: float(getattr(leaf, key))
                for key in ("width", "height", "x", "foot", "front", "thickness", "travel")
            },
        }
        for leaf in page.leaves
    ]
    said = {
        "shut": WORDS["shut"],
        "clear": WORDS["clear"],
        "open_by": WORDS[f"open_by {page.unit}"],
        "waiting": WORDS["waiting"],
        "no_picture": WORDS["no picture"],
        "hint_touch": WORDS["hint touch"],
        "hint_mouse": WORDS["hint mouse"],
    }
    data: dict[str, Any] = {
        "unit": page.unit,
        "leaves": leaves,
        "opening": [[float(x), float(z)] for x, z in page.opening],
        "floor": [[float(x), float(z)] for x, z in page.floor],
        "wall": float(page.wall),
        "way": [float(x) for x in page.way],
        "top": float(page.top),
        "finish": {"colour": _colour(page.finish.colour), "rough": float(page.finish.rough)},
        "words": said,
    }
    # JSON knows these signs by number too, and no reader of HTML takes a number for a tag
    text = json.dumps(data, ensure_ascii=True, separators=(",", ":"))
    for sign in "<>&":
        text = text.replace(sign, f"\\u{ord(sign):04x}")
    return text


def _fact(fact: Fact) -> str:
    note = f'<dd class="note">{_figures(fact.note)}</dd>' if fact.note else ""
    return (
        f"<div><dt>{_figures(fact.label)}</dt>"
        f'<dd class="value">{_figures(fact.value)}</dd>{note}</div>\n'
    )


def _foot(page: PreviewPage) -> str:
    said = [
        WORDS["revision"].format(page.revision) if page.revision else "",
        WORDS["mark"].format(page.mark) if page.mark else "",
    ]
    said = [word for word in said if word]
    said[:1] = [word[0].upper() + word[1:] for word in said[:1]]
    first = " · ".join(f"<span>{_text(word)}</span>" for word in said)
    maker = _text(WORDS["maker"].format(page.maker)) if page.maker else ""
    lines = [first, f'<span class="maker">{maker}<br></span>' if maker else ""]
    made = f"<span>{_text(WORDS['made with'])}</span>"
    return f"{lines[0]}<br>{lines[1]}{made}" if first else f"{lines[1]}{made}"


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


def _colour(written: str) -> str:
    if not re.fullmatch("#[0-9a-fA-F]{6}", written):
        message = f"a colour is # and six hex digits, not {written!r}"
        raise ValueError(message)
    return written.lower()


def _text(text: str) -> str:
    return html.escape(text, quote=True)


def _figures(text: str) -> str:
    """Text with its fractions set as fractions."""
    return _FRACTION.sub(r'<span class="fraction">\g<0></span>', _text(text))


def _bytes(name: str) -> bytes:
    return _VENDOR.joinpath(*name.split("/")).read_bytes()


def _vendored(name: str) -> str:
    return _bytes(name).decode()


def _fill(page: str, slots: dict[str, str]) -> str:
    """Fill every {{slot}} once, so that nothing that was filled in is read again."""
    return re.sub(r"\{\{(.+?)\}\}", lambda found: slots[found[1]], page)


_PAGE = """\
<!doctype html>
<html lang="{{language}}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover">
<meta http-equiv="Content-Security-Policy" content="{{allowed}}">
<meta name="referrer" content="no-referrer">
<title>{{title}}</title>
<!--
{{notice}}-->
<style>{{fonts}}
{{style}}:root{--finish:{{finish}}}</style>
</head>
<body>
<div id="app">
<main id="picture">
<div id="drawing" role="img" aria-label="{{words.drawing}}">{{drawing}}</div>
<canvas id="canvas" tabindex="0" role="application" aria-label="{{words.canvas}}"></canvas>
<header id="title"><h1 dir="auto"{{long}}>{{job}}</h1><p dir="auto">{{under}}</p></header>
<p id="waiting"><noscript>{{words.no script}}</noscript></p>
<p id="hint" aria-hidden="true"></p>
</main>
<section id="strip" aria-label="{{words.strip}}">
<p class="say"><b id="state">{{words.shut}}</b><span>{{words.seen from above}}</span></p>
<div id="plan"><svg aria-hidden="true"></svg></div>
<p id="told" class="unseen" aria-live="polite"></p>
</section>
<aside id="side">
<div id="sizes">
<h2>{{words.sizes}} <small>{{unit}}</small></h2>
<dl>
{{facts}}</dl>
<p>{{in finish}}</p>
</div>
<footer id="foot">
<button id="sizes-button" type="button" aria-expanded="false" aria-controls="sizes">{{words.sizes}}</button>
<p>{{foot}}</p>
</footer>
</aside>
</div>
<script type="application/json" id="job">{{data}}</script>
<script type="application/octet-stream" id="model">{{model}}</script>
<script>{{script}}</script>
</body>
</html>
"""
