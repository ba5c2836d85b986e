"""STEP and GLB of a design file, as one whole process: what the plain script is timed against.

python benchmarks/model_from_yaml.py DESIGN OUT_FOLDER
"""

from __future__ import annotations

import sys
from pathlib import Path

from parametric.job import check
from parametric.model import Assembly


def model_files(assembly: Assembly) -> tuple[bytes, bytes]:
    """Both files, every solid built anew."""
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb
    from parametric.writers.step import write_step

    solids = build_solids(assembly.parts)
    return write_step(assembly, solids), write_glb(assembly, solids)


def main(design: Path, out: Path) -> None:
    """From text to two files."""
    job = check(design, user_house=False)
    assert job.assembly is not None, job.problems
    step, glb = model_files(job.assembly)
    (out / "model.step").write_bytes(step)
    (out / "model.glb").write_bytes(glb)


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
