"""The pictures of the examples, made anew from their packs: `make pictures`.

Needs poppler-utils and Chromium, as the tests do. A picture is of what the pack holds, so
it is never drawn over.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from playwright.sync_api import sync_playwright

_CHROMIUM = (
    *("--no-sandbox", "--enable-unsafe-swiftshader", "--disable-background-networking"),
    *("--disable-component-update", "--disable-sync", "--no-first-run"),
)


def pictures(example: Path, pack: Path) -> None:
    """The arrangement sheet and the client's page of one example.

    Args:
        example: the example's folder, where the pictures go.
        pack: its job pack.
    """
    sheet = ["pdftoppm", "-r", "100", "-png", "-gray", "-singlefile", "-f", "1", "-l", "1"]
    drawings = pack / "shop/drawings.pdf"
    subprocess.run([*sheet, str(drawings), str(example / "arrangement")], check=True)
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
