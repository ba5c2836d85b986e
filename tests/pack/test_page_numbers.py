"""Every number that a client meets on the page is one of numbers.json, as it is printed.

The page is read with the standard library's parser, numbers.json as any program would read
it. A number is printed again from its value there and must be, letter for letter, what
stands on the page. Whatever else on the page holds a digit is listed here, by name and with
its reason; a digit that is in no list is a fault.
"""

from __future__ import annotations

import json
import math
import re
from collections import Counter
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest

from parametric.job import Built
from parametric.trade.printed import Printed, printed, weight
from parametric.units import long_inch_text, mm_text

pytestmark = pytest.mark.kernel

DIGIT = re.compile(r"[0-9½¼¾⅛⅜⅝⅞]")
NUMBER = re.compile(
    # a weight, else whole, point and fraction with its bar, and the inch mark
    r"[0-9.]+ lb \([0-9.]+ kg\)|[0-9.]+ kg|"
    r"[0-9½¼¾⅛⅜⅝⅞]+(?:\.[0-9]+)?(?:\u2009?[0-9]*\u2044[0-9]+)?″?"
)
SEEN = ("aria-label", "aria-valuetext", "alt", "placeholder", "title", "value")
"""Attributes that are shown, or said by a screen reader."""
VOID = ("br", "img", "input", "link", "meta", "hr")

DRAWN = {
    "head lap": (
        "floor gap left",
        "leaf height",
        "floor gap right",
        "head above the foot",
        "head lap",
        "head height at the highest floor",
    ),
    "head gap": (
        "floor gap left",
        "leaf height",
        "head gap",
        "floor gap right",
        "head above the foot",
        "head height at the highest floor",
    ),
}
"""The dimensions of the elevation that the page shows before the picture, and instead of it: of
doors that lap the wall over the head, and of those with a gap under it."""

NO_FIGURE: Mapping[str, Callable[[Built, Mapping[str, Any]], set[str]]] = {
    # The fingerprint is in numbers.json, but it is no size.
    "mark": lambda _, numbers: {
        f"{numbers['fingerprint'][:4]}-{numbers['fingerprint'][4:8]}".upper()
    },
    # The day a revision was made is a record of the design, not a figure.
    "revision date": lambda built, _: {revision.date for revision in revisions(built)},
    # The cut-out figure in the picture is 1.70 m whatever the doors are: scenery, to scale.
    "person": lambda _, __: {"1.70 m", "5′ 7″"},
}
"""What holds a digit and is no figure: what it is, and what it may say."""


def revisions(built: Built) -> Any:
    assert built.job.resolved is not None
    return built.job.resolved.design.revisions


@dataclass(frozen=True, kw_only=True)
class Heard:
    """A piece of text with a digit in it: where it stands, and the figure it stands under."""

    where: str
    text: str
    figure: str | None


class Page(HTMLParser):
    """What a person sees or hears of a page; a number may run over several elements."""

    def __init__(self, data: bytes) -> None:
        super().__init__(convert_charrefs=True)
        self.stack: list[tuple[str, dict[str, str | None]]] = []
        self.heard: list[Heard] = []
        self.figures: list[list[str]] = []  # name, and what has been read of it
        self.data = ""
        self.feed(data.decode())
        self.close()
        self.heard += [Heard(where="figure", text=text, figure=name) for name, text in self.figures]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        held = dict(attrs)
        for name in SEEN:
            if DIGIT.search(held.get(name) or "") and not (tag == "input" and name == "value"):
                drawn = "drawing" if self.within("svg") else f"{tag} {name}"
                self.heard.append(Heard(where=drawn, text=held[name] or "", figure=None))
        if tag not in VOID:
            self.stack.append((tag, held))
            if "data-figure" in held:
                self.figures.append([held["data-figure"] or "", ""])

    def handle_endtag(self, tag: str) -> None:
        while self.stack and self.stack.pop()[0] != tag:
            pass

    def handle_data(self, data: str) -> None:
        tags = [tag for tag, _ in self.stack]
        if "script" in tags and any(held.get("id") == "job" for _, held in self.stack):
            self.data += data
        if {"script", "style"} & set(tags):
            return
        if any("data-figure" in held for _, held in self.stack):
            self.figures[-1][1] += data
        elif DIGIT.search(data) and not self.lettered():
            where = "drawing" if self.within("svg") else tags[-1]
            self.heard.append(Heard(where=where, text=data.strip(), figure=None))

    def within(self, tag: str) -> bool:
        return any(held == tag for held, _ in self.stack)

    def lettered(self) -> bool:
        """Numerals of a fraction that is set in a drawing: its group says the whole of it."""
        return any(tag == "g" and "aria-label" in held for tag, held in self.stack)


