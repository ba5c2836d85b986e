"""What was not written here is what it says it is, and can be made again from its source."""

from __future__ import annotations

import hashlib
import json
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

ROOT = Path(__file__).resolve().parents[2]
VENDOR = ROOT / "parametric" / "vendor"
WEB = ROOT / "web"
LISTED = json.loads((VENDOR / "vendor.json").read_text())["files"]
TTF = sorted((VENDOR / "fonts").glob("*.ttf"))
DIGITS = "0123456789"


@pytest.mark.parametrize("entry", LISTED, ids=lambda entry: entry["file"])
def test_a_vendored_file_has_its_digest_and_its_licence(entry):
    data = (VENDOR / entry["file"]).read_bytes()
    assert len(data) == entry["bytes"]
    assert hashlib.sha256(data).hexdigest() == entry["sha256"]
    assert len((ROOT / entry["licence_text"]).read_text()) > 500


def test_every_vendored_file_is_listed():
    there = {
        str(path.relative_to(VENDOR))
        for folder in ("fonts", "viewer")
        for path in (VENDOR / folder).rglob("*")
        if path.is_file()
    }
    assert there == {entry["file"] for entry in LISTED}


def test_versions_are_those_that_web_pins():
    pinned = json.loads((WEB / "package.json").read_text())
    wanted = pinned["dependencies"] | pinned["devDependencies"]
    assert {entry["version"] == wanted[entry["package"]] for entry in LISTED} == {True}
    assert all(version[0].isdigit() for version in wanted.values())


@pytest.mark.parametrize("path", TTF, ids=lambda path: path.stem)
def test_digits_are_tabular_and_lining(path):
    """Every digit as wide and as high as the next, nearly a capital's height, none below the line."""
    font = TTFont(path)
    cmap, widths, outlines = font.getBestCmap(), font["hmtx"], font["glyf"]
    digits = [outlines[cmap[ord(digit)]] for digit in DIGITS]
    assert {widths[cmap[ord(digit)]][0] for digit in DIGITS} == {475}  # of 1000: 0.475 em
    tops = [glyph.yMax for glyph in digits]
    assert max(tops) - min(tops) <= 15  # old-style digits differ by 200
    assert min(tops) > 0.9 * outlines[cmap[ord("H")]].yMax
    assert min(glyph.yMin for glyph in digits) >= -15  # round bottoms overshoot a little


@pytest.mark.parametrize("path", TTF, ids=lambda path: path.stem)
def test_fractions_start_from_the_digits_that_are_used(path):
    font = TTFont(path)
    cmap, gsub = font.getBestCmap(), font["GSUB"].table
    for feature in ("numr", "dnom"):
        (index,) = {
            i
            for record in gsub.FeatureList.FeatureRecord
            if record.FeatureTag == feature
            for i in record.Feature.LookupListIndex
        }
        (table,) = gsub.LookupList.Lookup[index].SubTable
        mapping = getattr(table, "ExtSubTable", table).mapping
        assert {cmap[ord(d)] for d in DIGITS} <= mapping.keys()


@pytest.mark.parametrize("path", TTF, ids=lambda path: path.stem)
def test_a_font_keeps_its_makers_and_its_licence(path):
    names = TTFont(path)["name"]
    owner = names.getDebugName(0)
    assert "Alegreya Sans Project Authors" in owner
    assert "Reserved Font Name" not in owner  # OFL 1.1, 3: none to keep clear of
    assert "SIL Open Font License, Version 1.1" in names.getDebugName(13)
    assert owner in (ROOT / "LICENSES" / "alegreya-sans.OFL-1.1.txt").read_text()


def test_the_letters_of_names_and_drawings_are_there():
    wanted = {ord(c) for c in "½¼¾⅛⅜⅝⅞⁄×–—°′″Ø−…←↑→↓ŁłŐőŽžÅåß"}
    for path in TTF:
        assert wanted <= TTFont(path).getBestCmap().keys()


def _skip_without(package: str) -> None:
    if not (WEB / "node_modules" / package).is_dir():
        pytest.skip(f"web/node_modules has no {package}; npm ci in web/ brings it")


def test_the_viewer_builds_again_to_the_same_bytes(tmp_path):
    if not shutil.which("node"):
        pytest.skip("no node")
    _skip_without("esbuild")
    _skip_without("three")
    subprocess.run(["node", "build.mjs", str(tmp_path)], cwd=WEB, check=True)
    built = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    committed = {path.name: path.read_bytes() for path in (VENDOR / "viewer").iterdir()}
    assert built.keys() == committed.keys()
    for name in built:
        assert built[name] == committed[name], f"{name} is not what web/src builds"


def test_the_fonts_cut_again_to_the_same_letters(tmp_path):
    """By outline and not by byte: another version of the cutter may pack them otherwise."""
    pytest.importorskip("brotli")
    _skip_without("@expo-google-fonts/alegreya-sans")
    subprocess.run(
        [sys.executable, "fonts.py", str(tmp_path)], cwd=WEB, check=True, capture_output=True
    )
    for path in sorted((VENDOR / "fonts").iterdir()):
        ours, again = TTFont(path), TTFont(tmp_path / path.name)
        assert ours.getBestCmap().keys() == again.getBestCmap().keys()
        assert ours["name"].getDebugName(4) == again["name"].getDebugName(4)
        for code, glyph in ours.getBestCmap().items():
            other = again.getBestCmap()[code]
            assert ours["hmtx"][glyph] == again["hmtx"][other]
            assert _outline(ours, glyph) == _outline(again, other)


def _outline(font: TTFont, glyph: str) -> list[tuple[int, int]]:
    coordinates, _, _ = font["glyf"][glyph].getCoordinates(font["glyf"])
    return list(coordinates)
