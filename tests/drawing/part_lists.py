"""A part's list of cuts read back from a printed page, by its text alone.

The reader knows the page's words and the frames of a blank (which face is which), and nothing
of how the page was drawn: it takes words with their places from pdfplumber, finds the row of
headings, and gives each word to the heading whose column it stands in.
"""

from __future__ import annotations

import io
import itertools
import math
import re
from collections.abc import Mapping
from dataclasses import dataclass

import pdfplumber

from parametric.model import (
    Cut,
    Edge,
    End,
    Face,
    Groove,
    Making,
    Mitre,
    Part,
    Pocket,
    RaisedBevel,
    RoundArrises,
    Slot,
    Tongue,
    Trim,
    face_size,
)
from parametric.pack.verifying.printed import lengths_in
from parametric.units import Unit

HEADS = (
    "No.",
    "Cut",
    "Into",
    "from",
    "to",
    "centre across",
    "width",
    "deep",
    "begins",
    "ends",
    "run in",
    "at the edge",
    "at the fillet",
    "angle",
    "thick",
    "long",
    "off the back",
    "round",
    "With",
    "When",
)
MADE = Making(by="bench")
MM = 25.4 / 72


@dataclass(frozen=True)
class Listed:
    """One list on a page: the mark in its heading, and its rows by their headings."""

    mark: str
    rows: tuple[Mapping[str, str], ...]


def lists_in(pdf: bytes, page: int) -> tuple[Listed, ...]:
    """Every list of cuts on one page."""
    with pdfplumber.open(io.BytesIO(pdf)) as file:
        own = file.pages[page]
        words = own.extract_words(
            keep_blank_chars=True, x_tolerance=2.2, y_tolerance=1.0, use_text_flow=False
        )
        rules = [
            (float(line["x0"]), float(line["x1"]), float(line["top"]))
            for line in own.lines
            if abs(line["top"] - line["bottom"]) < 0.1
        ]
    found = []
    for word in words:
        title = re.match(r"Every cut in (\w+)", word["text"])
        if title:
            found.append(_list(title[1], word, words, rules))
    return tuple(found)


def _list(mark: str, title: dict, words: list[dict], rules: list[tuple[float, float, float]]):  # type: ignore[no-untyped-def, type-arg]
    """From the heading down: rules of one length part the rows."""
    x0 = title["x0"]
    own = {r for r in rules if abs(r[0] - x0) < 1.0 and r[2] > title["bottom"] - 1}
    first = min(own, key=lambda r: r[2])
    width = first[1] - first[0]
    tops = sorted(r[2] for r in own if abs((r[1] - r[0]) - width) < 1.0)
    levels = [tops[0]]
    for top in tops[1:]:
        if top - levels[-1] > 18:
            break
        levels.append(top)

    def between(high: float, low: float) -> list[dict]:  # type: ignore[type-arg]
        return [
            w
            for w in words
            if high < (w["top"] + w["bottom"]) / 2 < low and x0 - 1 < w["x0"] < x0 + width + 1
        ]

    heads = sorted(between(levels[0], levels[1]), key=lambda w: w["x0"])
    assert [h["text"] for h in heads] == [h for h in HEADS if h in {w["text"] for w in heads}]
    left = {"Cut", "Into", "With", "When"}
    rows = []
    for high, low in itertools.pairwise(levels[1:]):
        row: dict[str, str] = {}
        for word in between(high, low):
            # A cell stands flush with its heading: left, right, or in the middle.
            head = min(
                heads,
                key=lambda h: (
                    abs(h["x0"] - word["x0"])
                    if h["text"] in left
                    else abs(h["x0"] + h["x1"] - word["x0"] - word["x1"]) / 2
                    if h["text"] == "No."
                    else abs(h["x1"] - word["x1"])
                ),
            )
            assert head["text"] not in row, (row, word["text"])
            row[head["text"]] = word["text"]
        rows.append(row)
    return Listed(mark=mark, rows=tuple(rows))


