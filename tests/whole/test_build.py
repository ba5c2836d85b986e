"""The command as a user runs it: in a process of its own, from a design file to a pack on disk."""

from __future__ import annotations

import hashlib
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
DESIGN = ROOT / "examples/larch-hill-reading-room/design.yaml"
HOUSE = ROOT / "examples/house.yaml"


def stilewright(*words: str, folder: Path, seed: str = "0") -> subprocess.CompletedProcess[str]:
    """One run, with a cache, a config and a hash seed of its own."""
    environment = {
        **os.environ,
        "PYTHONHASHSEED": seed,
        "XDG_CACHE_HOME": str(folder / "cache"),
        "XDG_CONFIG_HOME": str(folder / "config"),
        "PYTHONPATH": str(ROOT),
    }
    program = "import sys; from parametric.cli import app; app(prog_name='stilewright')"
    return subprocess.run(
        [sys.executable, "-c", program, *words],
        cwd=folder,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )


def digests(pack: Path) -> dict[str, str]:
    return {
        path.relative_to(pack).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(pack.rglob("*"))
        if path.is_file()
    }


def edited(folder: Path, *changes: tuple[str, str]) -> Path:
    """Larch Hill with some of its text changed."""
    text = DESIGN.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    return path


@pytest.fixture(scope="module")
def pack(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("first")
    run = stilewright("build", str(DESIGN), folder=folder)
    assert run.returncode == 0, run.stdout + run.stderr
    return folder / "outputs/larch-hill-reading-room"


@pytest.mark.kernel
def test_pack_is_foldered_by_who_receives_it(pack: Path) -> None:
    files = set(digests(pack))
    for name in (
        "client/preview.html",
        "client/proposal.pdf",
        "shop/drawings.pdf",
        "order/cut-list.csv",
        "order/glass.csv",
        "cnc/tool-list.csv",
        "cnc/leaf-A-front.dxf",
        "cnc/leaf-B-back.dxf",
        "cnc/S1-stile-with-pull-inner-edge.dxf",
        "cnc/R3-lock-rail-lower-edge.dxf",
        "model/larch-hill-reading-room.step",
        "model/larch-hill-reading-room.glb",
        "numbers.json",
    ):
        assert name in files
    assert not any(name.endswith(".usdz") for name in files)  # only when it is asked for
    numbers = json.loads((pack / "numbers.json").read_text(encoding="utf-8"))
    assert numbers["format"] == 1
    assert numbers["units"] == "mm"
    assert numbers["verification"]["sheets"]["findings"] == []
    assert numbers["verification"]["proposal"]["findings"] == []
    by_name = {figure["name"]: figure for figure in numbers["figures"]}
    width = by_name["leaf width"]
    assert width["value"] == 1024.5
    assert width["origin"] == "computed"
    assert width["inputs"] == {"cover": 1929.0, "leaves": 2.0, "overlap": 120.0}
    assert by_name["width bottom"]["origin"] == "measured"
    # Every file that names the design names the same fingerprint.
    mark = f"{numbers['fingerprint'][:4]}-{numbers['fingerprint'][4:8]}".upper()
    for name in ("client/preview.html", "cnc/leaf-A-front.dxf"):
        assert mark in (pack / name).read_text(encoding="utf-8")


@pytest.mark.kernel
def test_two_processes_write_the_same_bytes(pack: Path, tmp_path: Path) -> None:
    """Every file but STEP, under another hash seed and with an empty cache."""
    run = stilewright("build", str(DESIGN), "--no-cache", folder=tmp_path, seed="4711")
    assert run.returncode == 0, run.stdout + run.stderr
    first, second = digests(pack), digests(tmp_path / "outputs/larch-hill-reading-room")
    assert first.keys() == second.keys()
    differing = {name for name in first if first[name] != second[name]}
    # The marker lists digests, so it follows the STEP file.
    assert differing <= {"model/larch-hill-reading-room.step", ".stilewright-pack.json"}


@pytest.mark.kernel
def test_second_build_replaces_the_pack_and_keeps_a_persons_file(tmp_path: Path) -> None:
    design = edited(tmp_path)
    words = ("build", str(design), "--house", str(HOUSE), "--out", "pack")
    assert stilewright(*words, folder=tmp_path).returncode == 0
    before = digests(tmp_path / "pack")
    (tmp_path / "pack/shop/note to self.txt").write_text("order more tape", encoding="utf-8")
    edited(tmp_path, ("- lock rail: 150", "- lock rail: 160"))
    run = stilewright(*words, folder=tmp_path)
    assert run.returncode == 0
    after = digests(tmp_path / "pack")
    assert "shop/note to self.txt" not in after
    kept = tmp_path / "pack-kept/shop/note to self.txt"
    assert kept.read_text(encoding="utf-8") == "order more tape"
    assert "note to self.txt" in run.stdout
    assert before["numbers.json"] != after["numbers.json"]


@pytest.mark.kernel
def test_with_stops_writes_drawings_and_model_marked_and_nothing_else(tmp_path: Path) -> None:
    design = edited(tmp_path, ("slot: 12 x 62 x 46", "slot: 12 x 62 x 126"))
    words = ("build", str(design), "--house", str(HOUSE), "--out", "pack")
    run = stilewright(*words, folder=tmp_path)
    assert run.returncode == 1
    assert not (tmp_path / "pack").exists()
    run = stilewright(*words, "--with-stops", folder=tmp_path)
    assert run.returncode == 1
    files = set(digests(tmp_path / "pack"))
    assert not any(name.startswith(("cnc/", "order/", "client/")) for name in files)
    assert "shop/drawings.pdf" in files
    assert "model/larch-hill-reading-room-NOT-FOR-MAKING.step" in files
    text = subprocess.run(
        ["pdftotext", "-layout", str(tmp_path / "pack/shop/drawings.pdf"), "-"],
        capture_output=True,
        text=True,
        check=True,
    ).stdout
    assert text.count("NOT FOR MAKING") >= text.count("\f")
    # Read back like any other pack; slots that come through are told of the stiles alone.
    verdicts = json.loads((tmp_path / "pack/numbers.json").read_text())["verification"]
    assert verdicts["marks"]["faults"] == verdicts["drawings"]["faults"] == []
    assert verdicts["glb"]["faults"]
    assert all(" S1" in said or " S2" in said for said in verdicts["glb"]["faults"])


@pytest.mark.parametrize(
    ("old", "new", "says", "status"),
    [
        (
            "panel: 460",
            "panel: 438",
            "Your rails and openings add to 2080; the door is 2102. 22 is unallocated: make one "
            'line "rest", or add 22 to the panel, or to the bottom rail.',
            1,
        ),
        ("thickness: 40", "thickness: 18", "leaves 4.9 each side; at least 5 is needed.", 1),
        (
            "stiles: 120",
            "stiles: 40",
            "The slot comes out of the far edge of the stile by 6",
            1,
        ),
        ("stiles: 120", "stlies: 120", 'No such thing as "stlies" in leaf', 2),
        ("bevel run: 75", "bevel run: 0", "The bevel run of the panel is 0", 1),
        ("panel: 460", "panel: 1600", "would be -49 high", 1),
    ],
)
def test_broken_designs_write_nothing(
    tmp_path: Path, old: str, new: str, says: str, status: int
) -> None:
    """Not even with --with-stops for what has no size or cannot be read."""
    changes = [(old, new)]
    if "438" in new:
        changes += [("- lite: equal", "- lite: 521"), ("- lite: equal", "- lite: 521")]
    design = edited(tmp_path, *changes)
    run = stilewright("build", str(design), "--house", str(HOUSE), folder=tmp_path)
    assert run.returncode == status, run.stdout + run.stderr
    assert says in run.stdout
    assert "design.yaml:" in run.stdout
    assert "Traceback" not in run.stdout + run.stderr
    assert "Nothing was written." in run.stdout
    assert not (tmp_path / "outputs").exists()
    if status == 2 or (new[-1:] == "0" and "run" in new) or "1600" in new:
        again = stilewright(
            "build", str(design), "--house", str(HOUSE), "--with-stops", folder=tmp_path
        )
        assert again.returncode == status
        assert not (tmp_path / "outputs").exists()


def test_json_is_all_that_is_printed(tmp_path: Path) -> None:
    for words in (
        ("check", str(DESIGN), "--json"),
        ("cutlist", str(DESIGN), "--json"),
        ("explain", str(DESIGN), "cover", "--json"),
        ("schema",),
        ("doctor", "--json"),
    ):
        run = stilewright(*words, folder=tmp_path)
        assert run.returncode == 0, run.stderr
        json.loads(run.stdout)
        assert run.stderr == ""


def test_explain_goes_down_to_the_tape(tmp_path: Path) -> None:
    """Leaf width = (cover + (leaves - 1) * overlap) / leaves = (1929 + (2 - 1) * 120) / 2."""
    run = stilewright("explain", str(DESIGN), "leaf width", folder=tmp_path)
    lines = run.stdout.splitlines()
    assert lines[:3] == [
        "leaf width = 1024.5 mm",
        "    = (cover + (leaves - 1) * overlap) / leaves",
        "    = (1929 + (2 - 1) * 120) / 2",
    ]
    assert any("width bottom = 1829 mm   measured, design.yaml:" in line for line in lines)
    unknown = stilewright("explain", str(DESIGN), "lock rial length", folder=tmp_path)
    assert unknown.returncode == 2
    assert "lock rail" in unknown.stdout


def test_check_never_loads_the_kernel() -> None:
    program = (
        "import sys\n"
        "from pathlib import Path\n"
        "from parametric.commands import check, lists\n"
        f"job = check(Path({str(DESIGN)!r}), user_house=False)\n"
        "lists(job)\n"
        "assert job.exit_status == 0\n"
        "print(sorted(m for m in sys.modules if m.split('.')[0] in ('cadquery', 'OCP', 'vtkmodules')))"
    )
    run = subprocess.run(
        [sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert run.stdout.strip() == "[]"


def test_new_makes_a_sound_starter_and_never_writes_over(tmp_path: Path) -> None:
    assert stilewright("new", "door.yaml", folder=tmp_path).returncode == 0
    run = stilewright("check", "door.yaml", folder=tmp_path)
    assert run.returncode == 0, run.stdout
    before = (tmp_path / "door.yaml").read_bytes()
    again = stilewright("new", "door.yaml", folder=tmp_path)
    assert again.returncode != 0
    assert (tmp_path / "door.yaml").read_bytes() == before
    assert stilewright("new", "house.yaml", "--house", folder=tmp_path).returncode == 0
    assert stilewright("check", "door.yaml", folder=tmp_path).returncode == 0


def test_new_takes_a_kind_before_the_file(tmp_path: Path) -> None:
    """A kind of two words with quotes or without; a kind alone is no file's name."""
    for words in (["hinged pair"], ["hinged", "pair"], ["--kind", "hinged pair"]):
        assert stilewright("new", *words, "door.yaml", folder=tmp_path).returncode == 0, words
        made = tmp_path / "door.yaml"
        assert "  kind: hinged pair\n" in made.read_text(encoding="utf-8")
        made.unlink()
    for words in (["hinged"], ["hinged", "pair"], ["bypass", "house.yaml", "--house"]):
        run = stilewright("new", *words, folder=tmp_path)
        assert run.returncode == 2, words
        assert "Traceback" not in run.stderr
    assert list(tmp_path.iterdir()) == []


def test_the_public_interface_is_five_functions() -> None:
    """Whatever was imported before, `resolve` is the function and not the folder of that name."""
    program = (
        "import parametric.resolve.leaf, parametric.design\n"
        "from parametric import build, check, load, make_parts, resolve\n"
        "assert all(callable(f) for f in (build, check, load, make_parts, resolve))\n"
    )
    subprocess.run([sys.executable, "-c", program], cwd=ROOT, check=True)


INCH_TWIN = """\
stilewright: 1
job: Inch twin
units: inch
survey:
  widths: {top: 71-7/8, middle: 71-13/16, bottom: 72}
  heights: {left: 81-13/16, middle: 81-5/8, right: 81-1/2}
  fixing: studs
  board over fixing: 1/2
door: {kind: bypass, side lap: 2, head lap: 1-3/4, floor gap: 1/2}
leaf:
  timber: red oak
  thickness: 1-9/16
  stiles: 4-3/4
  top to bottom:
    - top rail: 4-3/4
    - lite: equal
    - lock rail: 6
    - panel: 18
    - bottom rail: 9-1/2
      tenons: 2
joint: {kind: loose tenon, slot: 1/2 x 2-7/16 x 1-13/16, tenon: 1/2 x 2-3/8 x 3-1/2,
  off groove: 1/4, off end: 1-1/2}
panel: {kind: raised, thickness: 1-1/8, groove: 3/8 x 9/16, tongue: 23/64 x 5/8,
  back rebate: 1/4, edge thickness: 5/8, bevel run: 2-3/4, fillet: 1/16, clearance: 1/32}
glass: {kind: laminated, thickness: 1/4, true thickness: 0.226, stop: 1/2 x 9/16, clearance: 1/8}
track: {spacing: 2-1/8, off wall: 3-3/8, carries: 60 lb}
guide: {groove: 3/8 x 3/4, cutter: 1/4}
router: {cutters: [1/4, 3/8, 1/2]}
"""


@pytest.mark.kernel
def test_a_job_in_fractions_of_an_inch_is_built_and_reads_back(tmp_path: Path) -> None:
    """Its sizes fall on no thousandth of a millimetre; 72 + 2*2 = 76, (76 + 4-3/4)/2 = 40-3/8."""
    (tmp_path / "design.yaml").write_text(INCH_TWIN, encoding="utf-8")
    run = stilewright("build", "design.yaml", folder=tmp_path)
    assert run.returncode == 0, run.stdout + run.stderr
    told = stilewright("explain", "design.yaml", "leaf width", folder=tmp_path).stdout
    assert told.startswith("leaf width = 40-3/8 (1025.525 mm)")
