"""The pictures themselves: the same every time, paint as it is declared, glass that is seen through."""

from __future__ import annotations

import dataclasses
import hashlib
import io
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from parametric.catalog.finishes import CLEAR_TIMBERS, PAINTS, ClearGlass, ClearTimber
from parametric.pack import pictures as picturing
from parametric.pack.doctor import doctor
from parametric.pack.pictures import CAPTIONS, FACING_SHUT, pictures
from parametric.writers.path_traced import traced
from parametric.writers.picture_model import read_pieces
from parametric.writers.picture_scene import PictureScene
from parametric.writers.raster import rastered
from parametric.writers.wood_skin import skins
from tests.pictures.larch_hill import model, pictured

pytestmark = pytest.mark.kernel
SMALL = (400, 300)
ROOT = Path(__file__).resolve().parents[2]


def nobody(step: object) -> None:
    """Progress that is not looked at."""


def only(name: str, **changed: object) -> PictureScene:
    scene = pictured().scene
    shots = tuple(shot for shot in scene.shots if shot.name == name)
    assert shots
    return dataclasses.replace(scene, shots=shots, **changed)


def seen(scene: PictureScene, how: str, samples: int = 4):
    if how == "traced":
        found = traced(scene, model(), size=SMALL, samples=samples, progress=nobody)
    else:
        found = rastered(scene, model(), size=SMALL, progress=nobody)
    ((_, levels),) = found
    return levels


def patch(levels, scene: PictureScene, point, half: int = 3):
    """Mean colour, sRGB 0 to 255, about where a point of the scene is seen."""
    across, down = scene.shots[0].camera.seen(point, SMALL[0] / SMALL[1])
    x, y = int(across * SMALL[0]), int(down * SMALL[1])
    return levels[y - half : y + half + 1, x - half : x + half + 1].reshape(-1, 3).mean(axis=0)


def patch_of(levels, scene: PictureScene, low, high):
    """What is seen between two corners of an upright rectangle."""
    (x0, y1), (x1, y0) = (
        scene.shots[0].camera.seen(point, SMALL[0] / SMALL[1]) for point in (low, high)
    )
    return levels[int(y0 * 300) + 2 : int(y1 * 300) - 1, int(x0 * 400) + 2 : int(x1 * 400) - 1]


def lab(srgb):
    """CIE L*a*b* of sRGB levels: IEC 61966-2-1 and CIE 15:2004, white D65 (.95047, 1, 1.08883)."""
    v = np.asarray(srgb, float) / 255
    v = np.where(v <= 0.04045, v / 12.92, ((v + 0.055) / 1.055) ** 2.4)
    to_xyz = np.array(
        [[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]]
    )
    t = (to_xyz @ v) / np.array([0.95047, 1.0, 1.08883])
    f = np.where(t > (6 / 29) ** 3, np.cbrt(t), t / (3 * (6 / 29) ** 2) + 4 / 29)
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


def test_lab_of_a_known_colour():
    """Red of sRGB is L* 53.24, a* 80.09, b* 67.20 (the usual tables, from memory)."""
    assert lab((255, 0, 0)) == pytest.approx((53.24, 80.09, 67.20), abs=0.05)


@pytest.mark.parametrize("how", ["traced", "rastered"])
@pytest.mark.parametrize("paint", PAINTS, ids=lambda paint: paint.key)
def test_a_paint_in_the_windows_light_reads_as_it_is_declared(paint, how):
    """The face of the left door's stiles and panel, flat to the window: CIE 1976 difference to 3."""
    scene = only("1-facing-shut-day", wood=paint)
    levels = seen(scene, how)
    front = -pictured().page.leaves[0].front / 1000
    spots = [(0.50, 0.11), (0.10, 0.45), (0.50, 0.47), (0.50, 0.79)]
    read = np.mean([patch(levels, scene, (x, y, front)) for x, y in spots], axis=0)
    declared = [int(paint.colour[i : i + 2], 16) for i in (1, 3, 5)]
    assert np.linalg.norm(lab(read) - lab(declared)) <= 3


