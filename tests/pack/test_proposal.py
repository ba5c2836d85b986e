"""The proposal says what the page says, in numbers.json's own numbers, and prints anywhere.

Pages are read with pdfplumber and rendered with pdfium, the code with zxing-cpp, the client's
page with the standard library. None of them knows what drew it.
"""

from __future__ import annotations

import io
import json
import re
import shutil
import subprocess
import tempfile
from collections import Counter
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pdfplumber
import pypdfium2
import pytest
import zxingcpp
from fontTools.ttLib import TTFont
from hypothesis import given, settings
from hypothesis import strategies as st
from pdfminer.pdftypes import resolve1
from PIL import Image, PngImagePlugin

from parametric.job import Built, check
from parametric.trade.printed import printed
from parametric.writers.page_words import WORDS
from tests.invariants.designs import bypass_designs, in_inches
from tests.pack.proposals import MARGIN, POINT, Page, proposal_of, proposed, read

BLUE = (0x23 / 255, 0x40 / 255, 0xB8 / 255)
"""Chalk-line blue: what is measured."""
DRAWN = (
    "floor gap left",
    "leaf height",
    "floor gap right",
    "head lap",
    "head height at the highest floor",
    "leaf A / width",
    "side lap",
    "largest width",
    "side lap",
    "cover",
    "clear way",
)
"""The figures of the drawing; with a pull its height too."""
PULL = "leaf B / pull / height above the floor"
SAID_BESIDE = ("your opening, at its widest", "over all")
LOOSE_FIGURES = (
    "leaf A / width",
    "leaf A / height",
    "leaf A / thickness",
    "clear way",
    "floor fall",
    "leaf A / panel / seasonal movement",
)
LOOSE_PERCENT = ("moisture made", "moisture driest", "moisture dampest")


class Told(HTMLParser):
    """What the client's page says: each row of its sizes in its pieces, and the ticks."""

    def __init__(self, data: bytes) -> None:
        super().__init__(convert_charrefs=True)
        self.facts: list[list[str]] = []
        self.ticks: list[str] = []
        self.tag = ""
        self.feed(data.decode())

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag == "li":
            self.tag = tag
            self.facts.append([""])
        elif tag in ("b", "small") and self.tag == "li":
            self.facts[-1].append("")
        elif tag == "label":
            self.tag = str(dict(attrs).get("class"))
            self.ticks += [""] if self.tag == "tick" else []

    def handle_endtag(self, tag: str) -> None:
        if tag in ("li", "label"):
            self.tag = ""

    def handle_data(self, data: str) -> None:
        if self.tag == "li":
            self.facts[-1][-1] += on_paper(data)
        elif self.tag == "tick":
            self.ticks[-1] += on_paper(data)


def on_paper(text: str) -> str:
    """The page's own fractions, `33 17⁄32″`, as they are read off a stacked one."""
    return text.replace("\u2009", "-").replace("\u2044", "/")


def pack(built: Built) -> Path:
    assert built.folder is not None
    return built.folder


@pytest.fixture(scope="module", params=["larch_hill", "larch_hill_inch"])
def made(request: pytest.FixtureRequest) -> Built:
    built = request.getfixturevalue(request.param)
    assert isinstance(built, Built)
    return built


@pytest.fixture(scope="module")
def pages(made: Built) -> list[Page]:
    return read((pack(made) / "client/proposal.pdf").read_bytes())


@pytest.mark.kernel
def test_it_says_what_the_page_says(made: Built, pages: list[Page]) -> None:
    """Facts with their values and notes, and the ticks, word for word and in the same order."""
    told = Told((pack(made) / "client/preview.html").read_bytes())
    assert len(told.facts) >= 8
    assert " ".join(piece for fact in told.facts for piece in fact) in pages[2].words
    assert len(told.ticks) >= 2
    assert " ".join(told.ticks) in pages[3].words
    for key in ("say it", "what", "superseded", "not yet"):
        assert WORDS[key] in pages[3].words
    boxes = [
        r
        for r in pages[3].raw.curves + pages[3].raw.rects
        if all(abs(r[side] - 4.2 * POINT) < 0.6 for side in ("width", "height"))
    ]
    assert len(boxes) == len(told.ticks)
    made_with = [page.words.count("Made with stilewright") for page in pages]
    assert made_with == [0, 0, 0, 1]