def figure_text(figure: Mapping[str, Any], said: Printed) -> str:
    """A figure as the page prints it: wood and site to the step of wood, panes never up."""
    name, value, unit = figure["name"], figure["value"], figure["unit"]
    if unit == "kg":
        return weight(value, said.unit)
    if " / thickness" in name and (" / glass / " in name or " / pane " in name):
        # by callipers, beside what the glass is sold as
        text = f"{value / 25.4:.3f}" if said.unit == "inch" else mm_text(value, 0.01)
    elif " / glass / " in name or " / pane " in name:
        text = said.fine(value, down=not name.endswith("thickness"))
    else:
        text = said.wood(value)
    return text if said.unit == "mm" else f"{text}″".replace("/", "⁄").replace("-", "\u2009")


def drawn_text(value: float, said: Printed) -> str:
    """A figure as an arrangement prints it: in inches, feet over six feet."""
    if said.unit == "mm":
        return said.wood(value)
    return long_inch_text(value, said.shop.paper.wood_step("inch"))


def faults(data: bytes, built: Built) -> list[str]:
    """Every number of a page that is not accounted for."""
    assert built.job.resolved is not None
    assert built.folder is not None
    numbers = json.loads(Path(built.folder, "numbers.json").read_text(encoding="utf-8"))
    figures = {figure["name"]: figure for figure in numbers["figures"]}
    said = printed(built.job.resolved)
    page = Page(data)
    found = []
    for one in page.heard:
        if one.figure is None:
            continue
        if one.figure not in figures:
            found.append(f"{one.text} stands under {one.figure}, which is no figure")
        elif one.text != (wanted := figure_text(figures[one.figure], said)):
            found.append(f"{one.figure} is {wanted}, the page says {one.text}")
    drawn = Counter(one.text for one in page.heard if one.where == "drawing")
    names = DRAWN["head lap" if "head lap" in figures else "head gap"]
    wanted_drawn = Counter(drawn_text(figures[name]["value"], said) for name in names)
    found += [f"{text} is drawn and no figure" for text in drawn - wanted_drawn]
    found += [f"{text} is to be drawn and is not" for text in wanted_drawn - drawn]
    known = {text for allowed in NO_FIGURE.values() for text in allowed(built, numbers) if text}
    for one in page.heard:
        if one.figure is None and one.where != "drawing":
            found += loose(one.text, known, one.where)
    return found + in_the_data(json.loads(page.data), page, figures, known)


def loose(text: str, known: set[str], where: str, figures: Collection[str] = ()) -> list[str]:
    """The numbers of a text that are in nothing that is known and no figure's."""
    for words in sorted(known, key=len, reverse=True):
        text = text.replace(words, "")
    # the places of words that are filled in, such as {0}, are no numbers
    text = re.sub(r"\{[0-9]\}", "", text)
    left = set(NUMBER.findall(text)) - set(figures)
    return [f"{where}: {number} in {text!r} is no figure" for number in sorted(left)]


