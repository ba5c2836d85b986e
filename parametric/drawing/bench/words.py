"""The words that set-up sheets share: what runs, which spare goes first, what it is called."""

from __future__ import annotations

from parametric.drawing.bench.saying import Numbers, Said, listed, said
from parametric.drawing.bench.set_up import Row
from parametric.trade.milling import Run, Setting

MACHINE = {"saw": "Saw", "router": "Router", "bench": "By hand"}


def heading(setting: Setting) -> str:
    """The title of a setting's sheet."""
    return f"{MACHINE[setting.by]}: {setting.title}"


def run_words(run: Run) -> str:
    """`S1 × 2`, or `leaf A`."""
    return f"{run.mark} × {run.pieces}" if run.mark else run.noun


def pieces_row(say: Numbers, setting: Setting, *, spare: str = "test piece") -> Row:
    """What goes through, the cuts they take, and the size of the test piece that goes first."""
    parts: list[str] = [
        listed([run_words(run) for run in setting.runs]),
        said("{} cut" if int(setting.cuts) == 1 else "{} cuts", say.count(setting.cuts)),
    ]
    if int(setting.spares):
        parts.append(_first(say, setting, spare))
    return Row(head="Run", text=listed(parts, "; "))


def _first(say: Numbers, setting: Setting, spare: str) -> Said:
    """As thick as the job, as wide as it must be held, as long as the stops ask."""
    piece = setting.trial
    if piece is None:
        return said("{} {} first", say.count(setting.spares), spare)
    return said(
        "{} {} first, {} × {}, {} long",
        say.count(piece.number, setting.spares),
        spare if int(piece.number) == 1 else f"{spare}s",
        say.wood(piece.thickness),
        say.wood(piece.width),
        say.wood(piece.length),
    )


def faces_row(setting: Setting) -> Row:
    """Into which faces, mark by mark; runs that share a face are said together."""
    faces: dict[str, list[str]] = {}
    for run in setting.runs:
        faces.setdefault(run.face, []).append(run.mark or run.noun)
    return Row(
        head="Into",
        text="; ".join(f"{face}: {', '.join(own)}" for face, own in faces.items()),
    )


def deep(say: Numbers, setting: Setting, *, words: str = "deep") -> str:
    """The name of a depth, with its steps where there is more than one."""
    if setting.depth_passes is None:
        return words
    if int(setting.depth_passes) == 1:
        return said("{}, in {} step", words, say.count(setting.depth_passes))
    return said("{}, in {} steps", words, say.count(setting.depth_passes))


def when_words(setting: Setting, unit_words: str) -> str:
    """The line under the heading."""
    return f"{setting.when} · {setting.tool} · sizes in {unit_words}"
