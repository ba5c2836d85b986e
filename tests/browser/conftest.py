"""A real browser on a page from disk, with the network off and an ear to the console."""

from __future__ import annotations

import io
import shutil
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import numpy as np
import pytest
from numpy.typing import NDArray
from PIL import Image

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page, Playwright

CHROMIUM = shutil.which("chromium")
QUIET = (
    "--no-sandbox",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
)
DRAWN_BY_PROCESSOR = "--enable-unsafe-swiftshader"
NO_WEBGL = "--disable-3d-apis"
PATIENCE = 60.0  # seconds; a slow machine draws in software


@dataclass
class Seen:
    """One open page, what it asked for and what it complained of."""

    page: Page
    began: float
    requests: list[str] = field(default_factory=list)
    errors: list[str] = field(default_factory=list)

    def wait(self, expression: str) -> None:
        """Until an expression holds in the page; the page's own policy forbids polling there."""
        end = time.monotonic() + PATIENCE
        while not self.page.evaluate(expression):
            assert time.monotonic() < end, f"never came true: {expression}"
            time.sleep(0.03)

    def still(self) -> None:
        """Until nothing moves and the picture is finished."""
        self.wait("document.documentElement.hasAttribute('data-still')")

    def where(self, leaf: str) -> float:
        """The x of a leaf's node in the scene, mm."""
        return float(self.page.evaluate(f"stilewright.where({leaf!r})"))

    def clear(self) -> str:
        """What the strip says is clear, or that it is shut."""
        said = self.page.text_content("#state")
        return (self.page.text_content("#state em") if "Open" in said else said) or ""

    def pixels(self) -> NDArray[np.int16]:
        """The screen, rows by columns by red, green, blue."""
        shot = Image.open(io.BytesIO(self.page.screenshot())).convert("RGB")
        size = self.page.viewport_size
        assert size is not None
        shot = shot.resize((size["width"], size["height"]), Image.Resampling.NEAREST)
        return np.asarray(shot).astype(np.int16)


Opener = Callable[..., Seen]


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    sync_api = pytest.importorskip("playwright.sync_api")
    if CHROMIUM is None:
        pytest.skip("no chromium on this machine")
    with sync_api.sync_playwright() as driver:
        yield driver


@pytest.fixture(scope="session")
def browsers(playwright) -> Iterator[Callable[[str], Browser]]:
    open_ones: dict[str, Browser] = {}

    def browser(flag: str) -> Browser:
        if flag not in open_ones:
            open_ones[flag] = playwright.chromium.launch(
                executable_path=CHROMIUM, args=[*QUIET, flag]
            )
        return open_ones[flag]

    yield browser
    for one in open_ones.values():
        one.close()


@pytest.fixture
def open_page(browsers, tmp_path) -> Iterator[Opener]:
    contexts = []

    def open_it(
        data: bytes,
        size: tuple[int, int] = (900, 700),
        *,
        flag: str = DRAWN_BY_PROCESSOR,
        until: str = "round",
        blocked: bool = False,
        scale: float = 0.5,
        **options: object,
    ) -> Seen:
        path = tmp_path / "preview.html"
        path.write_bytes(data)
        context = browsers(flag).new_context(
            viewport={"width": size[0], "height": size[1]},
            # a processor draws a quarter of the pixels four times as fast
            device_scale_factor=scale,
            offline=True,
            **options,
        )
        contexts.append(context)
        seen = Seen(page=context.new_page(), began=time.monotonic())
        seen.page.on("request", lambda request: seen.requests.append(request.url))
        seen.page.on("pageerror", lambda error: seen.errors.append(str(error)))
        seen.page.on(
            "console",
            lambda line: seen.errors.append(line.text) if line.type == "error" else None,
        )
        if blocked:  # as a browser does that keeps nothing for pages from a disk
            seen.page.add_init_script(
                "Object.defineProperty(window, 'localStorage',"
                "{get() { throw new DOMException('no', 'SecurityError'); }});"
            )
        seen.page.goto(path.as_uri(), wait_until="commit")
        seen.wait(f"document.documentElement.dataset.picture === {until!r}")
        return seen

    yield open_it
    for context in contexts:
        context.close()
