"""READ THIS FIRST: the whole tool, from the text of a design file to a pack on disk.

    load       text -> Spec, Shop        design/
    resolve    Spec + Shop -> numbers    resolve/
    make_parts numbers -> Parts          parts/
    rules      all of it -> Problems     rules/
    contents   Parts -> files            pack/ (writers/, drawing/, cnc/, solids/)
    place_pack files -> the pack         pack/

`check` goes as far as the problems and never meets the CAD kernel; `build` goes on.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from parametric import rules
from parametric.catalog.shop import Shop
from parametric.design import Design, load
from parametric.design.schema import schema
from parametric.design.starters import new_design, new_house
from parametric.figures import Figure
from parametric.model import Assembly
from parametric.names import match, nearest
from parametric.pack.doctor import doctor
from parametric.pack.numbers import figure_record, figures, problem_record
from parametric.pack.verifying.known import Verified, known_design
from parametric.parts import make_parts
from parametric.problems import Problem, exit_status, in_order, stops
from parametric.resolve.door import Resolved, resolve
from parametric.rules.accepted import accept
from parametric.rules.checked import Checked
from parametric.trade.cutlist import cut_list
from parametric.trade.explain import explain as explain_figure
from parametric.trade.explain import value_text
from parametric.trade.glass import glass_order
from parametric.trade.loads import LeafLoad, leaf_loads
from parametric.trade.tables import Table, cut_table, glass_table

__all__ = [
    "Built",
    "Explained",
    "Job",
    "build",
    "check",
    "doctor",
    "explain",
    "figure_record",
    "lists",
    "new",
    "problem_record",
    "schema",
    "verify",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """One design, as far as it could be taken; what is missing was stopped by a problem."""

    path: Path
    house: str | None
    problems: tuple[Problem, ...]
    design: Design | None = None
    shop: Shop | None = None
    resolved: Resolved | None = None
    assembly: Assembly | None = None
    loads: tuple[LeafLoad, ...] = ()

    @property
    def exit_status(self) -> int:
        """2 unreadable, 1 cannot be made, 0 whole."""
        return exit_status(self.problems)


@dataclass(frozen=True, slots=True, kw_only=True)
class Built:
    """A job and the pack it was written to; `folder` is None when nothing was written."""

    job: Job
    folder: Path | None
    files: tuple[str, ...] = ()
    kept: tuple[Path, ...] = ()
    problems: tuple[Problem, ...] = ()

    @property
    def exit_status(self) -> int:
        """That of the problems of design and pack together."""
        return exit_status((*self.job.problems, *self.problems))


def check(path: Path, *, house: Path | None = None, user_house: bool = True) -> Job:
    """Read, resolve and check a design: every number and every problem, in milliseconds.

    Args:
        path: the design file.
        house: a house file to use in place of the one that would be found.
        user_house: whether the user's own house file may be found (never in tests).
    """
    loaded = load(path, house=house, user_house=user_house)
    job = Job(path=path, house=loaded.house_file, problems=in_order(loaded.problems))
    if loaded.design is None or loaded.shop is None or stops(loaded.problems):
        return job
    resolved, found = resolve(loaded.design, loaded.shop)
    problems = (*loaded.problems, *found)
    if resolved is None:
        return Job(
            path=path,
            house=loaded.house_file,
            problems=in_order(problems),
            design=loaded.design,
            shop=loaded.shop,
        )
    assembly = make_parts(resolved)
    loads = leaf_loads(resolved, assembly)
    problems += rules.check(Checked(resolved=resolved, assembly=assembly, loads=loads))
    problems = accept(problems, loaded.design.records.accepted)
    return Job(
        path=path,
        house=loaded.house_file,
        problems=in_order(problems),
        design=loaded.design,
        shop=loaded.shop,
        resolved=resolved,
        assembly=assembly,
        loads=loads,
    )


def build(
    path: Path,
    *,
    out: Path | None = None,
    house: Path | None = None,
    user_house: bool = True,
    with_stops: bool = False,
    use_cache: bool = True,
    progress: Callable[[str], None] | None = None,
) -> Built:
    """Check a design and write its job pack; nothing is written when it cannot be made.

    Args:
        path: the design file.
        out: the pack folder; `outputs/NAME` under the working folder when None.
        house: as for `check`.
        user_house: as for `check`.
        with_stops: write shop drawings and model of a design with stops, marked NOT FOR
            MAKING; never for a zero or negative size, never machine files, orders or
            anything for the client.
        use_cache: keep built solids between runs.
        progress: told each step as it begins.
    """
    from parametric.pack.contents import contents
    from parametric.pack.placing import may_place, place_pack
    from parametric.pack.slug import slug

    say = progress or _silent
    job = check(path, house=house, user_house=user_house)
    halted = stops(job.problems)
    if job.resolved is None or job.assembly is None:
        return Built(job=job, folder=None)
    if halted and (not with_stops or any(p.no_size or p.unreadable for p in halted)):
        return Built(job=job, folder=None)
    folder = out if out is not None else Path("outputs") / slug(job.resolved.job)
    # The folder a design stands in tells two of one file name apart, on any machine.
    owner = f"{job.resolved.job}, {path.resolve().parent.name}/{path.name}"
    in_the_way = may_place(folder, design=owner)
    if stops(in_the_way):
        return Built(job=job, folder=None, problems=in_the_way)
    files = contents(
        job.resolved,
        job.assembly,
        job.loads,
        job.problems,
        not_for_making=bool(halted),
        use_cache=use_cache,
        progress=say,
    )
    say("putting the pack in place")
    placed = place_pack(folder, files, design=owner)
    return Built(
        job=job,
        folder=placed.folder if placed.written else None,
        files=placed.files,
        kept=placed.kept,
        problems=placed.problems,
    )


def verify(
    pack: Path, design: Path, *, house: Path | None = None, user_house: bool = True
) -> Verified:
    """Read the files of a pack back and hold them against a design, by other code than wrote them.

    Args:
        pack: the pack's folder.
        design: the design file.
        house: as for `check`.
        user_house: as for `check`.
    """
    from parametric.pack.verifying.folder import verify_folder

    job = check(design, house=house, user_house=user_house)
    if job.resolved is None or job.assembly is None or stops(job.problems):
        return Verified(problems=stops(job.problems))
    return verify_folder(pack, known_design(job.resolved, job.assembly, job.loads))


def _silent(step: str) -> None:
    """Progress for nobody."""
    del step


@dataclass(frozen=True, slots=True, kw_only=True)
class Explained:
    """The figures that were asked about, and their arithmetic in lines of text."""

    figures: tuple[Figure, ...]
    lines: tuple[str, ...]
    problems: tuple[Problem, ...] = ()


def explain(
    path: Path, name: str | None, *, house: Path | None = None, user_house: bool = True
) -> Explained:
    """The arithmetic of one number by its name or any short form of it; all numbers without one."""
    job = check(path, house=house, user_house=user_house)
    if job.resolved is None:
        return Explained(figures=(), lines=(), problems=job.problems)
    known = figures(job.resolved, job.loads)
    unit = job.resolved.design.unit
    if name is None:
        everything = tuple(known.values())
        return Explained(
            figures=everything,
            lines=tuple(f"{f.name} = {value_text(f, unit)}" for f in everything),
        )
    hits = match(name, known)
    if len(hits) == 1:
        figure = known[hits[0]]
        return Explained(figures=(figure,), lines=explain_figure(figure, unit))
    close = nearest(name, known)
    message = (
        f'"{name}" may mean {", ".join(hits[:6])}{" ..." if len(hits) > 6 else ""}. Say which.'
        if hits
        else f'No number is called "{name}".' + (f' Did you mean "{close}"?' if close else "")
    )
    return Explained(
        figures=(),
        lines=(),
        problems=(
            Problem(
                code="unknown_name",
                level="stop",
                message=message,
                found=name,
                allowed="a name that `stilewright explain DESIGN` lists",
                fix="Leave the name out to see all of them.",
                unreadable=True,
            ),
        ),
    )


def lists(job: Job) -> dict[str, Table]:
    """The cut list and the glass order of a checked job, by title."""
    assert job.resolved is not None
    assert job.assembly is not None
    unit, shop = job.resolved.design.unit, job.resolved.shop
    return {
        "Cut list": cut_table(cut_list(job.assembly), unit, shop),
        "Glass": glass_table(glass_order(job.resolved, job.assembly), unit, shop),
    }


def new(path: Path, *, kind: str = "bypass", house: bool = False) -> tuple[Problem, ...]:
    """Copy a starter to a path where nothing stands yet."""
    return new_house(path) if house else new_design(kind, path)
