"""A real browser on a page from disk, with the network off and an ear to the console."""

from __future__ import annotations

import hashlib
import io
import shutil
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
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
DRAWING = {"flag": NO_WEBGL, "until": "drawing", "reduced_motion": "reduce"}
"""What needs no picture in the round is tried without: it opens at once."""
QUICK = {"reduced_motion": "reduce", "scale": 0.25}
"""Where nobody looks closely the picture is small, and things are where they go at once."""
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
            time.sleep(0.01)

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

AS_OPENED = """async () => {
  const $ = (id) => document.getElementById(id);
  const job = JSON.parse($('job').textContent);
  const tick = () => new Promise((done) => setTimeout(done));
  const pick = (input, on = true) => { if (input && input.checked !== on) input.click(); };
  if (!$('done').hidden) $('take-back').click();
  // what is ticked of an option that is not shown is kept until it is shown again
  const [first, ...others] = document.querySelectorAll('[name="option"]');
  for (const option of [...others, first]) {
    pick(option);
    for (const tick of document.querySelectorAll('[name="tick"]')) pick(tick, false);
  }
  $('who').value = '';
  $('who').dispatchEvent(new Event('input'));
  for (const pressed of document.querySelectorAll('#sizes [aria-pressed="true"]')) pressed.click();
  pick($('cut'), false);
  // to walk away and back forgets how one looked round
  pick(document.querySelector('[name="place"][value="sofa"]'));
  pick(document.querySelector('[name="place"][value="facing"]'));
  pick($('person'), matchMedia('(min-width: 900px)').matches);
  for (const [kind, key] of Object.entries(job.palette.chosen)) {
    pick(document.querySelector(`[name="${kind}"][value="${key}"]`));
  }
  for (const leaf of job.leaves) {
    const bar = document.querySelector(`[data-leaf="${leaf.name}"]`);
    // a leaf that slides to the left is shut where its slider ends
    const [{ slide }] = leaf.motion;
    bar.dispatchEvent(new KeyboardEvent('keydown', {key: slide && slide[0] < 0 ? 'End' : 'Home'}));
  }
  document.querySelector('[data-set="day"]').click();
  const open = document.querySelector('#tabs [aria-selected="true"]');
  if (matchMedia('(min-width: 900px)').matches) $('tab-sizes').click();
  else open?.click();
  document.activeElement.blur();
  scrollTo(0, 0);
  await tick();
}"""
"""Puts a page back as it was when it opened, by its own controls."""


def say_yes(seen: Seen, name: str = "Ada Fenn") -> None:
    """Tick, sign and say it; the button must not be had before."""
    seen.page.click("#tab-yes")
    say = seen.page.locator("#say")
    assert say.is_disabled()
    for tick in seen.page.locator('[name="tick"]').all():
        tick.check()
    assert say.is_disabled()
    assert seen.page.inner_text("#why")
    seen.page.fill("#who", name)
    say.click()


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


def _opened(
    browser: Browser,
    folder: Path,
    data: bytes,
    size: tuple[int, int],
    *,
    until: str = "round",
    blocked: bool = False,
    scale: float = 0.5,
    **options: object,
) -> Seen:
    path = folder / "preview.html"
    path.write_bytes(data)
    context = browser.new_context(
        viewport={"width": size[0], "height": size[1]},
        # a processor draws a quarter of the pixels four times as fast
        device_scale_factor=scale,
        offline=True,
        **options,
    )
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


@pytest.fixture
def open_page(browsers, tmp_path) -> Iterator[Opener]:
    """A page of the test's own, for whatever is about opening, or about one odd page."""
    opened = []

    def open_it(
        data: bytes,
        size: tuple[int, int] = (900, 700),
        *,
        flag: str = DRAWN_BY_PROCESSOR,
        **options: object,
    ) -> Seen:
        opened.append(_opened(browsers(flag), tmp_path, data, size, **options))
        return opened[-1]

    yield open_it
    for seen in opened:
        seen.page.context.close()


@pytest.fixture(scope="session")
def _shared_pages() -> dict[object, Seen]:
    return {}


@pytest.fixture
def page_at(browsers, tmp_path, _shared_pages) -> Opener:
    """A page that tests pass on, put back as it was when it opened: opening is what costs."""

    def at(
        data: bytes,
        size: tuple[int, int] = (900, 700),
        *,
        flag: str = DRAWN_BY_PROCESSOR,
        **options: object,
    ) -> Seen:
        key = (hashlib.sha256(data).digest(), size[0] < 900, flag, *sorted(options.items()))
        seen = _shared_pages.get(key)
        if seen is None:
            seen = _shared_pages[key] = _opened(browsers(flag), tmp_path, data, size, **options)
            return seen
        seen.page.set_viewport_size({"width": size[0], "height": size[1]})
        seen.page.evaluate(AS_OPENED)
        seen.wait("document.getElementById('state').textContent === 'Shut'")
        return seen

    return at
