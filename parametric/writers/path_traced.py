"""Pictures whose light is traced through the room, with Mitsuba and Open Image Denoise.

An optional extra, `[render]`: nothing of it is loaded before a picture is asked for. What the
page shades by rule here bounces: the key light shines through a window with bars, the room
that glass mirrors is an image round about, lamps are things that glow. Surfaces, colours,
tone and the grain are the page's own. The same scene gives the same bytes.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any, Literal

import numpy as np
from numpy.typing import NDArray

from parametric.catalog.finishes import ClearGlass, VeiledGlass
from parametric.catalog.room import (
    HOURS,
    LAMP_COLOUR,
    LAMP_HIGH,
    LAMP_SHADE,
    PATTERN,
    READING_LAMP,
    READING_LAMP_COLOUR,
    READING_LAMP_RADIUS,
    ROOM,
    HourName,
    Triple,
)
from parametric.writers.developed import Levels, Light, developed
from parametric.writers.grain import linear
from parametric.writers.picture_model import Points
from parametric.writers.picture_room import Thing, lamp_at
from parametric.writers.picture_scene import PictureScene, Shot
from parametric.writers.picture_shapes import Shape, Staged, plain, staged
from parametric.writers.room_seen import room_seen

_DEPTH = 8
_SAMPLES, _FINE = 4, 64
_GUIDE = 8
"""Rays a pixel for the colours and slopes that the noise is taken out by: they cost little."""
_METAL_PALER = 0.15
_SHEEN = 0.85
"""Of what a gloss of index 1.5 mirrors: satin paint and oiled wood."""
_MIRROR = 0.14
"""How much clear glass mirrors: more than it does, so that a picture tells that it is there."""
_FAR_SOURCE, _WINDOW = 12.0, 6.0
"""How far from the doors the key light and the window it shines through stand, m."""
_ADAPTED: dict[HourName, Triple] = {"day": (1.20, 1.33, 1.49), "evening": (1.0, 1.0, 1.0)}
"""What traced light is taken by so that a white card before the doors reads as it does on the page."""
_AROUND: dict[HourName, float] = {"day": 0.4, "evening": 1.2}
_LAMPS = (8.5, 200.0)
"""How strongly the lamp beside the viewer, and what leaves the far lamp up and down glow."""
_NOISE_OFF = 30.0

Spec = dict[str, Any]
_BY_CORNER: Spec = {"type": "mesh_attribute", "name": "vertex_glow"}
What = Literal["light", "colour", "slope"]


def traced(
    scene: PictureScene,
    glb: bytes,
    *,
    size: tuple[int, int],
    fine: bool = False,
    samples: int | None = None,
    progress: Callable[[Shot], None],
) -> Iterator[tuple[Shot, Levels]]:
    """Every picture of the set in turn.

    Args:
        scene: what is pictured.
        glb: the model.
        size: width and height, pixels.
        fine: many more rays, for a picture to print large.
        samples: rays a pixel, where neither 4 nor 64 is wanted.
        progress: told each picture as it begins.
    """
    import mitsuba as mi

    mi.set_variant("scalar_rgb")
    mi.set_log_level(mi.LogLevel.Error)
    ready: Staged | None = None
    for shot in scene.shots:
        progress(shot)
        ready = ready or staged(scene, glb, fine=2.0 if fine else 1.0)
        light = _light(mi, ready, shot, size, samples or (_FINE if fine else _SAMPLES))
        hour = HOURS[shot.hour]
        balance = np.array(hour.balance) * np.array(_ADAPTED[shot.hour])
        yield shot, developed(light, exposure=hour.exposure, balance=tuple(balance.tolist()))


def _light(mi: Any, ready: Staged, shot: Shot, size: tuple[int, int], samples: int) -> Light:
    """What reaches the film, the noise taken out with the surfaces' colours and slopes to go by."""
    import pyoidn

    light = _rendered(mi, _sight(mi, ready, shot, "light", size), samples)
    colour = _rendered(mi, _sight(mi, ready, shot, "colour", size), _GUIDE)
    slope = _rendered(mi, _sight(mi, ready, shot, "slope", size), _GUIDE)
    still = pyoidn.denoise(
        np.minimum(light, _NOISE_OFF),
        albedo=np.clip(colour, 0, 1),
        normal=slope * 2 - 1,
        hdr=True,
        clean_aux=True,
    )
    return np.asarray(still, dtype=np.float32)