@pytest.mark.kernel
def test_every_number_is_a_figure_as_printed(made: Built, pages: list[Page]) -> None:
    """The drawing's against numbers.json by name; every other digit is one of the page's or named."""
    numbers = json.loads((pack(made) / "numbers.json").read_text(encoding="utf-8"))
    value = {figure["name"]: figure["value"] for figure in numbers["figures"]}
    assert made.job.resolved is not None
    said = printed(made.job.resolved)
    inch = said.unit == "inch"
    names = (*DRAWN, *((PULL,) if PULL in value else ()))
    wanted = Counter(said.wood(value[name]) for name in names)
    blue = Counter()
    for line in pages[1].lines:
        if line.colour == pytest.approx(BLUE, abs=1e-3):
            text = line.text
            for words in SAID_BESIDE:
                text = text.removesuffix(f" {words}")
            blue[text] += 1
    assert blue == wanted

    told = Told((pack(made) / "client/preview.html").read_bytes())
    known = {piece for fact in told.facts for piece in fact[1:]} | set(told.ticks)
    loose = {said.wood(value[n]) for n in LOOSE_FIGURES if n in value}
    loose |= {said.fine(value[n]) for n in LOOSE_FIGURES if n in value}
    loose |= {f"{value[n]:g}" for n in LOOSE_PERCENT}
    loose |= {said.fine(v) for n, v in value.items() if n.endswith("/ glass / nominal thickness")}
    loose |= {said.gauge(v) for n, v in value.items() if n.endswith("/ glass / thickness")}
    revision = made.job.resolved.design.revisions
    mark = f"{numbers['fingerprint'][:4]}-{numbers['fingerprint'][4:8]}".upper()
    for number, page in enumerate(pages, 1):
        text = " ".join(
            line.text for line in page.lines if line.colour != pytest.approx(BLUE, abs=1e-3)
        )
        allowed = [mark, f"{number} of 4", "1:20", *(one.date for one in revision), *known]
        for words in sorted(allowed, key=len, reverse=True):
            text = text.replace(words, "")
        found = set(re.findall(r"[0-9][0-9./-]*[0-9]|[0-9]", text))
        assert found <= loose, (number, found - loose)
        marked = re.findall(r"[0-9]″", text)
        assert inch or not marked
    assert any("/" in line.text for line in pages[0].lines) == inch


@pytest.mark.kernel
def test_paper_margins_fonts(made: Built, pages: list[Page]) -> None:
    """A4 (ISO 216) or letter; 18 mm white all round but for the picture; no font but ours, within."""
    inch = made.job.resolved is not None and made.job.resolved.design.unit == "inch"
    size = (215.9, 279.4) if inch else (210.0, 297.0)
    assert 2 <= len(pages) <= 4
    for number, page in enumerate(pages):
        assert (page.width, page.height) == pytest.approx(size, abs=1e-3)
        low = page.height * 0.6 if number == 0 else 0.0
        for thing in ink(page.raw):
            x0, x1, top, foot = (thing[k] / POINT for k in ("x0", "x1", "top", "bottom"))
            if number == 0 and foot <= low + 0.4:
                continue  # the picture fills the upper six tenths of the first page
            assert x0 >= MARGIN - 0.2, thing
            assert x1 <= page.width - MARGIN + 0.2, thing
            assert top >= MARGIN - 0.2, thing
            assert foot <= page.height - MARGIN + 0.2, thing
        for font in fonts(page.raw):
            assert font["FontDescriptor"].resolve()["FontFile2"]
            assert "Stilewright" in str(font["BaseFont"])


def ink(raw: Any) -> list[Any]:
    return [*raw.chars, *raw.lines, *raw.rects, *raw.curves, *raw.images]


def fonts(raw: Any) -> list[Any]:
    found = [ref.resolve() for ref in resolve1(raw.page_obj.resources["Font"]).values()]
    assert found
    return found


@pytest.mark.kernel
def test_it_prints_in_grey(pages: list[Page]) -> None:
    """Blue becomes a middle grey that is still read on white, and a size never hangs on colour.

    Luma by ITU-R BT.601 (0.299, 0.587, 0.114) and contrast by WCAG 2.2, both from memory: 4.5
    is what small text asks for. Every link of a chain begins and ends in an oblique stroke.
    """
    luma = 0.299 * BLUE[0] + 0.587 * BLUE[1] + 0.114 * BLUE[2]
    assert 0.2 < luma < 0.6
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in [luma] * 3]
    assert (
        1.05 / (sum(w * c for w, c in zip((0.2126, 0.7152, 0.0722), linear, strict=True)) + 0.05)
        > 4.5
    )
    page = pages[1].raw
    blue = [n for n in page.lines if n["stroking_color"] == pytest.approx(BLUE, abs=1e-3)]
    ticks = [n for n in blue if is_tick(n)]
    # A chain has one stroke more than links; each of the six or seven has one link at least.
    values = [n for n in pages[1].lines if n.colour == pytest.approx(BLUE, abs=1e-3)]
    assert len(ticks) >= len(values) + 6
    for tick in ticks:
        ends = [n for n in blue if n not in ticks and meets(n, tick)]
        assert ends, "a stroke stands on its dimension line"
    used = {tuple(n["stroking_color"]) for n in page.lines if n["stroking_color"]}
    assert all(max(c) - min(c) < 0.1 for c in used if c != pytest.approx(BLUE, abs=1e-3))


