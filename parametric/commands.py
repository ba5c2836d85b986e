"""What each command does beyond `check` and `build`: explain, lists, compare, approve, verify, new."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from parametric.design.schema import schema
from parametric.design.starters import kinds as starters
from parametric.design.starters import new_design, new_house, said_twice
from parametric.figures import Figure
from parametric.job import Built, Job, build, check
from parametric.names import match, nearest_name
from parametric.pack.approving import (
    Signature,
    no_letter,
    other_option_signed,
    read_state,
    record,
    unsound,
    which_option,
)
from parametric.pack.doctor import doctor
from parametric.pack.numbers import figure_record, figures, problem_record
from parametric.pack.slips import Slip, file_slip, held_against, not_as_quoted, read_slip
from parametric.pack.verifying.known import Verified, known_design
from parametric.problems import Problem, stops
from parametric.trade.comparing import Changes, changes_lines, changes_record
from parametric.trade.comparing import compare as compare_inventories
from parametric.trade.cutlist import cut_list
from parametric.trade.explain import explain as explain_figure
from parametric.trade.explain import value_text
from parametric.trade.fingerprint import fingerprint, mark
from parametric.trade.glass import glass_order
from parametric.trade.inventory import Inventory, inventory
from parametric.trade.paperwork import paperwork
from parametric.trade.tables import Table, cut_table, glass_table

__all__ = [
    "Approved",
    "Built",
    "Compared",
    "Explained",
    "Job",
    "Received",
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
    "receive",
    "schema",
    "starters",
    "verify",
]


def verify(
    pack: Path,
    design: Path,
    *,
    house: Path | None = None,
    user_house: bool = True,
    option: str | None = None,
) -> Verified:
    """Read the files of a pack back and hold them against a design, by other code than wrote them.

    A design with stops has a pack of drawings and model, marked, and nothing to make from;
    its pack is held against that, and the stops are said again.

    Args:
        pack: the pack's folder.
        design: the design file.
        house: as for `check`.
        user_house: as for `check`.
        option: the letter of the option that the pack is of; when None, as the pack says.
    """
    from parametric.pack.verifying.folder import option_of, verify_folder

    said = option if option is not None else option_of(pack)
    job = check(design, house=house, user_house=user_house, option=said)
    halted = stops(job.problems)
    never_built = any(p.no_size or p.unreadable for p in halted)
    if job.resolved is None or job.assembly is None or never_built:
        return Verified(problems=halted)
    known = known_design(job.resolved, job.assembly, job.loads, not_for_making=bool(halted))
    if not halted:
        beside = tuple(
            known_design(other.resolved, other.assembly, other.loads)
            for other in job.others
            if other.resolved and other.assembly
        )
        known = replace(known, beside=beside)
    verified = verify_folder(pack, known)
    return replace(verified, problems=(*halted, *verified.problems))


@dataclass(frozen=True, slots=True, kw_only=True)
class Approved:
    """What was signed, and the files it was recorded in; none when something stood in the way."""

    fingerprint: str = ""
    option: str = ""
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
    option: str | None = None,
) -> Approved:
    """Record that a design was signed as it is, and keep its figures beside it.

    Args:
        design: the design file.
        revision: the letter of the revision that was signed; the current one.
        by: who signed, in words.
        date: when, as 2026-11-20.
        house: as for `check`.
        user_house: as for `check`.
        option: the letter of the option that was signed; it must be said where there are some.
    """
    job = check(design, house=house, user_house=user_house, option=option)
    if job.resolved is None or job.assembly is None or stops(job.problems):
        return Approved(problems=stops(job.problems))
    letters = tuple(one.letter for one in job.options) if job.others else ()
    own = job.letter if letters else ""
    signature = Signature(revision=revision, by=by, date=date, option=own)
    wrong = which_option(option, letters) or unsound(signature, job.resolved.design)
    if wrong:
        return Approved(problems=wrong)
    before = other_option_signed(job.resolved.design.records.approved, revision, own)
    signed = inventory(job.resolved, job.assembly, job.loads)
    files, problems = record(design, signature, signed)
    return Approved(
        fingerprint=signed.fingerprint,
        option=own,
        files=files,
        problems=problems or (*before, *no_letter(job.resolved.design)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Received:
    """A client's slip read back: who said yes to what, the files it went into."""

    name: str = ""
    date: str = ""
    revision: str = ""
    option: str = ""
    fingerprint: str = ""
    files: tuple[Path, ...] = ()
    approved: bool = False
    problems: tuple[Problem, ...] = ()


