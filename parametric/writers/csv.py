"""Tables as comma-separated values: RFC 4180, UTF-8, the same bytes every time."""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Iterable, Sequence

from parametric.figures import plain

Cell = str | float | None


def write_csv(header: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """A table with one header line.

    Numbers are printed to six places without trailing noughts and with a point; None is
    an empty cell. Records end in CR LF, and a cell is quoted where it has to be.

    Raises:
        ValueError: a row has more or fewer cells than the header, or a number is not finite.

    Source: RFC 4180, Common Format and MIME Type for CSV Files, section 2.
    """
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(header)
    for row in rows:
        if len(row) != len(header):
            raise ValueError(f"{len(row)} cells under {len(header)} headings: {row!r}")
        writer.writerow([_printed(cell) for cell in row])
    return text.getvalue().encode()


def _printed(cell: Cell) -> str:
    if cell is None:
        return ""
    if isinstance(cell, str):
        return cell
    if not math.isfinite(cell):
        raise ValueError(f"{cell!r} is not a number to print")
    return plain(cell)
