"""The command: parse arguments, call the command, print. No rule and no number lives here."""

from __future__ import annotations

import json as json_text
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import Annotated, Any, NoReturn

import typer

from parametric import commands
from parametric.problems import Problem, exit_status, stops

app = typer.Typer(
    name="stilewright",
    help="From one measured design file to a checked design, drawings, machine files and lists "
    "for made-to-measure doors and cabinets.",
    no_args_is_help=True,
    add_completion=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
)

DesignFile = Annotated[
    Path, typer.Argument(metavar="DESIGN", help="The design file, such as reading-room.yaml.")
]
House = Annotated[
    Path | None,
    typer.Option("--house", metavar="FILE", help="Use this house file and look for no other."),
]
WhichOption = Annotated[
    str | None,
    typer.Option(
        "--option",
        metavar="LETTER",
        help="Which of the design's options; else the signed one, else the design as it stands.",
    ),
]
Json = Annotated[bool, typer.Option("--json", help="Print JSON for a program, and nothing else.")]


@app.command()
def check(
    design: DesignFile, house: House = None, option: WhichOption = None, json: Json = False
) -> None:
    """Check a design and say what is wrong, what to decide, and what is good to know.

    All its options are checked; --option says which is held against what was signed.
    """
    job = commands.check(design, house=house, option=option)
    if json:
        _print_json(
            {
                "design": str(design),
                "house": job.house,
                "problems": [commands.problem_record(p) for p in job.problems],
            }
        )
    else:
        _print_problems(job.problems)
        names = dict.fromkeys(
            p.about
            for p in job.problems
            if p.level == "caution" and p.about not in ("", "approved")
        )
        if names:
            typer.echo(f"Answer for a caution under `accepted`, by its name: {', '.join(names)}.")
        typer.echo(f"House file: {job.house or 'none found; the tool’s own settings'}.")
        typer.echo(_verdict(job.problems))
    raise typer.Exit(job.exit_status)


@app.command()
def build(
    design: DesignFile,
    out: Annotated[
        Path | None,
        typer.Option("--out", metavar="DIR", help="The pack folder; else outputs/NAME."),
    ] = None,
    house: House = None,
    option: WhichOption = None,
    with_stops: Annotated[
        bool,
        typer.Option(
            "--with-stops",
            help="Write drawings and model of a design that has stops, marked NOT FOR MAKING.",
        ),
    ] = False,
    usdz: Annotated[
        bool,
        typer.Option(
            "--usdz",
            help="Write the model as USDZ too, for a phone that can stand it in a room.",
        ),
    ] = False,
    no_cache: Annotated[bool, typer.Option("--no-cache", help="Build every solid anew.")] = False,
    pictures: Annotated[
        bool,
        typer.Option("--pictures", help="Make the client's pictures too, about 25 seconds each."),
    ] = False,
    fine: Annotated[
        bool,
        typer.Option("--fine", help="Make them fine enough to print large, some minutes each."),
    ] = False,
    json: Json = False,
) -> None:
    """Write the job pack: preview, model, shop drawings, machine files, lists, numbers."""
    built = commands.build(
        design,
        out=out,
        house=house,
        option=option,
        with_stops=with_stops,
        usdz=usdz,
        use_cache=not no_cache,
        pictures=pictures or fine,
        fine=fine,
        progress=None if json else _say_step,
    )
    problems = (*built.job.problems, *built.problems)
    if json:
        _print_json(
            {
                "design": str(design),
                "folder": None if built.folder is None else str(built.folder),
                "files": list(built.files),
                "kept": [str(path) for path in built.kept],
                "problems": [commands.problem_record(p) for p in problems],
            }
        )
        raise typer.Exit(built.exit_status)
    _print_problems(problems)
    for path in built.kept:
        typer.echo(f"Kept a file of yours: {path}")
    if built.folder is None:
        typer.echo("Nothing was written.")
    else:
        typer.echo(f"{len(built.files)} files in {built.folder}")
    typer.echo(_verdict(problems))
    raise typer.Exit(built.exit_status)


@app.command()
def verify(
    pack: Annotated[Path, typer.Argument(metavar="PACK", help="The folder of a job pack.")],
    design: DesignFile,
    house: House = None,
    option: Annotated[
        str | None,
        typer.Option(
            "--option", metavar="LETTER", help="Which of the design's options; else the pack's."
        ),
    ] = None,
    json: Json = False,
) -> None:
    """Read the files of a pack back and hold each against the design."""
    verified = commands.verify(pack, design, house=house, option=option)
    if json:
        _print_json(
            {
                "pack": str(pack),
                "design": str(design),
                "verification": {name: v.record() for name, v in verified.verdicts.items()},
                "problems": [commands.problem_record(p) for p in verified.problems],
            }
        )
        raise typer.Exit(exit_status(verified.problems))
    _print_problems(verified.problems)
    for name, verdict in verified.verdicts.items():
        typer.echo(f"{name:<10}{_looked_at(verdict.looked_at)}")
    agrees = verified.verdicts and not stops(verified.problems)
    typer.echo("The pack agrees with the design." if agrees else "Make nothing from this pack.")
    raise typer.Exit(exit_status(verified.problems))


