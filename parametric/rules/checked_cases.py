"""What a rule about cases looks at: the job, and what each case and each shelf of it does."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from parametric.resolve.casework import Casework
from parametric.rules.checked import Checked
from parametric.trade.case_loads import CaseLoad, case_loads
from parametric.trade.case_shelves import CaseShelf, case_shelves
from parametric.trade.printed import Printed, printed


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckedCases:
    """The cabinets of a job, all at once."""

    job: Checked
    casework: Casework
    loads: tuple[CaseLoad, ...]
    shelves: tuple[CaseShelf, ...]

    @property
    def said(self) -> Printed:
        """As this design says its lengths."""
        return printed(self.job.resolved)


def cases_of(job: Checked) -> CheckedCases | None:
    """The cabinets of a job; None where it has none."""
    if job.resolved.casework is None:
        return None
    return CheckedCases(
        job=job,
        casework=job.resolved.casework,
        loads=case_loads(job.resolved, job.assembly, job.loads),
        shelves=case_shelves(job.resolved),
    )


def listed(names: Iterable[str]) -> str:
    """`cabinet outer 1, cabinet outer 2 and cabinet middle`."""
    *most, last = names
    return f"{', '.join(most)} and {last}" if most else last


def together(names: Sequence[str]) -> str:
    """The names of cases, those that are numbered on as one: `cabinet b 1 to 20`."""
    stems: dict[str, list[str]] = {}
    for name in names:
        numbered = re.fullmatch(r"(.+) ([0-9]+)", name)
        stems.setdefault(numbered[1] if numbered else name, []).append(name)
    return listed(part for stem, own in stems.items() for part in _numbered_on(stem, own))


def _numbered_on(stem: str, names: list[str]) -> Iterator[str]:
    """`cabinet b 1 to 3`, `cabinet b 7`."""
    if names == [stem]:
        yield stem
        return
    numbers = sorted(int(name.removeprefix(stem)) for name in names)
    first = last = numbers[0]
    for number in (*numbers[1:], None):
        if number == last + 1:
            last = number
            continue
        if last - first > 1:
            yield f"{stem} {first} to {last}"
        else:
            yield from (f"{stem} {each}" for each in range(first, last + 1))
        if number is not None:
            first = last = number


def begun(sentence: str) -> str:
    """A sentence that begins with a name, with its first letter large."""
    return sentence[:1].upper() + sentence[1:]
