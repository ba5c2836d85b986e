"""The client's page against the design: models, digests, numbers, and that it asks nobody anything.

Each option that it shows is held against that option's own numbers and parts.

Read with the parser of the standard library, not by what wrote it.
"""

from __future__ import annotations

import base64
import json
import re
from collections.abc import Mapping
from html.parser import HTMLParser

from parametric.pack.verifying.known import Known, Verdict
from parametric.pack.verifying.model_glb import check_glb

PAGE = "client/preview.html"
_LENGTH = re.compile(
    r"(?P<minus>\u2212)?(?P<whole>[0-9]+(?:\.[0-9]+)?(?![0-9\u2044]))?"
    r"\u2009?(?:(?P<top>[0-9]+)\u2044(?P<bottom>[0-9]+))?(?P<inch>\u2033)?"
)
_WEIGHT = re.compile(r"(?P<kg>[0-9]+\.[0-9]) kg")
_WEIGHT_STEP = 0.1
_INCH = 25.4
_SUMS = 1e-6


class _Page(HTMLParser):
    """What a page holds: each number by the name it stands under, its data, what it would load."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.numbers: list[tuple[str, str]] = []
        self.beside: dict[str, list[tuple[str, str]]] = {}
        self.texts: dict[str, str] = {}
        self.loads: list[str] = []
        self._script = ""
        self._figure: str | None = None
        self._depth = 0
        self._said = self.numbers

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note what would be fetched, and where a number begins."""
        found = dict(attrs)
        self.loads += [
            value
            for name in ("src", "href", "action")
            if (value := found.get(name)) is not None and not value.startswith("data:")
        ]
        if tag == "script":
            self._script = found.get("id") or "script"
        if tag == "template":
            self._said = self.beside.setdefault(found.get("data-option") or "", [])
        if self._figure is not None:
            self._depth += 1
        elif (figure := found.get("data-figure")) is not None:
            self._figure, self._depth = figure, 1
            self._said.append((figure, ""))

    def handle_endtag(self, tag: str) -> None:
        """A number ends with the element it stands in."""
        if tag == "script":
            self._script = ""
        if tag == "template":
            self._said = self.numbers
        if self._figure is not None:
            self._depth -= 1
            if not self._depth:
                self._figure = None

    def handle_data(self, data: str) -> None:
        """Text, into the number or the script it belongs to."""
        if self._script:
            self.texts[self._script] = self.texts.get(self._script, "") + data
        if self._figure is not None:
            name, text = self._said[-1]
            self._said[-1] = (name, text + data)


def check_page(files: Mapping[str, bytes], known: Known) -> Verdict:
    """Hold the page that the client opens against the pack's own model, fingerprint and numbers.

    Args:
        files: the files of the pack by their path.
        known: the design.
    """
    data = files.get(PAGE)
    if data is None:
        return Verdict(looked_at={}, faults=(f"{PAGE} is missing",))
    page = _Page()
    page.feed(data.decode("utf-8", "replace"))
    page.close()
    models = [glb for path, glb in files.items() if path.endswith(".glb")]
    inside = page.texts.get("model", "").strip().encode()
    held = [glb for glb in models if base64.b64encode(glb) == inside]
    faults = [] if held else [f"{PAGE}: does not hold the model of the pack"]
    faults += [f"{PAGE}: would load {what}" for what in page.loads]
    faults += _marks(page, known)
    faults += [fault for name, text in page.numbers if (fault := _wrong(name, text, known))]
    for other in known.beside:
        faults += _option(page, other)
    if extra := set(page.beside) - {other.option for other in known.beside}:
        faults.append(f"{PAGE}: shows options that the design does not have: {sorted(extra)}")
    numbers = sum(map(len, (page.numbers, *page.beside.values())))
    beside = {"options": 1 + len(known.beside)} if known.beside else {}
    return Verdict(
        looked_at={"models": len(held) + len(known.beside), "numbers": numbers, **beside},
        faults=tuple(faults),
    )


def _option(page: _Page, other: Known) -> list[str]:
    """What is wrong with another option on the page: its model, its mark, its numbers."""
    own = f"option {other.option}"
    try:
        glb = base64.b64decode(page.texts.get(f"model-{other.option}", ""), validate=True)
        faults = [f"{PAGE}: {own}: {fault}" for fault in check_glb(glb, other).faults]
    except ValueError as error:
        faults = [f"{PAGE}: {own}: its model cannot be read: {error}"]
    said = page.beside.get(other.option, [])
    if not said:
        faults.append(f"{PAGE}: {own}: says no numbers")
    faults += _marks(page, other, option=other.option)
    return faults + [
        f"{own}: {wrong}" for name, text in said if (wrong := _wrong(name, text, other))
    ]


def _marks(page: _Page, known: Known, *, option: str = "") -> list[str]:
    """The fingerprint that a yes would be said to, to the page's own doors or another option."""
    try:
        job = json.loads(page.texts.get("job", ""))
    except ValueError:
        return [f"{PAGE}: its data cannot be read"]
    if option:
        job = next((one for one in job.get("options", []) if one.get("option") == option), {})
    faults = []
    if job.get("mark") != known.mark:
        faults.append(f"{PAGE}: does not carry the fingerprint {known.mark}")
    if job.get("fingerprint") != known.fingerprint:
        faults.append(f"{PAGE}: its whole digest is not that of {known.mark}")
    return faults


def _wrong(name: str, text: str, known: Known) -> str:
    """What is wrong with a printed number; nothing when it is its figure's, as near as it prints."""
    figure = known.figures.get(name)
    if figure is None:
        return f"{PAGE}: {text} stands under {name!r}, and the design has no such number"
    if figure.unit == "kg":
        found = _WEIGHT.search(text)
        value, step = (float(found["kg"]), _WEIGHT_STEP) if found else (None, _WEIGHT_STEP)
    else:
        value = _mm(text)
        # a pane is printed to the finer step, and never up
        glass = any(p == "glass" or re.fullmatch(r"pane \d+", p) for p in name.split(" / "))
        step = 2 * known.mm(known.fine_step) if glass else known.mm(known.wood_step)
    if value is None:
        return f"{PAGE}: {text!r} under {name!r} cannot be read as a number"
    if abs(value - float(figure)) > step / 2 + _SUMS:
        return f"{PAGE}: {name} is {float(figure):.3f}, the page says {text}"
    return ""


def _mm(text: str) -> float | None:
    found = _LENGTH.fullmatch(text)
    if found is None or not (found["whole"] or found["top"]):
        return None
    value = float(found["whole"] or 0)
    if found["top"]:
        value += int(found["top"]) / int(found["bottom"])
    value *= _INCH if found["inch"] else 1.0
    return -value if found["minus"] else value