def _rendered(mi: Any, spec: Spec, samples: int) -> Light:
    return np.ascontiguousarray(np.array(mi.render(mi.load_dict(spec), spp=samples, seed=0)))


def _sight(mi: Any, ready: Staged, shot: Shot, what: What, size: tuple[int, int]) -> Spec:
    """The scene to be rendered: its light, or every surface glowing in its own colour or slope."""
    lens = shot.camera
    width, height = size
    whole = what == "light"
    spec: Spec = {
        "type": "scene",
        "integrator": {"type": "volpath", "max_depth": _DEPTH if whole else 1},
        "sensor": {
            "type": "perspective",
            "fov": 2 * math.degrees(math.atan(lens.half)),
            "fov_axis": "y",
            "principal_point_offset_y": -lens.shift / 2,
            "near_clip": 0.05,
            "to_world": mi.ScalarTransform4f().look_at(
                origin=lens.eye, target=lens.target, up=(0, 1, 0)
            ),
            "film": {
                "type": "hdrfilm",
                "width": width,
                "height": height,
                "pixel_format": "rgb",
                "component_format": "float32",
                # a wider filter spreads the noise, and then it cannot be told from the picture
                "rfilter": {"type": "box"},
            },
            "sampler": {"type": "independent"},
        },
    }
    if whole:
        spec |= _surroundings(mi, ready.scene, shot)
    for n, shape in enumerate(ready.shapes(shot)):
        if whole:
            bsdf = _pane(ready.scene) if shape.glass else _bsdf(mi, shape)
            glow = None if shape.glow is None else _pictured(mi, shape.glow, False)
            spec[f"shape{n:03}"] = _mesh(mi, shape, bsdf, glow=glow)
        elif not shape.glass or isinstance(ready.scene.glass, VeiledGlass):
            # what is seen through clear glass is what guides; behind a veil nothing may
            spec[f"shape{n:03}"] = _glowing(mi, shape, what, lens.eye)
    return spec


def _bsdf(mi: Any, shape: Shape) -> Spec:
    rough = shape.rough
    return _two_sided(
        {
            "type": "principled",
            "base_color": _colour(mi, shape),
            "roughness": rough
            if isinstance(rough, float)
            else _pictured(mi, rough[..., None], shape.repeats),
            # aged metal is a little dull, as on the page
            "metallic": shape.metal * 0.74,
            "specular": 0.5 * _SHEEN,
        }
    )


def _colour(mi: Any, shape: Shape) -> Spec:
    if shape.colour.ndim == 1:
        # a metal shows what it mirrors: in a room of half the light it would be twice as dark
        pale = _METAL_PALER * shape.metal**2
        return _rgb(tuple((shape.colour + (1 - shape.colour) * pale).tolist()))
    return _pictured(mi, shape.colour, shape.repeats)


def _two_sided(bsdf: Spec) -> Spec:
    return {"type": "twosided", "inner": bsdf}


def _rgb(amounts: tuple[float, ...]) -> Spec:
    return {"type": "rgb", "value": [float(v) for v in amounts]}


def _pane(scene: PictureScene) -> Spec:
    """Glass that lets the light's own rays through, so that what lies behind it is lit."""
    kind = scene.glass
    mirror = _two_sided({"type": "conductor", "specular_reflectance": _rgb((0.92, 0.95, 0.94))})
    match kind:
        case ClearGlass() if kind.body > 0.2:
            body = {
                "type": "principled",
                "base_color": _rgb(linear(kind.colour)),
                "roughness": 0.05,
            }
            return {"type": "mask", "opacity": kind.body, "inner": _two_sided(body)}
        case VeiledGlass():
            return {
                "type": "principledthin",
                "base_color": _rgb(linear(kind.colour)),
                "roughness": max(0.08, 0.5 * kind.blur),
                "spec_trans": 0.6,
                "diff_trans": 1.2 * kind.body,
                "eta": 1.5,
            }
        case _:
            return {"type": "mask", "opacity": _MIRROR, "inner": mirror}


