"""Cut the fonts that every output is set in: three weights of one family.

The family's own digits are old-style and proportional, which a dimension cannot use. Here
the lining tabular digits are made the digits, so that a writer with no idea of font
features (a PDF, a drawing, a label) gets them. Run by hand when the source changes:

    cd web && npm ci && npm run fonts

Needs fonttools and brotli. The same input gives the same bytes.
"""

from __future__ import annotations

import sys
from pathlib import Path

from fontTools import subset
from fontTools.ttLib import TTFont

HERE = Path(__file__).resolve().parent
SOURCE = HERE / "node_modules" / "@expo-google-fonts" / "alegreya-sans"

FAMILY = "Stilewright"
WEIGHTS = (("Regular", "400Regular"), ("Medium", "500Medium"), ("Bold", "700Bold"))

DIGITS = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")

# Latin-1 and Latin Extended-A, for the names of people and places; the punctuation of a
# drawing: fractions, primes, minus, times, raised and lowered digits, arrows, squares.
LETTERS = (*range(0x20, 0x7F), *range(0xA0, 0x180), *range(0x218, 0x21C), 0x1E9E)
SIGNS = tuple(map(ord, "⅓⅔⅛⅜⅝⅞⁄−–—‘’‚“”„†•…′″√≈≤≥∅€№←↑→↓↔↕■□▲▼\u2009"))
RAISED_AND_LOWERED = (0x2070, *range(0x2074, 0x207A), *range(0x2080, 0x208A))
FEATURES = ("kern", "mark", "mkmk", "liga", "ccmp", "locl", "frac", "numr", "dnom")


def digits_lining_and_tabular(font: TTFont) -> None:
    """Make the lining tabular digits the digits, and let fractions start from them."""
    for table in font["cmap"].tables:
        if table.isUnicode():
            for code, name in enumerate(DIGITS, start=ord("0")):
                table.cmap[code] = f"{name}.tf"
    gsub = font["GSUB"].table
    lookups = {
        index
        for record in gsub.FeatureList.FeatureRecord
        if record.FeatureTag in ("frac", "numr", "dnom")
        for index in record.Feature.LookupListIndex
    }
    for index in sorted(lookups):
        for table in gsub.LookupList.Lookup[index].SubTable:
            substitution = getattr(table, "ExtSubTable", table)
            mapping = getattr(substitution, "mapping", {})
            for name in DIGITS:
                if name in mapping:
                    mapping[f"{name}.tf"] = mapping[name]


def rename(font: TTFont, weight: str) -> None:
    """Name the changed font as what it is; copyright, makers and licence stay as they are."""
    names = font["name"]
    own = names.getName(5, 3, 1, 0x409).toUnicode()
    plain = weight in ("Regular", "Bold")
    new = {
        1: FAMILY if plain else f"{FAMILY} {weight}",
        2: weight if plain else "Regular",
        3: f"stilewright;{FAMILY}-{weight}",
        4: f"{FAMILY} {weight}",
        5: f"{own}; Alegreya Sans {weight}, lining tabular digits, subset",
        6: f"{FAMILY}-{weight}",
    }
    if not plain:
        new |= {16: FAMILY, 17: weight}
    names.names = [n for n in names.names if n.nameID in (0, 8, 9, 11, 12, 13, 14)]
    for number, text in new.items():
        names.setName(text, number, 3, 1, 0x409)


def cut(source: Path, *, weight: str, web: bool) -> TTFont:
    """One weight, cut to the letters a job needs."""
    font = TTFont(source, recalcTimestamp=False)
    digits_lining_and_tabular(font)
    options = subset.Options()
    options.layout_features = list(FEATURES)
    options.name_IDs = ["*"]
    options.notdef_outline = True
    options.recalc_timestamp = False
    options.glyph_names = not web
    # screens of today place outlines without hints, and they are a third of the file
    options.hinting = not web
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=[*LETTERS, *SIGNS, *RAISED_AND_LOWERED])
    cutter.subset(font)
    rename(font, weight)
    return font


def main(target: Path) -> int:
    """Write the three weights twice: as TTF for paper, as WOFF2 for the page."""
    if not SOURCE.is_dir():
        sys.stderr.write(f"{SOURCE} is missing; run npm ci in {HERE} first\n")
        return 1
    target.mkdir(parents=True, exist_ok=True)
    for weight, folder in WEIGHTS:
        (source,) = (SOURCE / folder).glob("*.ttf")
        for web in (False, True):
            font = cut(source, weight=weight, web=web)
            font.flavor = "woff2" if web else None
            path = target / f"stilewright-{weight.lower()}.{'woff2' if web else 'ttf'}"
            font.save(path, reorderTables=True)
            sys.stdout.write(f"{path.name}  {path.stat().st_size}\n")
    return 0


if __name__ == "__main__":
    vendored = HERE.parent / "parametric" / "vendor" / "fonts"
    sys.exit(main(Path(sys.argv[1]) if len(sys.argv) > 1 else vendored))
