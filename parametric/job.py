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

import dataclasses
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from parametric import rules
from parametric.catalog.shop import Shop
from parametric.design import Design, Loaded, load_options
from parametric.design.records import ApprovedSpec
from parametric.figures import Where
from parametric.model import Assembly
from parametric.pack.approving import read_revised, read_signed
from parametric.pack.numbers import figures
from parametric.parts import make_parts
from parametric.problems import Problem, exit_status, in_order, stops
from parametric.resolve.door import Resolved, resolve
from parametric.rules.accepted import answered, cautions_of, nothing_to_accept
from parametric.rules.among_options import no_such_option, same_doors, told_together
from parametric.rules.checked import Checked
from parametric.rules.not_approved import is_signed, moved_since, not_approved
from parametric.rules.recorded import records_of_nothing
from parametric.trade.comparing import Changes
from parametric.trade.fingerprint import fingerprint
from parametric.trade.inventory import inventory
from parametric.trade.loads import LeafLoad, leaf_loads


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """One design, as far as it could be taken; what is missing was stopped by a problem.

    `letter` says which of the design's options this is, "A" for the design as it stands, and
    `others` are its other options. `problems` are those of all of them; `own` those of this
    one alone, as its sheets print them.

    `moved` is what changed since it was signed; None when nothing did, or it cannot be told.
    `revised` are the numbers that the signed revision moved, as long as it is what was signed.
    """

    path: Path
    house: str | None
    problems: tuple[Problem, ...]
    design: Design | None = None
    shop: Shop | None = None
    resolved: Resolved | None = None
    assembly: Assembly | None = None
    loads: tuple[LeafLoad, ...] = ()
    moved: Changes | None = None
    revised: frozenset[str] = frozenset()
    letter: str = "A"
    own: tuple[Problem, ...] = ()
    others: tuple[Job, ...] = ()

    @property
    def options(self) -> tuple[Job, ...]:
        """It and the others, in the order of their letters; itself alone without options."""
        return tuple(sorted((self, *self.others), key=lambda job: job.letter))

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


def check(
    path: Path, *, house: Path | None = None, user_house: bool = True, option: str | None = None
) -> Job:
    """Read, resolve and check a design: every number and every problem, in milliseconds.

    Every option of it is checked, whichever is asked for.

    Args:
        path: the design file.
        house: a house file to use in place of the one that would be found.
        user_house: whether the user's own house file may be found (never in tests).
        option: the letter of the option that is meant; when None, the one that was signed,
            else the design as it stands.
    """
    jobs = [
        _worked_out(path, loaded)
        for loaded in load_options(path, house=house, user_house=user_house)
    ]
    approved = next((job.design.records.approved for job in jobs if job.design), None)
    wanted = option if option is not None else _signed(jobs, approved)
    jobs = _with_records(path, jobs, wanted)
    chosen = next((job for job in jobs if job.letter == wanted), jobs[0])
    idle = _of_nothing(path, jobs, chosen)
    problems = (*told_together({job.letter: job.own for job in jobs}), *idle)
    named = {
        job.design.option: fingerprint(job.resolved, job.assembly)
        for job in jobs
        if job.design and job.design.option and job.resolved and job.assembly
    }
    problems += same_doors(named)
    # a file that cannot be read says so, and not that an option of it is missing
    if chosen.letter != wanted and chosen.design is not None:
        problems += (no_such_option(wanted, [job.letter for job in jobs], tuple(named)),)
    return dataclasses.replace(
        chosen,
        problems=in_order(problems),
        own=in_order((*chosen.own, *idle)),
        others=tuple(job for job in jobs if job is not chosen),
    )


def _signed(jobs: list[Job], approved: ApprovedSpec | None) -> str:
    """The option that was signed, as the record names it or else by its fingerprint."""
    if approved is None:
        return jobs[0].letter
    if approved.option is not None and any(job.letter == approved.option for job in jobs):
        return str(approved.option)
    return next(
        (
            job.letter
            for job in jobs
            if job.resolved
            and job.assembly
            and is_signed(approved, fingerprint(job.resolved, job.assembly))
        ),
        jobs[0].letter,
    )


def _worked_out(path: Path, loaded: Loaded) -> Job:
    """One way to make the job, resolved and checked; nothing of its records yet."""
    design, shop = loaded.design, loaded.shop
    job = Job(
        path=path,
        house=loaded.house_file,
        problems=(),
        own=in_order(loaded.problems),
        letter=loaded.letter,
    )
    if design is None or shop is None or stops(loaded.problems):
        return job
    resolved, found = resolve(design, shop)
    problems = (*loaded.problems, *found)
    job = dataclasses.replace(job, own=in_order(problems), design=design, shop=shop)
    if resolved is None:
        return job
    assembly = make_parts(resolved)
    loads = leaf_loads(resolved, assembly)
    problems += rules.check(Checked(resolved=resolved, assembly=assembly, loads=loads))
    return dataclasses.replace(
        job, own=in_order(problems), resolved=resolved, assembly=assembly, loads=loads
    )