def _glowing(mi: Any, shape: Shape, what: What, eye: Triple) -> Any:
    """A shape that gives off its own colour, or the way it faces, towards the eye and nothing else."""
    triangles, normals = shape.triangles, shape.normals
    if normals is None:
        # flat faces may be wound either way; what glows does so on one side only
        a, b, c = (shape.corners[triangles[:, k]] for k in range(3))
        flat = np.cross(b - a, c - a)
        flat /= np.maximum(np.linalg.norm(flat, axis=1, keepdims=True), 1e-12)
        away = np.sum(flat * (np.array(eye) - a), axis=1) < 0
        triangles = np.where(away[:, None], triangles[:, ::-1], triangles)
        normals = np.repeat(np.where(away[:, None], -flat, flat), 3, axis=0)
        index = triangles.ravel()
        shape = replace(
            shape,
            corners=shape.corners[index],
            at=None if shape.at is None else shape.at[index],
            triangles=np.arange(len(index)).reshape(-1, 3),
        )
    if what == "colour":
        return _mesh(mi, shape, {"type": "diffuse"}, glow=_colour(mi, shape))
    by_corner = normals * 0.5 + 0.5
    return _mesh(mi, shape, {"type": "diffuse"}, glow=_BY_CORNER, by_corner=by_corner)


def _mesh(
    mi: Any, shape: Shape, bsdf: Spec, *, glow: Spec | None = None, by_corner: Points | None = None
) -> Any:
    properties = mi.Properties()
    properties["bsdf"] = mi.load_dict(bsdf)
    if shape.normals is None:
        properties["face_normals"] = True
    if glow is not None:
        properties["emitter"] = mi.load_dict({"type": "area", "radiance": glow})
    mesh = mi.Mesh(
        "mesh",
        len(shape.corners),
        len(shape.triangles),
        props=properties,
        has_vertex_normals=shape.normals is not None,
        has_vertex_texcoords=shape.at is not None,
    )
    given = mi.traverse(mesh)
    given["vertex_positions"] = np.ascontiguousarray(shape.corners, np.float32).ravel()
    given["faces"] = np.ascontiguousarray(shape.triangles, np.uint32).ravel()
    if shape.normals is not None:
        given["vertex_normals"] = np.ascontiguousarray(shape.normals, np.float32).ravel()
    if shape.at is not None:
        given["vertex_texcoords"] = np.ascontiguousarray(shape.at, np.float32).ravel()
    given.update()
    if by_corner is not None:
        mesh.add_attribute("vertex_glow", 3, by_corner.astype(np.float32).ravel())
    return mesh


def _pictured(mi: Any, picture: NDArray[np.float32], repeats: bool) -> Spec:
    """A picture laid on a surface."""
    return {
        "type": "bitmap",
        "bitmap": mi.Bitmap(np.ascontiguousarray(picture)),
        "raw": True,
        "wrap_mode": "repeat" if repeats else "clamp",
    }