def in_the_data(
    data: Mapping[str, Any], page: Page, figures: Mapping[str, Any], known: set[str]
) -> list[str]:
    """Words that the script shows, and the sizes that it works its moving numbers out from."""
    printed_here = {one.text for one in page.heard if one.figure is not None}
    found = []
    for fact in data["facts"]:
        found += [
            f"{fact['label']}: {line['text']} is chalked and not said"
            for line in fact["chalk"]
            if line["text"] not in printed_here
        ]
        found += loose(fact["label"], known, "fact")
        found += loose(fact["value"], known, "fact", printed_here)
    for tick in data["ticks"]:
        found += loose(tick, known, "tick", printed_here)
    for key, word in (*data["words"].items(), *data["slip"]["words"].items()):
        found += loose(word, known, f"words, {key}")
    for leaf in data["leaves"]:
        name = leaf["name"]
        found += loose(leaf["label"], known, "label")
        value = {key: figure["value"] for key, figure in figures.items()}
        pulled = {
            "pull": value.get(f"{name} / pull / centre from the left edge"),
            "pull_up": value.get(f"{name} / pull / height above the floor"),
        }
        sums = {
            "width": value[f"{name} / width"],
            "height": value[f"{name} / height"],
            "thickness": value[f"{name} / thickness"],
            "x": value[f"{name} / left edge"],
            "foot": value["floor gap"],
            "front": -off_wall(name, value) - value[f"{name} / thickness"] / 2,
        }
        found += moved_otherwise(leaf, value)
        found += [
            f"{name}: {key} is {wanted}, the script is told {leaf[key]}"
            for key, wanted in sums.items()
            if not math.isclose(leaf[key], wanted, abs_tol=1e-9)
        ]
        found += [
            f"{name}: {key} is {wanted}, the script is told {leaf[key]}"
            for key, wanted in pulled.items()
            if leaf[key] != wanted
        ]
    # what the strip calls clear is worked out from this way and the leaves
    left, right = data["way"]
    width = "smallest width" if "side lap" in figures else "plumb clear width"
    if not math.isclose(right - left, figures[width]["value"], abs_tol=1e-9):
        found.append(f"the way is {right - left}, the {width} another")
    for paint in (
        p for kind in ("paints", "timbers", "glasses", "metals") for p in data["palette"][kind]
    ):
        found += loose(paint["name"], known, "finish")
    return found


def off_wall(name: str, value: Mapping[str, float]) -> float:
    """The middle of a leaf off the wall's face: of its track, or its own."""
    track = {"leaf A": "outer", "leaf B": "inner"}[name]
    own = f"{name} / middle off the wall face"
    return value[own] if own in value else value[f"{track} track off the wall"]


def moved_otherwise(leaf: Mapping[str, Any], value: Mapping[str, float]) -> list[str]:
    """What the script is told of how a leaf moves that is not so."""
    name = leaf["name"]
    (step,) = leaf["motion"]
    if "slide" in step:
        wanted = {"travel": (value[f"{name} / travel"], step["slide"][0])}
    else:
        pin = f"{name} / pin from the left of the opening"
        wanted = {
            "pin": (value[pin], step["point"][0]),
            "swing": (value[f"{name} / opens by"], abs(step["turn"])),
        }
    return [
        f"{name}: {key} is {right}, the script is told {told}"
        for key, (right, told) in wanted.items()
        if not math.isclose(right, told, abs_tol=1e-9)
    ]


@pytest.fixture(params=["larch_hill", "larch_hill_inch", "mill_lane"])
def built(request: pytest.FixtureRequest) -> Built:
    """Larch Hill, and its twin in inches; Mill Lane, whose doors swing."""
    made = request.getfixturevalue(request.param)
    assert isinstance(made, Built)
    return made


def page_of(built: Built) -> bytes:
    assert built.folder is not None
    return Path(built.folder, "client", "preview.html").read_bytes()


def test_every_number_is_accounted_for(built: Built) -> None:
    assert faults(page_of(built), built) == []


def test_there_is_enough_to_account_for(built: Built) -> None:
    """Nine facts, the thing said yes to, three ticks, six dimensions: some two dozen numbers."""
    heard = Page(page_of(built)).heard
    assert sum(one.figure is not None for one in heard) >= 22
    assert sum(one.where == "drawing" for one in heard) == 6


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        # half a millimetre in one fact
        (">1024.5<", ">1025<", "leaf A / width is 1024.5, the page says 1025"),
        # the number of another figure
        ('data-figure="side lap"', 'data-figure="head lap"', "head lap is 45, the page says 50"),
        ('data-figure="side lap"', 'data-figure="lap"', "50 stands under lap"),
        # a number in the words
        ("seen from above<", "seen from 3 m above<", "is no figure"),
        ("<title>", "<title>2 doors: ", "is no figure"),
        ('aria-label="The slip"', 'aria-label="The slip of 2026"', "is no figure"),
        # the drawing
        (">2057<", ">2058<", "2058 is drawn and no figure"),
        # what the script is told
        ('"slide":[904.5', '"slide":[904.6', "travel is 904.5, the script is told 904.6"),
        ('"text":"1824"', '"text":"1829"', "1829 is chalked and not said"),
        ("fingers can be caught between", "all 10 fingers can be caught between", "is no figure"),
    ],
)
def test_a_number_of_no_account_is_found(old: str, new: str, says: str, larch_hill: Built) -> None:
    data = page_of(larch_hill).decode()
    assert old in data, old
    found = faults(data.replace(old, new).encode(), larch_hill)
    assert any(says in fault for fault in found), found