def is_tick(line: Any) -> bool:
    """Oblique at 45 degrees and 1.8 mm each way (ISO 129-1, from memory; the size is ours)."""
    wide, high = abs(line["x1"] - line["x0"]), abs(line["bottom"] - line["top"])
    return abs(wide - high) < 0.05 and abs(wide - 1.8 * POINT) < 0.3


def meets(line: Any, tick: Any) -> bool:
    x, y = (tick["x0"] + tick["x1"]) / 2, (tick["top"] + tick["bottom"]) / 2
    return (
        line["x0"] - 0.2 <= x <= line["x1"] + 0.2 and line["top"] - 0.2 <= y <= line["bottom"] + 0.2
    )


@pytest.mark.kernel
def test_the_code_says_what_stands_beneath_it(made: Built, pages: list[Page]) -> None:
    data = (pack(made) / "client/proposal.pdf").read_bytes()
    document = pypdfium2.PdfDocument(data)
    picture = document[3].render(scale=300 / 72).to_pil()
    document.close()
    (code,) = zxingcpp.read_barcodes(picture, formats=zxingcpp.BarcodeFormat.QRCode)
    assert made.job.resolved is not None
    assert code.text.startswith(made.job.resolved.job)
    assert f"The square says what stands here: {code.text.replace('  ', ', ')}." in pages[3].words


@pytest.mark.kernel
def test_it_is_a_sound_file_and_the_packs_own(made: Built) -> None:
    """The pack holds what the design alone gives; `qpdf --check` finds nothing, where it is present."""
    data = (pack(made) / "client/proposal.pdf").read_bytes()
    again = proposal_of(made.job)
    assert again.findings == ()
    assert again.file == data
    numbers = json.loads((pack(made) / "numbers.json").read_text(encoding="utf-8"))
    assert numbers["verification"]["proposal"] == {"pages": 4, "findings": []}
    if shutil.which("qpdf"):
        run = subprocess.run(
            ["qpdf", "--check", str(pack(made) / "client/proposal.pdf")],
            capture_output=True,
            check=False,
        )
        assert run.returncode == 0, run.stdout


LONG = "The long and winding reading room of the house that stands at the end of Larch Hill, " * 4
AWKWARD = {
    "quotes": 'O\'Brien & "Sons" <b>library</b> </svg> ](javascript:1) 100 %',
    "right to left": "قاعة القراءة",
    "mixed": "Larch \U0001f332\u200d\U0001f469 Hill \u202eroom\u202c שלום",
    "long": LONG.strip(),
    "one word": "Donaudampfschifffahrtsgesellschaftskapitänskajütentür" * 4,
}


@pytest.mark.parametrize("name", AWKWARD.values(), ids=AWKWARD)
def test_awkward_names(name: str, reading_room: Path, tmp_path: Path) -> None:
    """Nothing breaks, nothing is printed as an empty box, and what is left out is said to be."""
    quoted = "'" + name.replace("'", "''") + "'"
    text = reading_room.read_text(encoding="utf-8")
    text = text.replace("job: Larch Hill reading room", f"job: {quoted}", 1)
    text += f"\nclient: {{name: {quoted}, place: {quoted}}}\nmaker: {{name: {quoted}}}\n"
    path = tmp_path / "design.yaml"
    path.write_text(text, encoding="utf-8")
    made = proposed(path)
    assert made.findings == ()
    pages = read(made.file)
    fonts_dir = Path(__file__).parents[2] / "parametric/vendor/fonts"
    letters = set(TTFont(fonts_dir / "stilewright-regular.ttf").getBestCmap())
    everything = "".join(page.words for page in pages)
    assert {ord(letter) for letter in everything} <= letters
    lost = any(ord(letter) not in letters for letter in name)
    assert ("this paper has no type for its letters" in pages[0].words) == lost
    words = "".join(line.text for line in pages[0].lines)
    if not lost:
        head = name[:40]
        assert head.replace(" ", "") in words.replace(" ", "")
    elif name.isascii() or "Larch" in name:
        assert "Larch … Hill room …" in words
    else:
        assert re.search(r"Job [0-9A-F]{4}-[0-9A-F]{4}", words)


