"""Ten faults, each seeded alone into files that are otherwise sound; each must be found and named.

The machine files are those of a leaf in which nothing is even. Where a fault can be made
whole in itself (header, layer, elevation, words and lists all agreeing on the wrong thing)
it is, so that nothing but the comparison with the parts can find it.
"""

from __future__ import annotations

import dataclasses
import re

import pytest

from parametric.pack.verifying.drawings import check_drawings
from parametric.pack.verifying.model_glb import check_glb
from parametric.pack.verifying.rebuilt import check_cutting
from tests.verify.larch_hill import drawings_of, lengthened, longer_line, sheets_as_files
from tests.verify.larch_hill import known as known_larch_hill
from tests.verify.lopsided import cutting, known
from tests.verify.models import glb
from tests.verify.seeds import (
    Files,
    changed_scene,
    mirrored,
    shifted,
    spoiled_cut,
    spoiled_entity,
    spoiled_set_up,
    spoiled_text,
    with_operations,
)

FRONT, INNER = "leaf-A-front.dxf", "S1-post-inner-edge.dxf"


def faults(files: Files) -> tuple[str, ...]:
    return check_cutting(files, known()).faults


def one(found: tuple[str, ...], *words: str) -> None:
    """Some fault says all these words."""
    assert any(all(word in fault for word in words) for fault in found), found


def test_unspoiled_files_have_no_fault() -> None:
    assert faults(cutting()) == ()


def test_1_a_pocket_0_2_shallow() -> None:
    """13.7 - 0.2 = 13.5; 0.2 of a floor of 90.6 x 20.6 less its corners stays in the wood."""
    found = faults(spoiled_cut("body", lambda cut: dataclasses.replace(cut, depth=cut.depth - 0.2)))  # type: ignore[union-attr,call-arg]
    one(found, FRONT, "body of leaf A / post", "12 deep", "12.2")
    one(found, "leaf A / post", "blank less machine files less saw and bench list")


def test_2_a_width_mirrored() -> None:
    found = faults(
        spoiled_set_up(
            INNER,
            lambda s: with_operations(
                lambda op: dataclasses.replace(op, outline=mirrored(op.outline, s.width))
            )(s),
        )
    )
    # the low slot is centred on 17 of 45, seen from above its edge on 45 - 17 = 28
    one(found, INNER, "low slot", "12 to 22", "23 to 33")
    assert not any("blank less" in fault for fault in found)  # its volume is right


@pytest.mark.parametrize("scaled", [False, True], ids=["said in inches", "drawn in inches"])
def test_3_an_inch_file(scaled: bool) -> None:
    if not scaled:
        found = faults(spoiled_text(INNER, "$INSUNITS\n 70\n4\n", "$INSUNITS\n 70\n1\n"))
        one(found, INNER, "unit", "not 4 (mm)")
        return

    def smaller(op):  # type: ignore[no-untyped-def]
        outline = tuple(v._replace(x=v.x / 25.4, y=v.y / 25.4) for v in op.outline)
        return dataclasses.replace(
            op, outline=outline, depth=op.depth / 25.4, cutter=op.cutter / 25.4
        )

    found = faults(
        spoiled_set_up(
            INNER,
            lambda s: dataclasses.replace(
                with_operations(smaller)(s),
                length=s.length / 25.4,
                width=s.width / 25.4,
                thickness=s.thickness / 25.4,
            ),
        )
    )
    one(found, INNER, "the stock is 28.346", "the piece 720")


def test_4_an_open_outline() -> None:
    found = faults(
        spoiled_entity(
            INNER, "slot_d31", lambda tags: [(" 70", "0") if t[0] == " 70" else t for t in tags]
        )
    )
    one(found, INNER, "slot_d31", "open")


@pytest.mark.parametrize("along", [0.0, 7.0], ids=["all of it", "a length of it"])
def test_5_a_doubled_line(along: float) -> None:
    """The same outline twice, or one of which a length lies on another."""
    found = faults(
        spoiled_set_up(
            INNER,
            lambda s: dataclasses.replace(
                s,
                operations=(
                    *s.operations,
                    dataclasses.replace(
                        s.operations[0], outline=shifted(s.operations[0].outline, along, 0.0)
                    ),
                ),
            ),
        )
    )
    one(found, INNER, "a line is doubled")