@app.command()
def approve(
    design: DesignFile,
    revision: Annotated[
        str, typer.Option("--revision", metavar="LETTER", help="The revision that was signed.")
    ],
    by: Annotated[str, typer.Option("--by", metavar="WHO", help="Who signed, in words.")],
    date: Annotated[str, typer.Option("--date", metavar="DATE", help="When: 2026-11-20.")],
    option: Annotated[
        str | None,
        typer.Option("--option", metavar="LETTER", help="Which of its options was signed."),
    ] = None,
    house: House = None,
    json: Json = False,
) -> None:
    """Record that a design was signed as it is, and keep its figures beside it."""
    approved = commands.approve(
        design, revision=revision, by=by, date=date, house=house, option=option
    )
    status = exit_status(approved.problems)
    if json:
        _print_json(
            {
                "design": str(design),
                "fingerprint": approved.fingerprint or None,
                **({"option": approved.option} if approved.option else {}),
                "files": [str(path) for path in approved.files],
                "problems": [commands.problem_record(p) for p in approved.problems],
            }
        )
        raise typer.Exit(status)
    _print_problems(approved.problems)
    for path in approved.files:
        typer.echo(f"Written: {path}")
    typer.echo(
        f"Revision {revision}{_option_said(approved.option)} is approved as "
        f"{commands.mark(approved.fingerprint)}."
        if approved.files
        else "Nothing was recorded."
    )
    raise typer.Exit(status)


@app.command()
def receive(
    slip: Annotated[
        Path, typer.Argument(metavar="SLIP", help="The slip the client sent, saved as a file.")
    ],
    design: DesignFile,
    house: House = None,
    json: Json = False,
) -> None:
    """Read a client's slip back, hold it against the design, file it and record the yes."""
    received = commands.receive(slip, design, house=house)
    status = exit_status(received.problems)
    if json:
        _print_json(
            {
                "slip": str(slip),
                "design": str(design),
                "name": received.name or None,
                "date": received.date or None,
                "revision": received.revision or None,
                **({"option": received.option} if received.option else {}),
                "fingerprint": received.fingerprint or None,
                "approved": received.approved,
                "files": [str(path) for path in received.files],
                "problems": [commands.problem_record(p) for p in received.problems],
            }
        )
        raise typer.Exit(status)
    _print_problems(received.problems)
    for path in received.files:
        typer.echo(f"Written: {path}")
    if not received.files:
        typer.echo("Nothing was filed.")
    else:
        said = commands.mark(received.fingerprint)
        typer.echo(f"{received.name} said yes to {said} on {received.date}.")
        typer.echo(
            f"Revision {received.revision}{_option_said(received.option)} is approved as {said}. A slip records consent; it is "
            "no signature."
            if received.approved
            else "The slip is filed; the design is not approved."
        )
    raise typer.Exit(status)


@app.command()
def compare(
    old: Annotated[
        Path,
        typer.Argument(metavar="OLD", help="A design file, or the NAME.approved.json beside one."),
    ],
    new: Annotated[Path, typer.Argument(metavar="NEW", help="The same, as it is now.")],
    house: House = None,
    option: Annotated[
        list[str] | None,
        typer.Option(
            "--option",
            metavar="LETTER",
            help="Which of the design's options, of both; or said twice, of OLD and of NEW.",
        ),
    ] = None,
    json: Json = False,
) -> None:
    """Say which numbers moved between two states of a design, and which parts are other now."""
    said: list[str | None] = [*(option or (None,))]
    if len(said) > 2:
        raise typer.BadParameter("There are two states to compare: say it twice at most.")
    compared = commands.compare(old, new, house=house, options=(said[0], said[-1]))
    changes = compared.changes
    if changes is None:
        _stop(compared.problems, json)
    if json:
        _print_json(commands.changes_record(changes))
        raise typer.Exit(0)
    for line in commands.changes_lines(changes):
        typer.echo(line)
    raise typer.Exit(0)


@app.command()
def explain(
    design: DesignFile,
    name: Annotated[
        str | None,
        typer.Argument(metavar="NUMBER", help="The number, such as 'A lock rail length'."),
    ] = None,
    house: House = None,
    option: WhichOption = None,
    json: Json = False,
) -> None:
    """Show the arithmetic of one number, down to what was measured; without one, list all."""
    explained = commands.explain(design, name, house=house, option=option)
    if stops(explained.problems):
        _stop(explained.problems, json)
    if json:
        _print_json([commands.figure_record(f) for f in explained.figures])
    else:
        for line in explained.lines:
            typer.echo(line)
    raise typer.Exit(0)


@app.command()
def cutlist(
    design: DesignFile, house: House = None, option: WhichOption = None, json: Json = False
) -> None:
    """Print the cut list and the glass to order."""
    job = commands.check(design, house=house, option=option)
    if job.assembly is None or stops(job.problems):
        _stop(job.problems, json)
    lists = commands.lists(job)
    if json:
        _print_json(
            {
                title: [dict(zip(t.header, row, strict=True)) for row in t.rows]
                for title, t in lists.items()
            }
        )
        raise typer.Exit(0)
    for title, table in lists.items():
        typer.echo(title)
        for line in _columns(table.header, table.rows):
            typer.echo(f"  {line}")
    raise typer.Exit(0)


@app.command()
def new(
    words: Annotated[
        list[str],
        typer.Argument(
            metavar="[STARTER] FILE", help=f"{', '.join(commands.starters())}; the file to make."
        ),
    ],
    kind: Annotated[str | None, typer.Option("--kind", help="The starter, said by itself.")] = None,
    house: Annotated[bool, typer.Option("--house", help="Make a house file instead.")] = False,
) -> None:
    """Copy a starter: a whole design, or a house file, with every line explained."""
    path, problems = commands.new(words, kind=kind, house=house)
    if problems:
        _print_problems(problems)
        raise typer.Exit(exit_status(problems))
    typer.echo(f"Made {path}. Change its sizes to yours, then: stilewright check {path}")


@app.command()
def schema() -> None:
    """Print the JSON Schema of the design file, for an editor that completes words."""
    _print_json(commands.schema())


@app.command()
def doctor(json: Json = False) -> None:
    """Try everything the tool needs of this machine, and say what is missing and how to get it."""
    found = commands.doctor()
    if json:
        _print_json(
            [
                {"what": f.what, "works": f.works, "says": f.says, "fix": f.fix, "extra": f.extra}
                for f in found
            ]
        )
    else:
        for trial in found:
            how = "works  " if trial.works else "extra  " if trial.extra else "MISSING"
            typer.echo(f"{how}  {trial.what}: {trial.says}")
            if not trial.works:
                typer.echo(f"         {trial.fix}")
    raise typer.Exit(0 if all(f.works or f.extra for f in found) else 1)


def _looked_at(counts: Mapping[str, int | list[str]]) -> str:
    """`files 16, outlines 32`."""
    return ", ".join(
        f"{what} {', '.join(count) if isinstance(count, list) else count}"
        for what, count in counts.items()
    )


def _option_said(option: str) -> str:
    return f", option {option}," if option else ""


def _say_step(step: str) -> None:
    typer.echo(f"… {step}", err=True)


def _print_json(content: Any) -> None:
    sys.stdout.write(json_text.dumps(content, ensure_ascii=False, indent=2) + "\n")


def _stop(problems: tuple[Problem, ...], json: bool) -> NoReturn:
    if json:
        _print_json({"problems": [commands.problem_record(p) for p in problems]})
    else:
        _print_problems(problems)
        typer.echo(_verdict(problems))
    raise typer.Exit(exit_status(problems))


def _print_problems(problems: tuple[Problem, ...]) -> None:
    """`file:line  level  message`, and under it the way out."""
    for problem in problems:
        where = "" if problem.where is None else f"{problem.where.file}:{problem.where.line}"
        typer.echo(f"{where + '  ' if where else ''}{problem.level:<8}{problem.message}")
        indent = " " * (len(where) + 10 if where else 8)
        if problem.fix:
            typer.echo(f"{indent}{problem.fix}")


def _verdict(problems: tuple[Problem, ...]) -> str:
    counted = {
        level: sum(p.level == level for p in problems) for level in ("stop", "caution", "note")
    }
    words = ", ".join(
        f"{count} {level}{'s' if count != 1 else ''}" for level, count in counted.items() if count
    )
    if counted["stop"]:
        return f"{words}: it cannot be made as it stands."
    return f"{words}: it can be made." if words else "Nothing to say against it."


def _columns(header: tuple[str, ...], rows: tuple[tuple[str, ...], ...]) -> list[str]:
    """Left-aligned columns of the terminal, two spaces apart."""
    widths = [max(len(row[i]) for row in (header, *rows)) for i in range(len(header))]
    return [
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in (header, *rows)
    ]
