"""Trying what the tool needs of a machine, one capability at a time."""

from __future__ import annotations

import importlib.resources
import sys
import tempfile
from collections.abc import Callable
from dataclasses import dataclass, replace
from importlib.metadata import version
from pathlib import Path

from parametric.writers.picture_words import GET_EXTRA


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """One capability: whether it works, what it said, how to get it; an extra may be missing."""

    what: str
    works: bool
    says: str
    fix: str
    extra: bool = False


def doctor() -> tuple[Trial, ...]:
    """Every trial, in the order a pack needs them; extras last."""
    needed = (
        ("Python", _python, "Install Python 3.11 or newer."),
        (
            "solids (CAD kernel)",
            _kernel,
            "pip install cadquery; on Debian or Ubuntu also: apt-get install libgl1",
        ),
        ("drawings (PDF)", _pdf, "pip install reportlab"),
        ("drawings and machine files (DXF)", _dxf, "pip install ezdxf"),
        ("cutting plans (solver)", _solver, "pip install highspy"),
        ("fonts and page viewer", _vendored, "Install stilewright again: files are missing."),
        ("writing in this folder", _writing, "Go to a folder you may write in, or use --out."),
    )
    extras = (
        (
            "client's pictures with traced light (without it `build --pictures` makes quick ones)",
            _traced_light,
            GET_EXTRA,
        ),
    )
    tried = [_try(what, trial, fix) for what, trial, fix in needed]
    tried += [replace(_try(what, trial, fix), extra=True) for what, trial, fix in extras]
    return tuple(tried)


def _try(what: str, trial: Callable[[], str], fix: str) -> Trial:
    try:
        return Trial(what=what, works=True, says=trial(), fix="")
    except Exception as error:
        # Whatever fails here is what the user came to hear about.
        return Trial(what=what, works=False, says=f"{type(error).__name__}: {error}", fix=fix)


def _python() -> str:
    return ".".join(str(n) for n in sys.version_info[:3])


def _kernel() -> str:
    from parametric.model import Blank, Making, Material, Part, Placement, Trim
    from parametric.solids.shape import part_solid, volume

    making = Making(by="saw")
    part = Part(
        name="trial",
        noun="trial",
        mark="",
        material=Material(name="trial", look="timber", density=0.0),
        blank=Blank(length=100.0, width=20.0, thickness=10.0),
        placement=Placement(),
        cuts=(Trim(name="trim", end="low end", length=10.0, making=making),),
    )
    return f"a trial piece of {volume(part_solid(part)):.0f} mm3"


def _pdf() -> str:
    import reportlab

    return f"reportlab {reportlab.Version}"


def _dxf() -> str:
    import ezdxf

    return f"ezdxf {ezdxf.__version__}"


def _solver() -> str:
    from parametric.trade.stock.programme import Column, solve

    # 5 pieces, 2 from each bar
    solved = solve([Column(cost=1.0, gives=(2,))], [5], [None], whole=True)
    assert solved.times == (3.0,)
    return f"highspy {version('highspy')}"


def _vendored() -> str:
    folder = importlib.resources.files("parametric") / "vendor"
    needed = ("fonts/stilewright-regular.ttf", "viewer/viewer.min.js")
    sizes = [len(folder.joinpath(name).read_bytes()) for name in needed]
    return f"{len(needed)} files, {sum(sizes)} bytes"


def _traced_light() -> str:
    import mitsuba
    import pyoidn

    mitsuba.set_variant("scalar_rgb")
    assert pyoidn.denoise
    return f"mitsuba {mitsuba.__version__}, pyoidn {version('pyoidn')}"


def _writing() -> str:
    with tempfile.TemporaryFile(dir=Path.cwd()):
        return str(Path.cwd())
