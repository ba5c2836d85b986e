"""The slip that a client sends back: read, held against the design, filed beside it.

A slip records that somebody said yes to one fingerprint on one day. It is no signature in
the sense of any law: nothing proves who typed the name. What it does prove is which
numbers were on the screen, since the whole digest of the design is in it.
"""

from __future__ import annotations

import datetime
import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import BaseModel, ConfigDict, Field, ValidationError, field_validator

from parametric.figures import Where
from parametric.pack.approving import Signature
from parametric.problems import Problem
from parametric.trade.fingerprint import mark
from parametric.writers.page_words import (
    CASE_SLIP_WORDS,
    ONE_SLIP_WORDS,
    SLIP_FORMAT,
    SLIP_WORDS,
)

_START = '{"stilewright slip"'
_LARGEST = 100_000
"""Bytes of the longest message that is looked through for a slip."""


class Slip(BaseModel):
    """The line of a slip that the tool reads."""

    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)

    format: int = Field(alias="stilewright slip")
    job: str
    revision: str
    revision_date: str = Field(alias="revision date")
    option: str = Field(default="", pattern=r"^[A-Z]?$")
    called: str = ""
    fingerprint: str = Field(pattern=r"^[0-9a-f]{64}$")
    mark: str
    finish: dict[str, str]
    as_quoted: bool = Field(alias="as quoted")
    ticks: list[str]
    name: str = Field(min_length=1, max_length=200)
    date: str = Field(pattern=r"^[0-9]{4}-[0-9]{2}-[0-9]{2}$")
    page: str = Field(pattern=r"^[0-9a-f]{12}$")

    @field_validator("date")
    @classmethod
    def _a_day_of_the_calendar(cls, date: str) -> str:
        datetime.date.fromisoformat(date)
        return date


@dataclass(frozen=True, slots=True, kw_only=True)
class SlipRead:
    """A slip as it came: what it says, and its whole text."""

    slip: Slip
    text: str

    @property
    def signature(self) -> Signature:
        """As the approval is recorded."""
        name = " ".join(self.slip.name.split())
        return Signature(revision=self.slip.revision, by=f"{name}, by slip", date=self.slip.date)


def read_slip(path: Path) -> tuple[SlipRead | None, tuple[Problem, ...]]:
    """Find the slip in a saved file or in the text of a message, or say what is wrong with it."""
    try:
        data = path.read_bytes()
    except OSError as error:
        return None, (_unreadable(path, error.strerror or str(error), "Look at the name."),)
    if len(data) > _LARGEST:
        return None, (
            _unreadable(path, f"{len(data)} bytes", "Save the text of the slip in a file alone."),
        )
    text = data.decode("utf-8", "replace").removeprefix("\ufeff").replace("\r\n", "\n")
    found = _record(text)
    if found is None:
        return None, (
            _unreadable(
                path,
                "no line that begins with " + _START,
                "Ask for the slip again, as a file; a message may have broken its last line.",
            ),
        )
    try:
        slip = Slip.model_validate(found)
    except ValidationError as error:
        first = error.errors()[0]
        place = " / ".join(str(part) for part in first["loc"])
        return None, (
            _unreadable(path, f"{place}: {first['msg']}", "Ask for the slip again, as a file."),
        )
    if slip.format != SLIP_FORMAT:
        return None, (
            _unreadable(
                path, f"a slip of format {slip.format}", "Use the tool that made the page."
            ),
        )
    if not _same_words(text, slip):
        return None, (
            Problem(
                code="slip_words_changed",
                level="stop",
                message=f"{path.name} says one thing in words and another in its last line.",
                where=Where(path.name, 1),
                about="slip",
                found="words that the page did not write",
                allowed="the words as the page wrote them",
                fix="Ask the client what they meant, and for a slip as the page saves it.",
            ),
        )
    return SlipRead(slip=slip, text=text), ()


def _record(text: str) -> dict[str, Any] | None:
    """The last line of the slip; a message may have folded it."""
    start = text.rfind(_START)
    if start < 0:
        return None
    rest = text[start:]
    for whole in (rest.split("\n", 1)[0], rest.replace("\n", ""), rest.replace("\n", " ")):
        try:
            found, _ = json.JSONDecoder().raw_decode(whole)
        except ValueError:
            continue
        if isinstance(found, dict):
            return found
    return None