def _with_records(path: Path, jobs: list[Job], wanted: str) -> list[Job]:
    """The jobs with what was accepted of each, and what moved since the one meant was signed."""
    made: list[Job] = []
    for job in jobs:
        if not job.design or not job.assembly:
            made.append(job)
            continue
        problems = answered(job.own, job.design.records.accepted)
        done = dataclasses.replace(job, own=in_order(problems))
        made.append(_held_to_signature(path, done) if job.letter == wanted else done)
    return made


def _of_nothing(path: Path, jobs: list[Job], chosen: Job) -> tuple[Problem, ...]:
    """Records that speak of nothing which any option has, once all of them are worked out."""
    if not chosen.design or not all(job.assembly for job in jobs):
        return ()
    known = set().union(*(cautions_of(job.own) for job in jobs))
    accepted = (r for r in chosen.design.records.accepted if r.caution not in known)
    unknown = [{p.found for p in _records_of_nothing(path, job)} for job in jobs]
    return (
        *nothing_to_accept(chosen.own, tuple(accepted)),
        *(
            problem
            for problem in _records_of_nothing(path, chosen)
            if all(problem.found in found for found in unknown)
        ),
    )


def _records_of_nothing(path: Path, job: Job) -> tuple[Problem, ...]:
    assert job.design is not None
    assert job.resolved is not None
    assert job.assembly is not None
    return records_of_nothing(
        job.design.records,
        (part.name for part in job.assembly.parts),
        figures(job.resolved, job.loads),
        Where(path.name, 1),
    )


def _held_to_signature(path: Path, job: Job) -> Job:
    """The job with what has moved since it was signed, if it was."""
    assert job.design is not None
    assert job.resolved is not None
    assert job.assembly is not None
    approved = job.design.records.approved
    if approved is None:
        return job
    now, signed = inventory(job.resolved, job.assembly, job.loads), read_signed(path)
    return dataclasses.replace(
        job,
        own=in_order((*job.own, *not_approved(approved, signed, now, job.design.option))),
        moved=moved_since(approved, signed, now),
        revised=read_revised(path) if is_signed(approved, now.fingerprint) else frozenset(),
    )


def build(
    path: Path,
    *,
    out: Path | None = None,
    house: Path | None = None,
    user_house: bool = True,
    option: str | None = None,
    with_stops: bool = False,
    usdz: bool = False,
    use_cache: bool = True,
    pictures: bool = False,
    fine: bool = False,
    progress: Callable[[str], None] | None = None,
) -> Built:
    """Check a design and write its job pack; nothing is written when it cannot be made.

    Args:
        path: the design file.
        out: the pack folder; `outputs/NAME` under the working folder when None.
        house: as for `check`.
        user_house: as for `check`.
        option: as for `check`; the client's page shows them all, whichever it is.
        with_stops: write shop drawings and model of a design with stops, marked NOT FOR
            MAKING; never for a zero or negative size, never machine files, orders or
            anything for the client.
        usdz: write the model as USDZ too, for a phone that stands it in a room.
        use_cache: keep built solids between runs.
        pictures: make the client's pictures too, half a minute each.
        fine: make them with many more rays, minutes each.
        progress: told each step as it begins.
    """
    from parametric.pack.contents import contents
    from parametric.pack.letters import left_out
    from parametric.pack.pictures import drawn_quickly
    from parametric.pack.placing import may_place, place_pack
    from parametric.pack.preview_options import Other
    from parametric.trade.file_names import slug

    say = progress or _silent
    job = check(path, house=house, user_house=user_house, option=option)
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
        job.own,
        others=tuple(
            Other(
                resolved=other.resolved,
                assembly=other.assembly,
                loads=other.loads,
                problems=other.own,
            )
            for other in job.others
            if other.resolved and other.assembly
        ),
        moved=job.moved,
        revised=job.revised,
        not_for_making=bool(halted),
        usdz=usdz,
        use_cache=use_cache,
        pictured="fine" if fine else "yes" if pictures else "no",
        progress=say,
    )
    quick = drawn_quickly(fine=fine) if (pictures or fine) and not halted else ()
    told = (*quick, *left_out(job.resolved))
    say("putting the pack in place")
    placed = place_pack(folder, files, design=owner)
    return Built(
        job=job,
        folder=placed.folder if placed.written else None,
        files=placed.files,
        kept=placed.kept,
        problems=(*placed.problems, *told) if placed.written else placed.problems,
    )


def _silent(step: str) -> None:
    """Progress for nobody."""
    del step
