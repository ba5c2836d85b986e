"""Time and memory of a run of cases against their number, and how each grows. Nothing is asserted.

    python benchmarks/time_cases.py [COUNT ...]

For so many cases (5, 10, 20, 40 unless said), each in a process of its own: parts with their marks,
solids, clashes in every state, STEP and GLB, in seconds of the processor; and how much more memory
was held at the most than before. Each is fitted by a power of the number of cases, by least
squares of logarithms: 1 is as much longer as there is more. First a design file of
so many cabinets in one run, from reading it on; then cases made by hand, without cuts for pins or
hinges, all alike and with no two of one width. Then the client's page is opened, where there is
a browser, and walked round: draws of a frame, and how long one takes without a graphics card.
"""

from __future__ import annotations

import json
import math
import resource
import shutil
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

Result = TypeVar("Result")
ROOT = Path(__file__).resolve().parents[1]
COUNTS = (5, 10, 20, 40)
KINDS = {
    "designed": "a run of cabinets, from its design file",
    "alike": "cases made by hand, all alike",
    "unlike": "cases made by hand, no two of one width",
}
FIGURES = (
    "check s",
    "parts s",
    "solids s",
    "clashes s",
    "STEP s",
    "GLB s",
    "check MB",
    "solids MB",
)
"""What is fitted: processor time, and how much more memory was held at the most."""


def measure(count: int, kind: str) -> dict[str, float]:
    """All figures of so many cases, in this process."""
    sys.path.insert(0, str(ROOT))
    found: dict[str, float] = {}

    def timed(what: str, work: Callable[[], Result]) -> Result:
        start = time.process_time()
        result = work()
        found[f"{what} s"] = time.process_time() - start
        return result

    if kind == "designed":
        from tests.solids.designed_run import designed_run

        before = memory()
        job = timed("check", lambda: designed_run(count))
        assert job.assembly is not None, "it was checked when it was made"
        made = job.assembly
        found["check MB"] = memory() - before
    else:
        from tests.solids.run_of_cases import run_of_cases

        made = timed("parts", lambda: run_of_cases(count, unlike=kind == "unlike"))
    # the kernel is loaded here, so that none of it is counted before
    from parametric.solids.clash import clashes_in_all_states
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb
    from parametric.writers.step import write_step

    before = memory()
    solids = timed("solids", lambda: build_solids(made.parts))
    timed("clashes", lambda: clashes_in_all_states(made, solids))
    step = timed("STEP", lambda: write_step(made, solids))
    glb = timed("GLB", lambda: write_glb(made, solids))
    return found | {
        "solids MB": memory() - before,
        "parts": len(made.parts),
        "shapes": len(solids.shapes),
        "STEP kB": len(step) / 1000,
        "GLB kB": len(glb) / 1000,
    }


def memory() -> float:
    """The most memory that this process has held, MB (Linux counts it in kB)."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1000


def exponent(counts: tuple[int, ...], values: list[float]) -> float:
    """The power of the number of cases that fits best."""
    xs, ys = [math.log(n) for n in counts], [math.log(v) for v in values]
    x0, y0 = sum(xs) / len(xs), sum(ys) / len(ys)
    across = sum((x - x0) * (y - y0) for x, y in zip(xs, ys, strict=True))
    return across / sum((x - x0) ** 2 for x in xs)


def main(counts: tuple[int, ...]) -> None:
    """Run and print."""
    for kind, title in KINDS.items():
        print(title)
        rows = [_in_a_process(count, kind) for count in counts]
        names = [
            name for name in ("parts", "shapes", *FIGURES, "STEP kB", "GLB kB") if name in rows[0]
        ]
        print("cases".ljust(12) + "".join(f"{count:>9}" for count in counts) + "   power")
        for name in names:
            values = [row[name] for row in rows]
            shown = "".join(f"{v:9.2f}" if name in FIGURES else f"{v:9.0f}" for v in values)
            power = f"{exponent(counts, values):8.2f}" if min(values) > 0 else ""
            print(name.ljust(12) + shown + power)
    print("the client's page of each, walked round")
    for kind in ("designed", "alike"):
        for count in counts:
            print(f"{count:>12} {KINDS[kind]}: {_walked_round(count, kind)}")


def _in_a_process(count: int, kind: str) -> dict[str, float]:
    command = [sys.executable, __file__, "--one", str(count), kind]
    ran = subprocess.run(command, check=True, capture_output=True, text=True)
    return dict(json.loads(ran.stdout.splitlines()[-1]))


def _walked_round(count: int, kind: str) -> str:
    """Draws and triangles of one frame, shadows among them, and how long a frame takes, as
    tests/browser counts them.
    """
    sys.path.insert(0, str(ROOT))
    chromium = shutil.which("chromium")
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        return "playwright is not here"
    if chromium is None:
        return "there is no chromium"
    import tempfile

    from tests.browser.cases import cases_html
    from tests.browser.conftest import DRAWN_BY_PROCESSOR, QUIET
    from tests.browser.designed import designed_html
    from tests.browser.orbit import orbit

    with tempfile.TemporaryDirectory() as folder, sync_playwright() as driver:
        path = Path(folder) / "preview.html"
        path.write_bytes(designed_html(count) if kind == "designed" else cases_html(count))
        browser = driver.chromium.launch(
            executable_path=chromium, args=[*QUIET, DRAWN_BY_PROCESSOR]
        )
        page = browser.new_page(viewport={"width": 1000, "height": 760}, device_scale_factor=0.25)
        start = time.perf_counter()
        page.goto(path.as_uri(), wait_until="commit")
        while page.evaluate("document.documentElement.dataset.picture") != "round":
            time.sleep(0.01)
        seconds = time.perf_counter() - start
        walked = orbit(page, steps=12)
        browser.close()
        size = path.stat().st_size / 1000
    return (
        f"{walked.calls:4} draws {walked.triangles:7} triangles, {walked.frames} frames of "
        f"{walked.middle_ms:.0f} ms by the processor, page of {size:.0f} kB, first picture after "
        f"{seconds:.1f} s"
    )


if __name__ == "__main__":
    if "--one" in sys.argv:
        number, kind = sys.argv[2:]
        print(json.dumps(measure(int(number), kind)))
    else:
        main(tuple(int(word) for word in sys.argv[1:]) or COUNTS)
