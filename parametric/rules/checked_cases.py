"""What a rule about cases looks at: the job, and what each case and each shelf of it does."""

from __future__ import annotations

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
