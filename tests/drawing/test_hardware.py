"""The sheet of hardware on the leaves: its numbers, and when there is none."""

from __future__ import annotations

from pathlib import Path

from parametric.drawing.dimensions import Dimension
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import primitives
from tests.drawing.sheets import LARCH_HILL, drawn, larch_hill


def test_hangers_keep_off_end_grain_and_tenons() -> None:
    """120 + 46 = 166 from either edge; between them 1024.5 - 2 x 166 = 692.5; 40/2 = 20 in."""
    sheet = next(s for s in larch_hill().sheets if s.title.document == "Hardware")
    shown = [e.text for e in sheet.elements if isinstance(e, Dimension)]
    assert sorted(shown) == ["166", "166", "20", "20", "692.5 for the hangers"]
    words = {part.text for e in sheet.elements for part in primitives(e) if isinstance(part, Label)}
    # 1024.5 - 166 = 858.5; the twin's pull 1024.5 - 60 = 964.5.
    assert {"166 to 858.5", "60", "964.5", "988", "2102"} <= words


def test_six_positions_need_no_sheet_of_their_own(tmp_path: Path) -> None:
    """Two leaves with two hangers and one groove each: six; a pull in one face more, and it is drawn."""
    text = LARCH_HILL.read_text(encoding="utf-8")
    lines = text.splitlines(keepends=True)
    start = next(i for i, line in enumerate(lines) if line.startswith("pull:"))
    path = tmp_path / "design.yaml"
    path.write_text("".join(lines[:start] + lines[start + 2 :]), encoding="utf-8")
    assert not any(s.title.document == "Hardware" for s in drawn(path).sheets)
    path.write_text(text.replace("faces: both", "faces: front"), encoding="utf-8")
    assert any(s.title.document == "Hardware" for s in drawn(path).sheets)