def test_6_a_moved_datum() -> None:
    """The mark alone; everything but the stock; the stock with all that is on it; the words."""

    def off(tags: list[tuple[str, str]]) -> list[tuple[str, str]]:
        return [(c, str(float(v) + 5.0)) if c in (" 10", " 20") else (c, v) for c, v in tags]

    one(faults(spoiled_entity(INNER, "datum", off)), INNER, "the datum's mark stands at 5;5")
    one(faults(spoiled_entity(INNER, "stock", off)), INNER, "the stock begins at 5;5")
    moved = spoiled_set_up(
        INNER,
        with_operations(lambda op: dataclasses.replace(op, outline=shifted(op.outline, 3.0, 0.0))),
    )
    one(faults(moved), INNER, "low slot", "43 to 93", "40 to 90")
    other_end = spoiled_set_up(INNER, lambda s: dataclasses.replace(s, x_from="top"))
    one(faults(other_end), INNER, "mirror image")
    turned = spoiled_set_up(INNER, lambda s: dataclasses.replace(s, x_from="top", y_from="face"))
    one(
        faults(turned), INNER, "panel groove", "lies at 150 to 520", "the part has it at 200 to 570"
    )


def test_7_a_missing_slot() -> None:
    found = faults(
        spoiled_set_up(INNER, with_operations(lambda op: None if op.name == "high slot" else op))
    )
    one(found, INNER, "high slot of leaf A / post is missing")
    one(found, "tool-list.csv", "slot_d26")
    one(found, "leaf A / post", "blank less machine files less saw and bench list")


def test_8_a_wrong_depth_in_a_name() -> None:
    """31 deep, on a layer whose every mention says 13."""
    found = faults(spoiled_text(INNER, "slot_d31", "slot_d13"))
    one(found, INNER, "slot_d13", "lies 31 deep", "its name says 13")


@pytest.mark.parametrize("by", [1.0, -1.0])
def test_9_a_rail_1_mm_long_in_the_drawing_only(by: float) -> None:
    """The lock rail of one leaf drawn 785.5 or 783.5 where the part and all numbers say 784.5."""
    wrong = drawings_of(lengthened("leaf A / lock rail", by))
    found = check_drawings(sheets_as_files(wrong), known_larch_hill()).faults
    one(found, "leaves", "leaf A")
    one(found, "arrangement", "front elevation")
    assert all("leaf B" not in fault for fault in found)


def test_9_a_rail_1_mm_long_in_the_file_only() -> None:
    """One line of the sheet runs 1 mm further."""
    files = sheets_as_files(drawings_of(None))
    path = next(path for path in files if "leaves" in path)
    found = check_drawings({path: longer_line(files[path], 850.0, 1.0)}, known_larch_hill()).faults
    one(found, "leaf A", "past the edge that ends at 904.5;850")
    found = check_drawings({path: longer_line(files[path], 850.0, -1.0)}, known_larch_hill()).faults
    one(found, "leaf A", "leaf A / lock rail is not drawn from")


def test_9_a_dimension_1_mm_long() -> None:
    """Its end moved, its picture made to say so, or only its picture: 784.5 is 785.5."""
    files = sheets_as_files(drawings_of(None))
    path = next(path for path in files if "leaves" in path)
    text = files[path].decode()
    shoulder = re.search(r"\n 42\n784.5\n.*? 14\n([\d.]+)\n", text, re.DOTALL)
    assert shoulder is not None
    end = shoulder[1]
    moved = text.replace(f" 14\n{end}\n", f" 14\n{float(end) + 1}\n", 1)
    found = check_drawings({path: moved.encode()}, known_larch_hill()).faults
    one(found, "leaf A / shoulder", "measures 785.500", "784.500")
    said = text.replace("\n  1\n784.5\n", "\n  1\n785.5\n", 1)
    found = check_drawings({path: said.encode()}, known_larch_hill()).faults
    one(found, "leaf A / shoulder", "the text says 785.5")


@pytest.mark.kernel
@pytest.mark.parametrize("way", ["scene", "wound right", "thickness"])
def test_10_a_glb_mirrored(way: str) -> None:
    """The whole scene by a scale of -1; every mesh and place mirrored and wound right again; or
    every mesh mirrored through its own thickness, where boxes and volumes stay what they were.
    """
    from tests.verify.models import mirror_everything, mirror_scene, mirror_thickness

    change = {
        "scene": mirror_scene,
        "wound right": mirror_everything,
        "thickness": mirror_thickness,
    }
    found = check_glb(changed_scene(glb(), change[way]), known()).faults
    if way == "scene":
        one(found, "leaf A / post", "mirrored")
    elif way == "wound right":
        one(found, "leaf A / post", "its box is")
    else:
        one(found, "mesh of S1", "is not there")
        assert not any("box" in fault or "mm3" in fault for fault in found)


@pytest.mark.kernel
def test_unspoiled_glb_has_no_fault() -> None:
    assert check_glb(glb(), known()).faults == ()


def test_unspoiled_drawings_have_no_fault() -> None:
    verdict = check_drawings(sheets_as_files(drawings_of(None)), known_larch_hill())
    assert verdict.faults == ()
    assert set(verdict.looked_at["fronts"]) >= {"front elevation", "leaf A", "leaf B"}  # type: ignore[arg-type]
    assert verdict.looked_at["dimensions"] >= 30  # type: ignore[operator]
