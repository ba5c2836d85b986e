"""The pictures of the examples, made anew from their packs with pictures: `make pictures`.

Needs poppler-utils and Chromium, as the tests do. A picture is of what the pack holds, so
it is never drawn over.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from PIL import Image
from playwright.sync_api import sync_playwright

_CHROMIUM = (
    *("--no-sandbox", "--enable-unsafe-swiftshader", "--disable-background-networking"),
    *("--disable-component-update", "--disable-sync", "--no-first-run"),
)


_SMALL = (800, 600)
_CLIENTS = {"2-half-open-day": "from-the-sofa", "4-evening": "evening"}


def pictures(example: Path, pack: Path) -> None:
    """The arrangement sheet, the client's page and two of the client's pictures of one example.

    Args:
        example: the example's folder, where the pictures go.
        pack: its job pack.
    """
    sheet = ["pdftoppm", "-r", "100", "-png", "-gray", "-singlefile", "-f", "1", "-l", "1"]
    drawings = pack / "shop/drawings.pdf"
    subprocess.run([*sheet, str(drawings), str(example / "arrangement")], check=True)
    for name, short in _CLIENTS.items():
        with Image.open(pack / f"client/pictures/{name}.png") as whole:
            small = whole.convert("RGB").resize(_SMALL, Image.Resampling.LANCZOS)
        small.save(example / f"{short}.jpg", quality=88)
    with sync_playwright() as browsers:
        browser = browsers.chromium.launch(executable_path="/usr/bin/chromium", args=_CHROMIUM)
        page = browser.new_page(viewport={"width": 1200, "height": 750})
        page.goto((pack / "client/preview.html").resolve().as_uri())
        page.wait_for_selector("html[data-picture=round]", state="attached", timeout=60_000)
        page.wait_for_timeout(8_000)
        page.screenshot(path=str(example / "preview.png"))
        browser.close()


if __name__ == "__main__":
    pictures(Path(sys.argv[1]), Path(sys.argv[2]))
