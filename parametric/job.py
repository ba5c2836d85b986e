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
from parametric.figures import Figure, Where
from parametric.model import Assembly
from parametric.names import match, nearest_name
from parametric.pack.approving import (
    Signature,
    no_letter,
    read_signed,
    read_state,
    record,
    unsound,
)
from parametric.pack.doctor import doctor
from parametric.pack.numbers import figure_record, figures, problem_record
from parametric.pack.verifying.known import Verified, known_design
from parametric.parts import make_parts
from parametric.problems import Problem, exit_status, in_order, stops
from parametric.resolve.door import Resolved, resolve
from parametric.rules.accepted import accept
from parametric.rules.checked import Checked
from parametric.rules.not_approved import not_approved
from parametric.rules.recorded import records_of_nothing
from parametric.trade.comparing import Changes, changes_lines, changes_record
from parametric.trade.comparing import compare as compare_inventories
from parametric.trade.cutlist import cut_list
from parametric.trade.explain import explain as explain_figure
from parametric.trade.explain import value_text
from parametric.trade.fingerprint import mark
from parametric.trade.glass import glass_order
from parametric.trade.inventory import Inventory, inventory
from parametric.trade.loads import LeafLoad, leaf_loads
from parametric.trade.tables import Table, cut_table, glass_table

__all__ = [
    "Approved",
    "Built",
    "Compared",
    "Explained",
    "Job",
    "approve",
    "build",
    "changes_lines",
    "changes_record",
    "check",
    "compare",
    "doctor",
    "explain",
    "figure_record",
    "lists",
    "mark",
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
    problems += records_of_nothing(
        loaded.design.records,
        (part.name for part in assembly.parts),
        figures(resolved, loads),
        Where(path.name, 1),
    )
    approved = loaded.design.records.approved
    if approved is not None:
        now = inventory(resolved, assembly, loads)
        problems += not_approved(approved, read_signed(path), now)
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Approved:
    """What was signed, and the files it was recorded in; none when something stood in the way."""

    fingerprint: str = ""
    files: tuple[Path, ...] = ()
    problems: tuple[Problem, ...] = ()


def approve(
    design: Path,
    *,
    revision: str,
    by: str,
    date: str,
    house: Path | None = None,
    user_house: bool = True,
) -> Approved:
    """Record that a design was signed as it is, and keep its figures beside it.

    Args:
        design: the design file.
        revision: the letter of the revision that was signed; the current one.
        by: who signed, in words.
        date: when, as 2026-11-20.
        house: as for `check`.
        user_house: as for `check`.
    """
    job = check(design, house=house, user_house=user_house)
    if job.resolved is None or job.assembly is None or stops(job.problems):
        return Approved(problems=stops(job.problems))
    signature = Signature(revision=revision, by=by, date=date)
    if wrong := unsound(signature, job.resolved.design):
        return Approved(problems=wrong)
    signed = inventory(job.resolved, job.assembly, job.loads)
    files, problems = record(design, signature, signed)
    return Approved(
        fingerprint=signed.fingerprint,
        files=files,
        problems=problems or no_letter(job.resolved.design),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """What moved between two states of a design; None when one of them cannot be read."""

    changes: Changes | None = None
    problems: tuple[Problem, ...] = ()


def compare(
    old: Path, new: Path, *, house: Path | None = None, user_house: bool = True
) -> Compared:
    """What moved between two designs, or since a design was approved.

    Args:
        old: a design file, or the figures that were kept when one was approved
            (`NAME.approved.json`).
        new: likewise.
        house: as for `check`.
        user_house: as for `check`.
    """
    states: list[Inventory] = []
    for path in (old, new):
        if path.suffix == ".json":
            state, problems = read_state(path)
        else:
            job = check(path, house=house, user_house=user_house)
            resolved, assembly, problems = job.resolved, job.assembly, stops(job.problems)
            state = (
                None
                if resolved is None or assembly is None
                else inventory(resolved, assembly, job.loads)
            )
        if state is None:
            return Compared(problems=problems)
        states.append(state)
    return Compared(changes=compare_inventories(*states))


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
    close = nearest_name(name, known)
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