def receive(
    slip: Path, design: Path, *, house: Path | None = None, user_house: bool = True
) -> Received:
    """Read a client's slip, hold it against the design, file it and record the approval.

    The slip's own fingerprint says which of the design's options it is for.

    Args:
        slip: the file that the client's page saved, or the text of the message it came in.
        design: the design file.
        house: as for `check`.
        user_house: as for `check`.
    """
    read, problems = read_slip(slip)
    if read is None:
        return Received(problems=problems)
    job = check(design, house=house, user_house=user_house)
    if job.resolved is None or job.assembly is None or stops(job.problems):
        return Received(problems=stops(job.problems))
    job = _meant(job, read.slip)
    assert job.resolved is not None
    assert job.assembly is not None
    of = job.resolved.design
    own = "" if of.option is None else of.option.letter
    signature = replace(read.signature, option=own)
    signed = inventory(job.resolved, job.assembly, job.loads)
    wrong = held_against(read, signed.fingerprint, of.job, own)
    wrong = wrong or unsound(signature, of) if read.slip.revision else wrong
    if wrong:
        return Received(problems=wrong)
    filed, problems = file_slip(design, read)
    if filed is None:
        return Received(problems=problems)
    files: tuple[Path, ...] = (filed,)
    cautions = not_as_quoted(read)
    approves = not cautions and bool(read.slip.revision)
    before = other_option_signed(of.records.approved, read.slip.revision, own)
    if approves:
        recorded, cautions = record(design, signature, signed)
        files = (filed, *recorded)
    return Received(
        name=read.slip.name,
        date=read.slip.date,
        revision=read.slip.revision,
        fingerprint=read.slip.fingerprint,
        files=files,
        option=own,
        approved=approves and not cautions,
        problems=cautions or (*before, *no_letter(of)),
    )


def _meant(job: Job, slip: Slip) -> Job:
    """The option whose fingerprint a slip holds; else the one that it names, else the job's own."""
    for one in job.options:
        if (
            one.resolved
            and one.assembly
            and fingerprint(one.resolved, one.assembly) == slip.fingerprint
        ):
            return one
    return next((one for one in job.options if one.letter == slip.option), job)


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """What moved between two states of a design; None when one of them cannot be read."""

    changes: Changes | None = None
    problems: tuple[Problem, ...] = ()


def compare(
    old: Path,
    new: Path,
    *,
    house: Path | None = None,
    user_house: bool = True,
    options: tuple[str | None, str | None] = (None, None),
) -> Compared:
    """What moved between two designs, or since a design was approved.

    Args:
        old: a design file, or the figures that were kept when one was approved
            (`NAME.approved.json`).
        new: likewise.
        house: as for `check`.
        user_house: as for `check`.
        options: the letter of the option of each; as for `check`.
    """
    states: list[Inventory] = []
    for path, option in zip((old, new), options, strict=True):
        if path.suffix == ".json":
            state, problems = read_state(path)
        else:
            job = check(path, house=house, user_house=user_house, option=option)
            resolved, assembly, problems = job.resolved, job.assembly, stops(job.problems)
            unknown = any(p.code == "unknown_option" for p in problems)
            state = (
                None
                if resolved is None or assembly is None or unknown
                else inventory(resolved, assembly, job.loads)
            )
        if state is None:
            return Compared(problems=problems)
        states.append(state)
    return Compared(changes=compare_inventories(*states))


@dataclass(frozen=True, slots=True, kw_only=True)
class Explained:
    """The figures that were asked about, and their arithmetic in lines of text."""

    figures: tuple[Figure, ...]
    lines: tuple[str, ...]
    problems: tuple[Problem, ...] = ()


def explain(
    path: Path,
    name: str | None,
    *,
    house: Path | None = None,
    user_house: bool = True,
    option: str | None = None,
) -> Explained:
    """The arithmetic of one number by its name or any short form of it; all numbers without one."""
    job = check(path, house=house, user_house=user_house, option=option)
    unknown = any(p.code == "unknown_option" for p in job.problems)
    if job.resolved is None or job.assembly is None or unknown:
        return Explained(figures=(), lines=(), problems=job.problems)
    sound = not stops(job.own)
    paper = paperwork(job.resolved, job.assembly, job.loads) if sound else None
    known = figures(job.resolved, job.loads, paper)
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
    """The cut list of a checked job, and its glass order where it has glass, by title."""
    assert job.resolved is not None
    assert job.assembly is not None
    unit, shop = job.resolved.design.unit, job.resolved.shop
    panes = glass_order(job.resolved, job.assembly)
    return {
        "Cut list": cut_table(cut_list(job.assembly), unit, shop),
        **({"Glass": glass_table(panes, unit, shop)} if panes else {}),
    }


def new(
    words: Sequence[str], *, kind: str | None = None, house: bool = False
) -> tuple[Path, tuple[Problem, ...]]:
    """Copy a starter to a path where nothing stands yet.

    Args:
        words: the starter, which may be two words or left out, and the file to make.
        kind: the kind said by itself; a bypass door where it is said nowhere.
        house: make a house file instead.

    Returns:
        The file, and nothing or the one reason why it was not written.
    """
    *before, last = words
    said, path = " ".join(before), Path(last)
    if fault := said_twice(words, alone=kind is not None or house):
        return path, (fault,)
    return path, new_house(path) if house else new_design(said or kind or "bypass", path)