@pytest.mark.parametrize("how", ["traced", "rastered"])
def test_the_far_room_is_seen_through_clear_glass(how):
    """A pane as dense as paint shows none of it: through clear glass there is much more to see."""
    dense = ClearGlass(key="dense", name="Dense", colour="#8fb0a4", body=0.995)
    name, front = "1-facing-shut-day", -pictured().page.leaves[0].front / 1000
    clear, blind = (seen(only(name, **glass), how) for glass in ({}, {"glass": dense}))
    across = only(name)
    regions = [
        patch_of(levels, across, (0.14, 1.50, front), (0.88, 1.96, front))
        for levels in (clear, blind)
    ]
    # spines of books side by side: steps from column to column, which light on a pane has not
    steps = [np.abs(np.diff(region.astype(float).mean(axis=2), axis=1)) for region in regions]
    assert steps[0].mean() > 2.5 * steps[1].mean()
    # the doors themselves are the same doors
    panel = [
        patch_of(levels, across, (0.25, 0.35, front), (0.75, 0.60, front)).astype(float).mean()
        for levels in (clear, blind)
    ]
    assert panel[0] == pytest.approx(panel[1], abs=3)


def test_two_processes_make_the_same_bytes():
    """400 x 300 at 8 rays a pixel, light traced and the noise taken out, in this process and another."""
    here = hashlib.sha256(seen(only("2-half-open-day"), "traced", 8).tobytes()).hexdigest()
    code = (
        "import hashlib; from tests.pictures.test_pictures import only, seen; "
        "print(hashlib.sha256(seen(only('2-half-open-day'), 'traced', 8).tobytes()).hexdigest())"
    )
    there = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT
    )
    assert there.stdout.split()[-1] == here


def test_quick_pictures_say_that_they_are_quick(monkeypatch):
    """Without the extra: in the captions, in each picture's own words, and to whoever builds."""
    told: list[str] = []
    made = pictures(
        pictured().page, pictured().assembly, model(), size=(80, 60), progress=told.append
    )
    sheet = made[CAPTIONS].decode()
    assert "quick" not in sheet.lower()
    # a design that asks for glass and says no more asks for clear glass; no metal is named
    assert "Clear glass, Aged brass pulls (to be agreed)." in sheet
    assert f"{FACING_SHUT.rpartition('/')[2]}  Facing the doors, shut, by day." in sheet
    assert not picturing.drawn_quickly(fine=False)

    monkeypatch.setitem(sys.modules, "mitsuba", None)
    quick = pictures(
        pictured().page, pictured().assembly, model(), size=(80, 60), progress=told.append
    )
    assert list(quick) == list(made)
    assert "Quick pictures" in quick[CAPTIONS].decode()
    for name in set(quick) - {CAPTIONS}:
        picture = Image.open(io.BytesIO(quick[name]))
        assert picture.size == (80, 60)
        assert "Quick pictures" in picture.info["Description"]
        assert quick[name] != made[name]
    (note,) = picturing.drawn_quickly(fine=False)
    assert note.level == "note"
    assert "stilewright[render]" in note.fix
    assert "libatomic1" in note.fix
    assert [line.partition(":")[0] for line in told] == ["tracing"] * 4 + ["drawing quickly"] * 4
    trial = next(trial for trial in doctor() if trial.extra and "traced" in trial.what)
    assert not trial.works
    assert "stilewright[render]" in trial.fix


@pytest.mark.parametrize("wood", [PAINTS[0], CLEAR_TIMBERS[1]], ids=lambda wood: wood.key)
def test_the_two_doors_are_not_twins(wood):
    """Grain goes by each piece's name: the same rail of the two leaves is another piece of wood."""
    found = skins(read_pieces(model()), wood, pictured().scene.glued)
    rails = [skin.colour for skin in found if skin.name.endswith("/ lock rail")]
    assert len(rails) == 2
    assert rails[0].shape == rails[1].shape
    apart = float(np.abs(rails[0] - rails[1]).mean())
    assert apart > 0.005 if isinstance(wood, ClearTimber) else apart < 0.005