def cut_of(row: Mapping[str, str], part: Part, unit: Unit, others: list[Cut]) -> Cut:
    """A cut made anew from one row; `others` are those of the rows before it.

    Raises:
        KeyError: a cell that the cut needs is empty.
    """

    def mm(head: str) -> float:
        found = lengths_in(row[head], unit)
        # Where a decimal follows in brackets, it is the finer of the two.
        return found[-1]

    name, into = row["Cut"], row["Into"]
    face = face_called(into, part)
    foot = sum(float(c.length) for c in part.cuts if isinstance(c, Trim) and c.end == "low end")
    if "trim" in name:
        end: End = "low end" if face == "low end" else "high end"
        return Trim(name=name, end=end, length=mm("to") - mm("from"), making=MADE)
    if "mitre" in name:
        keeps: Edge = "low edge" if "frame stays long" in row["ends"] else "high edge"
        assert row["angle"] == "45°"
        assert mm("to") - mm("from") > 0
        return Mitre(
            name=name,
            end="low end" if face == "low end" else "high end",
            keeps=keeps,
            making=MADE,
        )
    if "bevel" in name:
        bevel = RaisedBevel(
            name=name,
            run=mm("run in"),
            edge=mm("at the edge"),
            foot=mm("at the fillet"),
            making=MADE,
        )
        leans = math.degrees(math.atan2(bevel.foot - bevel.edge, bevel.run))
        assert abs(float(row["angle"].rstrip("°")) - leans) < 0.25
        return bevel
    if "tongue" in name:
        before = next(c for c in others if isinstance(c, RaisedBevel))
        return Tongue(
            name=name,
            thickness=mm("thick"),
            length=mm("long"),
            back=mm("off the back"),
            edge=before.edge,
            slope=(before.foot - before.edge) / before.run,
            making=MADE,
        )
    if "rounded" in name:
        return RoundArrises(name=name, radius=mm("round"), making=MADE)
    assert face is not None, row
    ends = face in ("low end", "high end")
    shift = 0.0 if ends else foot
    low, high = mm("from") + shift, mm("to") + shift
    across = mm("centre across")
    if face in ("low edge", "high edge", "low end", "high end"):
        high_face = part.faces.get("low face") != "face"
        across = float(part.blank.thickness) - across if high_face else across
    trimmed = sum(float(c.length) for c in part.cuts if isinstance(c, Trim) and c.end == face)
    deep = mm("deep") + trimmed
    begins = (mm("begins") if "begins" in row else 0.0) + trimmed
    if "slot" in name:
        assert mm("ends") * 2 == mm("width") or unit == "inch"
        return Slot(
            name=name, face=face, u0=low, u1=high, v=across, width=mm("width"), depth=deep,
            making=MADE,
        )  # fmt: skip
    if "pull" in name:
        return Pocket(
            name=name, face=face, u=(low + high) / 2, v=across, length=high - low,
            width=mm("width"), depth=deep, surface=begins, making=MADE,
            corner=0.0 if row["ends"] == "square" else mm("ends"),
        )  # fmt: skip
    said = row["ends"]
    radius = mm("ends") if " " in said and any(map(str.isdigit, said)) else 0.0
    assert said == "open" or radius or "square" in said, said
    far = float(face_size(face, part.blank)[0])
    return Groove(
        name=name,
        face=face,
        u0=0.0 if said == "open" else low,
        u1=far if said == "open" else high,
        v=across,
        width=mm("width"),
        depth=deep,
        surface=begins,
        corner=0.0 if "saw" in said else radius,
        ramp=radius if "saw" in said else 0.0,
        squared="squared" in said,
        making=MADE,
    )


PLAIN: Mapping[str, Face] = {
    "left end": "low end",
    "right end": "high end",
    "lower edge": "low edge",
    "upper edge": "high edge",
    "back": "low face",
    "face": "high face",
}


def face_called(into: str, part: Part) -> Face | None:
    """The face of the blank that a word means; None for what is cut all round."""
    named = [face for face, word in part.faces.items() if word == into]
    return named[0] if named else PLAIN.get(into)