def _surroundings(mi: Any, scene: PictureScene, shot: Shot) -> Spec:
    """What gives light: the room round about, the key, the window of the far room or its lamp."""
    transform = mi.ScalarTransform4f
    evening = shot.hour == "evening"
    hour = HOURS[shot.hour]
    around: Spec = {
        "around": {
            "type": "envmap",
            "bitmap": mi.Bitmap(room_seen(shot.hour)),
            "scale": _AROUND[shot.hour],
        }
    }
    middle = (scene.middle, PATTERN.middle, 0.0)
    if evening:
        x, y, z = READING_LAMP
        around["reading lamp"] = {
            "type": "sphere",
            "center": (scene.middle + x, y, z),
            "radius": READING_LAMP_RADIUS,
            "emitter": _glow(READING_LAMP_COLOUR, _LAMPS[0]),
        }
        at = lamp_at(scene)
        half = LAMP_HIGH / 2
        for name, y, up in (("up", at[1] + half, 1.0), ("down", at[1] - half, -1.0)):
            around[f"lamp {name}"] = {
                "type": "disk",
                "to_world": transform()
                .look_at(origin=(at[0], y, at[2]), target=(at[0], y + up, at[2]), up=(0, 0, 1))
                .scale((LAMP_SHADE[0] * 0.9, LAMP_SHADE[0] * 0.9, 1)),
                "emitter": _glow(LAMP_COLOUR, _LAMPS[1]),
            }
        return around
    towards = np.array(shot.key or hour.key)
    towards = towards / np.linalg.norm(towards)
    # as large as makes the edges of the window's light as soft as they are to be
    side = PATTERN.across_soft * (_FAR_SOURCE - _WINDOW) / _WINDOW
    colour = np.array(linear(hour.key_colour)) * hour.key_power
    strength = math.pi * _FAR_SOURCE**2 / (4 * side * side)
    # light that rakes is as strong on the wall's face as light that does not
    strength *= hour.key[2] / float(np.linalg.norm(hour.key)) / float(towards[2])
    far = np.array(middle) + towards * _FAR_SOURCE
    around["key"] = {
        "type": "rectangle",
        "to_world": transform()
        .look_at(origin=far.tolist(), target=list(middle), up=(0, 1, 0))
        .scale((side, side, 1)),
        "emitter": _glow(tuple(colour.tolist()), strength),
    }
    around["window"] = _window(mi, middle, towards, side)
    left = scene.middle - ROOM.far_side + 0.01
    around["far window"] = {
        "type": "rectangle",
        "to_world": transform()
        .look_at(
            origin=(left, 1.6, -ROOM.back / 2 - 0.1),
            target=(left + 1, 1.6, -ROOM.back / 2 - 0.1),
            up=(0, 1, 0),
        )
        .scale((0.8, 0.8, 1)),
        "emitter": _glow((1.05, 1.0, 0.92), 11.0),
    }
    return around


def _glow(colour: tuple[float, ...], strength: float) -> Spec:
    return {"type": "area", "radiance": _rgb(tuple(v * strength for v in colour))}


def _window(mi: Any, middle: Triple, towards: Points, source: float) -> Any:
    """The window with its bars that the key light shines through, for the light that it throws."""
    p = PATTERN
    across = np.cross((0.0, 1.0, 0.0), towards)
    across /= np.linalg.norm(across)
    up = np.cross(towards, across)
    at = np.array(middle) + towards * _WINDOW
    near = (_FAR_SOURCE - _WINDOW) / _FAR_SOURCE
    # a point of the wall sees the source this large at the window: a bar hides its share of it
    seen = 2 * source * _WINDOW / _FAR_SOURCE
    (left, right), (low, high) = ((v[0] * near, v[1] * near) for v in (p.across, p.up))
    reach = ROOM.side * near + 1.0
    panes = [
        (-reach, left, -reach, reach),
        (right, reach, -reach, reach),
        (left, right, -reach, low),
        (left, right, high, reach),
    ]
    for (start, end, share), upright in ((p.upright_bar, True), (p.level_bar, False)):
        mid, half = (start + end) / 2 * near, share * seen / 2
        panes.append(
            (mid - half, mid + half, low, high)
            if upright
            else (left, right, mid - half, mid + half)
        )
    corners, triangles = [], []
    for n, (a, b, c, d) in enumerate(panes):
        corners += [at + across * x + up * y for x, y in ((a, c), (b, c), (b, d), (a, d))]
        triangles += [(4 * n, 4 * n + 1, 4 * n + 2), (4 * n, 4 * n + 2, 4 * n + 3)]
    return _thing(
        mi,
        Thing(corners=np.array(corners), triangles=np.array(triangles), surface=ROOM.pale),
    )


def _thing(mi: Any, thing: Thing) -> Any:
    shape = plain(thing)
    return _mesh(mi, shape, _bsdf(mi, shape))
