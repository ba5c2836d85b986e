"""Lettering: what a text measures in the one family that every sheet is set in.

Heights are heights of capitals, as a draughtsman gives them. A size of type follows
from the font's own cap height, and every width comes from the font that is printed.

Source: ISO 3098-1 (nominal heights 1.8, 2.5, 3.5, 5, 7 mm), from memory.
"""

from __future__ import annotations

import functools
import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

from fontTools.ttLib import TTFont

Weight = Literal["regular", "bold"]

CELL_LABEL = 1.8
TEXT = 2.5
TITLE = 3.5
BENCH = 5.0
PITCH = 1.7
"""Line to line, in heights of capitals."""
LEFT_OUT = "…"
"""What stands for letters that the type has not, and for what finds no room."""

_FONTS = Path(__file__).parent.parent / "vendor" / "fonts"


def font_file(weight: Weight) -> Path:
    """Where the font of a weight lies: the one place that knows."""
    return _FONTS / f"stilewright-{weight}.ttf"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Glyph:
    """Advance and ink of one letter, in ems."""

    advance: float
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Extent:
    """The ink of a line of text, mm: its width, how far it hangs below the line and stands above."""

    width: float
    below: float
    above: float


class _Font:
    """The measures of one font file, letter by letter."""

    def __init__(self, path: Path) -> None:
        self._font: Any = TTFont(path)
        self._units = float(self._font["head"].unitsPerEm)
        self._letters: dict[int, str] = self._font.getBestCmap()
        self.cap_height = float(self._font["OS/2"].sCapHeight) / self._units
        self._measured: dict[str, _Glyph] = {}

    def has(self, letter: str) -> bool:
        return ord(letter) in self._letters

    def glyph(self, letter: str) -> _Glyph:
        found = self._measured.get(letter)
        if found is None:
            name = self._letters.get(ord(letter), ".notdef")
            shape = self._font["glyf"][name]
            drawn = shape.numberOfContours != 0
            found = self._measured[letter] = _Glyph(
                advance=float(self._font["hmtx"][name][0]) / self._units,
                low=float(shape.yMin) / self._units if drawn else 0.0,
                high=float(shape.yMax) / self._units if drawn else 0.0,
            )
        return found


@functools.cache
def _font(weight: Weight) -> _Font:
    return _Font(font_file(weight))


def type_size(height: float, weight: Weight = "regular") -> float:
    """The em, mm, that gives capitals of a height."""
    return height / _font(weight).cap_height


@functools.lru_cache(maxsize=8192)
def extent(text: str, height: float, weight: Weight = "regular") -> Extent:
    """What a line of text takes up, mm.

    Args:
        text: one line.
        height: of its capitals, mm.
        weight: regular or bold.
    """
    font = _font(weight)
    em = type_size(height, weight)
    glyphs = [font.glyph(letter) for letter in text]
    return Extent(
        width=em * sum(g.advance for g in glyphs),
        below=em * max((-g.low for g in glyphs), default=0.0),
        above=em * max((g.high for g in glyphs), default=0.0),
    )


def width(text: str, height: float = TEXT, weight: Weight = "regular") -> float:
    """The width of a line of text, mm."""
    return extent(text, height, weight).width


def letters_missing(text: str, weight: Weight = "regular") -> str:
    """The letters of a text that the font cannot print, each once."""
    font = _font(weight)
    return "".join(dict.fromkeys(letter for letter in text if not font.has(letter)))


def printable(text: str) -> str:
    """A text in the letters that the type has; a run of others is one mark that says so.

    Marks that only steer the setting of other scripts go without a trace.
    """
    found: list[str] = []
    for letter in unicodedata.normalize("NFC", text):
        if unicodedata.category(letter) in ("Cf", "Mn", "Cc") and letters_missing(letter):
            found.append(" " if letter in "\n\t\r" else "")
        elif letter.isspace() or not letters_missing(letter):
            found.append(letter)
        else:
            found.append(LEFT_OUT)
    return re.sub(f"{LEFT_OUT}(?: ?{LEFT_OUT})+", LEFT_OUT, " ".join("".join(found).split()))


def is_printable(text: str) -> bool:
    """Whether nothing of a text is lost to the type."""
    return LEFT_OUT not in printable(text.replace(LEFT_OUT, ""))


def shortened(text: str, room: float, height: float = TEXT, weight: Weight = "regular") -> str:
    """As much of a text as fits, and that there is more."""
    if width(text, height, weight) <= room:
        return text
    while text and width(f"{text}{LEFT_OUT}", height, weight) > room:
        text = text[:-1]
    return f"{text.rstrip()}{LEFT_OUT}"


def _unbroken(text: str, room: float, height: float, weight: Weight) -> Iterator[str]:
    """What is not broken: words, and sizes that fit the room."""
    for size in re.split(r"(?<!×) (?!×)", " ".join(text.split())):
        if not size:
            continue
        if width(size, height, weight) <= room:
            yield size
        else:
            yield from size.split(" ")


def wrap(text: str, room: float, height: float = TEXT, weight: Weight = "regular") -> list[str]:
    """Break a text into lines that fit; a single word wider than the room stays whole.

    A size, `40 × 120`, stays on one line where it fits one.

    Args:
        text: words parted by spaces.
        room: mm.
        height: of its capitals, mm.
        weight: regular or bold.
    """
    lines: list[str] = []
    for word in _unbroken(text, room, height, weight):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width(longer, height, weight) <= room:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines
