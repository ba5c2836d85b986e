"""The client's signature: a record beside the design, and the figures that were signed.

The record goes to NAME.records.yaml, or over the one that stands in the design file; every
other character of the file stays. The figures go to NAME.approved.json, so that a later
change can say which value moved. Nothing here knows the time: the date is said.
"""

from __future__ import annotations

import json
import os
import re
import tempfile
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from pydantic import TypeAdapter, ValidationError

from parametric.design.design import Design
from parametric.design.edits import add_value, set_value, value_at
from parametric.design.language import NEWEST
from parametric.design.options import AS_DRAWN
from parametric.design.records import ApprovedSpec
from parametric.figures import Where
from parametric.problems import Problem
from parametric.rules.not_approved import short
from parametric.trade.comparing import compare
from parametric.trade.inventory import Inventory, kept, read_kept
from parametric.units import Unit
from parametric.writers.json import write_json
from parametric.written import Date, Text

_DATE: TypeAdapter[Text] = TypeAdapter(Date)
_KEYS = ("revision", "fingerprint", "by", "date")


@dataclass(frozen=True, slots=True, kw_only=True)
class Signature:
    """Who signed which revision, and when: `2026-11-20`; `option` of a design that has some."""

    revision: str
    by: str
    date: str
    option: str = ""


def kept_path(design: Path) -> Path:
    """Where the figures of an approved design stand."""
    return design.with_name(f"{design.stem}.approved.json")


def records_path(design: Path) -> Path:
    """Where records stand that are not in the design itself."""
    return design.with_name(f"{design.stem}.records.yaml")


def read_signed(design: Path) -> Inventory | None:
    """The figures that were kept when a design was approved; None when they are not there."""
    try:
        return read_kept(json.loads(kept_path(design).read_bytes()))
    except (OSError, ValueError):
        return None


def read_revised(design: Path) -> frozenset[str]:
    """The numbers that the signed revision moved, against the revision signed before it."""
    try:
        return frozenset(map(str, json.loads(kept_path(design).read_bytes())["revised"]))
    except (OSError, ValueError, KeyError, TypeError):
        return frozenset()


def _revised(path: Path, revision: str, signed: Inventory) -> list[str]:
    """What this signature moves against the one before; more of one revision adds to its own."""
    before = read_signed(path)
    if before is None:
        return []
    moves = compare(before, signed).numbers
    names = [name for move in moves if move.new is not None for name in move.names]
    if json.loads(kept_path(path).read_bytes()).get("revision") == revision:
        names += sorted(read_revised(path) - set(names))
    return names


def read_state(path: Path) -> tuple[Inventory | None, tuple[Problem, ...]]:
    """The figures in a file that was kept when a design was approved, or what is wrong with it."""
    try:
        return read_kept(json.loads(path.read_bytes())), ()
    except (OSError, ValueError) as error:
        reason = (error.strerror if isinstance(error, OSError) else None) or str(error)
        return None, (
            Problem(
                code="figures_unreadable",
                level="stop",
                message=f"{path} cannot be read: {reason}.",
                where=Where(path.name, 1),
                found=reason,
                allowed="figures that `stilewright approve` kept, or a design file",
                fix="Look at the name and the folder.",
                unreadable=True,
            ),
        )


def unsound(signature: Signature, design: Design) -> tuple[Problem, ...]:
    """What keeps a signature from being recorded."""
    found = []
    letters = [revision.letter for revision in design.revisions]
    if not re.fullmatch(r"[A-Z]{1,2}", signature.revision):
        found.append(
            _stop("wrong_revision", "A revision is a letter, such as B.", signature.revision)
        )
    elif letters and signature.revision != letters[-1]:
        current = f"the current one is {letters[-1]}"
        words = "is not the current revision" if signature.revision in letters else "is not there"
        found.append(
            _stop(
                "not_current",
                f"Revision {signature.revision} {words}; {current}.",
                signature.revision,
                allowed=letters[-1],
            )
        )
    try:
        _DATE.validate_python(signature.date)
    except ValidationError:
        found.append(
            _stop(
                "not_a_date",
                f'"{signature.date}" is not a date: write it as 2026-11-20.',
                signature.date,
                allowed="year-month-day",
            )
        )
    if not signature.by.strip() or any(sign in signature.by for sign in "\r\n"):
        found.append(_stop("nobody", "Say on one line who approved it.", signature.by))
    return tuple(found)


def which_option(option: str | None, letters: tuple[str, ...]) -> tuple[Problem, ...]:
    """A design with options is not signed without saying which of them it is.

    Args:
        option: the letter that was said, if any.
        letters: those of the design's options; none for a design without.
    """
    if not letters or option is not None:
        return ()
    return (
        _stop(
            "which_option",
            "This design has several options: say which of them was signed.",
            "",
            allowed=", ".join(letters),
            fix=f"Say it again with `--option {letters[0]}`, or another letter.",
        ),
    )


def other_option_signed(
    approved: ApprovedSpec | None, revision: str, option: str
) -> tuple[Problem, ...]:
    """A caution, when one option is signed in the place of another of the same revision."""
    was = None if approved is None or approved.option is None else str(approved.option)
    if approved is None or was is None or was == option or str(approved.revision) != revision:
        return ()
    return (
        Problem(
            code="other_option_signed",
            level="caution",
            message=f"Revision {revision} was approved as option {was} on {approved.date}; from "
            f"now on it is option {option or AS_DRAWN}.",
            about="approved",
            found=option or AS_DRAWN,
            allowed=was,
            fix="Make nothing from the packs of the other option.",
        ),
    )


def _stop(
    code: str, message: str, found: str, *, allowed: str = "", fix: str = "Say it again."
) -> Problem:
    return Problem(
        code=code,
        level="stop",
        message=message,
        about="approved",
        found=found or "nothing",
        allowed=allowed,
        fix=fix,
        unreadable=True,
    )


def no_letter(design: Design) -> tuple[Problem, ...]:
    """A note, when the sheets of the approved design carry no revision letter."""
    if design.revisions:
        return ()
    return (
        Problem(
            code="no_revisions",
            level="note",
            message="The design lists no revisions, so its sheets carry no letter.",
            about="revisions",
            fix="Write `revisions: {A: 2026-11-04 first issue}` if they should.",
        ),
    )


def record(
    path: Path, signature: Signature, signed: Inventory
) -> tuple[tuple[Path, ...], tuple[Problem, ...]]:
    """Write the record and the figures, each whole or not at all.

    Args:
        path: the design file.
        signature: who signed what and when.
        signed: the figures that were signed.

    Returns:
        The files that were written, and what stood in the way.
    """
    figures = {
        "revision": signature.revision,
        **({"option": signature.option} if signature.option else {}),
        "by": signature.by,
        "date": signature.date,
        "revised": _revised(path, signature.revision, signed),
        **kept(signed),
    }
    try:
        book, text = _recorded(path, signature, signed)
        for target, content in ((kept_path(path), write_json(figures)), (book, text.encode())):
            _write_whole(target, content)
    except ValueError as error:
        return (), (_stop("nobody", f"This cannot be written down: {error}.", signature.by),)
    except OSError as error:
        return (), (
            Problem(
                code="not_recorded",
                level="stop",
                message=f"The approval was not recorded: {error.strerror or error}.",
                about="approved",
                found=str(error.filename or path),
                fix="Make the folder of the design writable, then approve it again.",
            ),
        )
    return (book, kept_path(path)), ()


def _recorded(path: Path, signature: Signature, signed: Inventory) -> tuple[Path, str]:
    """The file that holds the record, and its text with the record in it."""
    values = dict(
        zip(
            _KEYS,
            (signature.revision, short(signed.fingerprint), signature.by.strip(), signature.date),
            strict=True,
        )
    )
    book = records_path(path)
    for place in (path, book):
        text = _read(place)
        if text is not None and _holds(text, "revision"):
            return place, _with_option(_with_values(text, values), signature.option)
    text = _with_values(_with_empty_record(_read(book), signed.unit), values)
    return book, _with_option(text, signature.option)


def _read(path: Path) -> str | None:
    try:
        return path.read_bytes().decode("utf-8")
    except FileNotFoundError:
        return None


def _holds(text: str, key: str) -> bool:
    try:
        value_at(text, ("approved", key))
    except ValueError:
        return False
    return True


def _with_empty_record(text: str | None, unit: Unit) -> str:
    """A file of records with a record to be filled in at its end."""
    ends = "\r\n" if text is not None and "\r\n" in text else "\n"
    before = f"stilewright: {NEWEST}\nunits: {unit}\n\n" if text is None else text
    if not before.endswith("\n"):
        before += ends
    return f"{before}approved: {{revision: A, fingerprint: a, by: a, date: a}}{ends}"


def _with_values(text: str, values: dict[str, str]) -> str:
    for key, value in values.items():
        text = set_value(text, ("approved", key), value)
    return text


def _with_option(text: str, option: str) -> str:
    """The letter of the option that was signed; of a design without any, none or that of itself."""
    if _holds(text, "option"):
        return set_value(text, ("approved", "option"), option or AS_DRAWN)
    return add_value(text, ("approved", "revision"), "option", option) if option else text


def _write_whole(path: Path, content: bytes) -> None:
    """Write a file aside and move it into place."""
    handle, aside = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        mode = path.stat().st_mode if path.exists() else 0o644
        Path(aside).chmod(mode & 0o777)
        Path(aside).replace(path)
    except BaseException:
        with suppress(OSError):
            Path(aside).unlink()
        raise
