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
from parametric.figures import Where
from parametric.model import Assembly
from parametric.pack.approving import read_revised, read_signed
from parametric.pack.numbers import figures
from parametric.parts import make_parts
from parametric.problems import Problem, exit_status, in_order, stops
from parametric.resolve.door import Resolved, resolve
from parametric.rules.accepted import accept
from parametric.rules.checked import Checked
from parametric.rules.not_approved import is_signed, moved_since, not_approved
from parametric.rules.recorded import records_of_nothing
from parametric.trade.comparing import Changes
from parametric.trade.inventory import inventory
from parametric.trade.loads import LeafLoad, leaf_loads


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """One design, as far as it could be taken; what is missing was stopped by a problem.

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
    approved, moved = loaded.design.records.approved, None
    revised: frozenset[str] = frozenset()
    if approved is not None:
        now, signed = inventory(resolved, assembly, loads), read_signed(path)
        problems += not_approved(approved, signed, now)
        moved = moved_since(approved, signed, now)
        if is_signed(approved, now.fingerprint):
            revised = read_revised(path)
    return Job(
        path=path,
        house=loaded.house_file,
        problems=in_order(problems),
        design=loaded.design,
        shop=loaded.shop,
        resolved=resolved,
        assembly=assembly,
        loads=loads,
        moved=moved,
        revised=revised,
    )


def build(
    path: Path,
    *,
    out: Path | None = None,
    house: Path | None = None,
    user_house: bool = True,
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
    from parametric.pack.pictures import drawn_quickly
    from parametric.pack.placing import may_place, place_pack
    from parametric.trade.file_names import slug

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
        moved=job.moved,
        revised=job.revised,
        not_for_making=bool(halted),
        usdz=usdz,
        use_cache=use_cache,
        pictured="fine" if fine else "yes" if pictures else "no",
        progress=say,
    )
    quick = drawn_quickly(fine=fine) if (pictures or fine) and not halted else ()
    say("putting the pack in place")
    placed = place_pack(folder, files, design=owner)
    return Built(
        job=job,
        folder=placed.folder if placed.written else None,
        files=placed.files,
        kept=placed.kept,
        problems=(*placed.problems, *quick) if placed.written else placed.problems,
    )


def _silent(step: str) -> None:
    """Progress for nobody."""
    del step