def test_a_picture_takes_the_upper_part_and_says_what_it_is(reading_room: Path) -> None:
    """The whole picture, edge to edge, in its own shape; its own words under it."""
    words = PngImagePlugin.PngInfo()
    words.add_text("Description", "From the sofa, one door half open, by day. Traced for a test.")
    stream = io.BytesIO()
    Image.new("RGB", (400, 300), "#98a48c").save(stream, "PNG", pnginfo=words)
    made = proposed(reading_room, stream.getvalue())
    assert made.findings == ()
    page = read(made.file)[0]
    (image,) = page.raw.images
    assert image["width"] / POINT == pytest.approx(210.0, abs=0.01)
    assert image["height"] / POINT == pytest.approx(157.5, abs=0.01)  # 210 x 300 / 400
    assert image["top"] == pytest.approx(0.0, abs=0.01)
    assert "Traced for a test." in page.words
    assert "Drawn from the front" not in page.words
    bare = io.BytesIO()
    Image.new("RGB", (400, 300)).save(bare, "PNG")
    said = read(proposed(reading_room, bare.getvalue()).file)[0].words
    assert "room, light and furniture are imagined" in said


@settings(max_examples=25)
@given(bypass_designs(), st.booleans())
def test_any_design_comes_out_clean(text: str, inch: bool) -> None:
    """No text on another or crossed by a line, nothing outside the margin, every length true."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "design.yaml")
        path.write_text(in_inches(text) if inch else text, encoding="utf-8")
        job = check(path, user_house=False)
    if job.exit_status:
        return
    made = proposal_of(job)
    assert made.findings == (), [str(finding) for finding in made.findings]
    with pdfplumber.open(io.BytesIO(made.file)) as file:
        assert len(file.pages) == made.pages


WORDS_OF_ALL = (
    "client:",
    "  name: Ada & Tom Firth",
    "  words: You asked for a wall that can be a room when it wants to be.",
    "  included: [delivery, hanging]",
    "  not included: [making good plaster]",
)


def told(reading_room: Path, folder: Path, *lines: str, name: str = "design.yaml") -> Path:
    path = folder / name
    text = reading_room.read_text(encoding="utf-8")
    path.write_text("\n".join((text, *lines, "")), encoding="utf-8")
    return path


def test_a_maker_speaks_in_their_own_words(reading_room: Path, tmp_path: Path) -> None:
    """Their paragraph on the first page, their lists on the third; none of it is what is signed."""
    path = told(reading_room, tmp_path, *WORDS_OF_ALL)
    made = proposed(path)
    assert made.findings == ()
    pages = read(made.file)
    assert "For Ada & Tom Firth" in pages[0].words
    assert "You asked for a wall that can be a room when it wants to be." in pages[0].words
    third = pages[2].words
    included, rest = third.split("Not included")
    assert "Delivery Hanging" in included
    assert "Making good plaster Not stated here" in rest
    assert "Who brings the doors" not in third
    plain = read(proposed(told(reading_room, tmp_path, name="plain.yaml")).file)
    assert pages[3].words == plain[3].words  # the mark too


@pytest.mark.parametrize("letter", [False, True])
def test_the_longest_words_there_may_be_find_room(
    letter: bool, reading_room: Path, tmp_path: Path
) -> None:
    """480 letters of words, five lines of 80 in each list; one letter more is refused on its line."""
    line = ("a line that says as much as one may say of it " * 2)[:80].strip().ljust(80, "x")
    words = ("words of a maker who has a good deal to say " * 11)[:480].strip().ljust(480, "x")
    many = ", ".join([line] * 5)
    lines = ["client:", f"  words: {words}", f"  included: [{many}]", f"  not included: [{many}]"]
    paper = ["shop: {bench paper: letter}"] if letter else []
    made = proposed(told(reading_room, tmp_path, *lines, *paper))
    assert made.findings == ()
    pages = read(made.file)
    assert "…" not in "".join(page.words for page in pages)
    assert pages[2].words.lower().count(line) == 10
    long = told(reading_room, tmp_path, "client:", f"  words: {words}x", name="long.yaml")
    (problem,) = check(long, user_house=False).problems
    assert (problem.level, problem.found, problem.allowed) == ("stop", "481 letters", "up to 480")
