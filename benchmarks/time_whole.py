"""Timings of the whole tool on Larch Hill, printed as ratios in one run. Nothing is asserted.

    python benchmarks/time_whole.py [REPEATS]

1. `check` as a process, against a process that only imports pydantic and typer.
2. STEP and GLB from the design file as a process, against a plain script of the same leaves.
3. The same two inside one process, imports excluded.
4. The whole pack as a process, with an empty cache and with a warm one.
5. One machine file and one sheet in PDF, in process: all of the job over their number.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

HERE = Path(__file__).resolve().parent
DESIGN = HERE.parent / "examples/larch-hill-reading-room/design.yaml"


def seconds(work: Callable[[], object], repeats: int) -> float:
    """Median of several runs."""
    taken = []
    for _ in range(repeats):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    return statistics.median(taken)


def process(*arguments: str, cache: Path) -> Callable[[], object]:
    """A Python process with a cache folder of its own."""
    environment = {**os.environ, "XDG_CACHE_HOME": str(cache)}

    def run() -> object:
        return subprocess.run(
            [sys.executable, *arguments], check=True, capture_output=True, env=environment
        )

    return run


def row(what: str, ours: float, theirs: float | None, against: str) -> None:
    """One line: what, our seconds, and the ratio to something else."""
    ratio = "" if theirs is None else f"{ours / theirs:6.2f} x  {against} {theirs:.3f} s"
    print(f"{what:<44}{ours:8.3f} s  {ratio}")


def main(repeats: int) -> None:
    """Run and print."""
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder)
        cache = out / "cache"
        check = seconds(process("-c", _command("check", str(DESIGN)), cache=cache), repeats)
        bare = seconds(process("-c", "import pydantic, typer", cache=cache), repeats)
        row("check, whole process", check, bare, "import pydantic, typer")

        plain = process(str(HERE / "plain_script.py"), folder, cache=cache)
        model = process(str(HERE / "model_from_yaml.py"), str(DESIGN), folder, cache=cache)
        row(
            "STEP and GLB from YAML, whole process",
            seconds(model, repeats),
            seconds(plain, repeats),
            "plain script",
        )
        inside, by_hand = _in_process(out, repeats)
        row("STEP and GLB, in process, imports excluded", inside, by_hand, "plain script")

        _files_and_sheets(repeats)
        pack = _command("build", str(DESIGN), "--out", str(out / "pack"))
        cold = seconds(
            process("-c", pack.replace("'--out'", "'--no-cache', '--out'"), cache=cache), repeats
        )
        row("whole pack, solids built anew", cold, None, "")
        process("-c", pack, cache=cache)()
        row(
            "whole pack, solids from the cache",
            seconds(process("-c", pack, cache=cache), repeats),
            cold,
            "anew",
        )


def _files_and_sheets(repeats: int) -> None:
    """Seconds for each machine file, and for each sheet drawn and written as PDF."""
    from parametric.cnc.notes import Stamp
    from parametric.cnc.setups import set_ups
    from parametric.drawing import draw
    from parametric.job import check
    from parametric.pack.machine_pictures import machine_work
    from parametric.trade.paperwork import paperwork
    from parametric.trade.printed import printed
    from parametric.writers.dxf import write_cnc_dxf
    from parametric.writers.pdf import write_pdf

    job = check(DESIGN, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    resolved, assembly = job.resolved, job.assembly
    paper = paperwork(resolved, assembly, job.loads)
    stamp = Stamp(job=resolved.job, fingerprint="0123-4567", revision="A")
    cutters, layers = resolved.shop.router.cutters, resolved.shop.layers

    def files() -> list[bytes]:
        return [write_cnc_dxf(one, stamp) for one in set_ups(assembly, cutters, layers)]

    def sheets() -> int:
        work = machine_work(assembly, set_ups(assembly, cutters, layers), printed(resolved).fine)
        drawn = draw(
            resolved,
            assembly,
            job.loads,
            job.problems,
            mark="0123-4567",
            paper=paper,
            machine=work,
        )
        for own in drawn.sets:
            write_pdf(own.sheets)
        return len(drawn.sheets)

    count, pages = len(files()), sheets()
    row(f"a machine file, one of {count}", seconds(files, repeats) / count, None, "")
    row(f"a sheet as PDF, one of {pages}", seconds(sheets, repeats) / pages, None, "")


def _command(*words: str) -> str:
    """The command as a program of its own, its exit status swallowed."""
    return (
        f"import sys; sys.argv = {['stilewright', *words]!r}\nfrom parametric.cli import app\napp()"
    )


def _in_process(out: Path, repeats: int) -> tuple[float, float]:
    sys.path.insert(0, str(HERE))
    import model_from_yaml
    import plain_script

    plain_script.main(out)
    model_from_yaml.main(DESIGN, out)
    return (
        seconds(lambda: model_from_yaml.main(DESIGN, out), repeats),
        seconds(lambda: plain_script.main(out), repeats),
    )


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 5)