def slip_words(slip: Slip, words: Mapping[str, str] = SLIP_WORDS) -> str:
    """What the page writes above the line, of several doors or of one."""
    revision = words["revision of"].format(slip.revision, slip.revision_date)
    lines = [
        words["head"],
        words["job"].format(slip.job),
        (revision if slip.revision_date else words["revision"].format(slip.revision))
        if slip.revision
        else "",
        words["option"].format(slip.option, slip.called) if slip.option else "",
        words["mark"].format(slip.mark),
        words["finish"].format("; ".join(slip.finish.values())),
        words["quoted"] if slip.as_quoted else words["differs"],
        *((words["ticks"],) if slip.ticks else ()),
        *(words["tick"].format(tick) for tick in slip.ticks),
        words["name"].format(slip.name),
        words["date"].format(slip.date),
    ]
    return "\n".join(lines)


def _same_words(text: str, slip: Slip) -> bool:
    """Whether the words are those of the line; how a message spaced and quoted them is no matter."""
    above = re.sub(r"(?m)^[> ]+", "", text[: text.rfind(_START)])
    said = "".join(above.split())
    return any(
        "".join(slip_words(slip, words).split()) in said
        for words in (SLIP_WORDS, ONE_SLIP_WORDS, CASE_SLIP_WORDS)
    )


def held_against(
    read: SlipRead, fingerprint: str, job: str, option: str = ""
) -> tuple[Problem, ...]:
    """What keeps a slip from being one for this design as it is.

    Args:
        read: the slip.
        fingerprint: that of the design, or of the option that the slip is for.
        job: the design's job.
        option: the letter of that option, of a design that has some.
    """
    slip = read.slip
    said = f" option {slip.option}" if slip.option else ""
    this = f"option {option} of this design" if option else "this design"
    if slip.fingerprint != fingerprint:
        return (
            Problem(
                code="slip_for_another",
                level="stop",
                message=f"The slip says yes to{said} {mark(slip.fingerprint)} of {slip.job!r}; "
                f"{this} is {mark(fingerprint)} of {job!r}.",
                about="slip",
                found=mark(slip.fingerprint),
                allowed=mark(fingerprint),
                fix="Send the client the page of the design as it is, or go back to the design "
                "that was sent.",
            ),
        )
    if slip.mark != mark(slip.fingerprint):
        return (
            Problem(
                code="slip_for_another",
                level="stop",
                message="The slip's mark is not that of its own fingerprint.",
                about="slip",
                found=slip.mark,
                allowed=mark(slip.fingerprint),
                fix="Ask for the slip again, as a file.",
            ),
        )
    if slip.option and option and slip.option != option:
        return (
            Problem(
                code="slip_for_another",
                level="stop",
                message=f"The slip says yes to option {slip.option}; its mark, {slip.mark}, is "
                f"now that of {this}.",
                about="slip",
                found=slip.option,
                allowed=option,
                fix="Send the client the page of the design as it is, and ask which one is meant.",
            ),
        )
    return ()


def not_as_quoted(read: SlipRead) -> tuple[Problem, ...]:
    """A caution, when the client chose something that the price is not for."""
    if read.slip.as_quoted:
        return ()
    return (
        Problem(
            code="slip_not_as_quoted",
            level="caution",
            message="The client chose something other than was quoted: "
            f"{'; '.join(read.slip.finish.values())}. The slip is filed; nothing is approved.",
            about="slip",
            found="; ".join(read.slip.finish.values()),
            allowed="what was quoted",
            fix="Agree the price, write the choice into the design, then `approve` it.",
        ),
    )


def slip_path(design: Path, slip: Slip) -> Path:
    """Where a slip is filed: beside the design, by revision and mark."""
    letter = f"-{slip.revision}" if slip.revision else ""
    return design.with_name(f"{design.stem}.slip{letter}-{mark(slip.fingerprint)}.txt")


def file_slip(design: Path, read: SlipRead) -> tuple[Path | None, tuple[Problem, ...]]:
    """Put the slip beside the design as it came; the same one twice is no matter."""
    target = slip_path(design, read.slip)
    content = read.text.encode()
    try:
        if target.exists() and target.read_bytes() != content:
            return None, (
                Problem(
                    code="slip_there_already",
                    level="stop",
                    message=f"Another slip for this revision is filed as {target.name}.",
                    about="slip",
                    found=target.name,
                    allowed="one slip a revision",
                    fix="Move that one away first if the new one takes its place.",
                ),
            )
        target.write_bytes(content)
    except OSError as error:
        return None, (
            Problem(
                code="not_recorded",
                level="stop",
                message=f"The slip was not filed: {error.strerror or error}.",
                about="slip",
                found=str(target),
                fix="Make the folder of the design writable, then try again.",
            ),
        )
    return target, ()


def _unreadable(path: Path, found: str, fix: str) -> Problem:
    return Problem(
        code="slip_unreadable",
        level="stop",
        message=f"{path} is not a slip that can be read: {found}.",
        where=Where(path.name, 1),
        about="slip",
        found=found,
        allowed="a slip that the client's page saved, sent or copied",
        fix=fix,
        unreadable=True,
    )
