"""Light turned into a picture, as the client's page does it: exposure, tone curve, corners, PNG."""

from __future__ import annotations

import io

import numpy as np
from numpy.typing import NDArray

from parametric.catalog.room import TONE, Triple

Light = NDArray[np.float32]
Levels = NDArray[np.uint8]


def developed(light: Light, *, exposure: float, balance: Triple, corners: bool = True) -> Levels:
    """Levels of sRGB from amounts of light, rows from the head down.

    Bright tones are pressed together above the knee with their hue kept, so that a paint's
    own value comes through.

    Args:
        light: linear, height x width x 3.
        exposure: how far the eye is open.
        balance: what it does with red, green and blue.
        corners: let them darken a little.
    """
    tone = TONE
    c = np.maximum(light.astype(np.float64), 0) * exposure * np.array(balance)
    top = c.max(axis=2, keepdims=True)
    room = 1 - tone.knee
    over = np.maximum(top, tone.knee)
    to = 1 - room * room / (over + room - tone.knee)
    pressed = c * (to / np.maximum(over, 1e-9))
    keep = 1 / (1 + tone.pale * (over - to))
    pressed = to + (pressed - to) * keep
    c = np.where(top > tone.knee, pressed, c)
    if corners:
        height, width = c.shape[:2]
        y = (np.arange(height) + 0.5)[:, None] / height - 0.5
        x = (np.arange(width) + 0.5)[None, :] / width - 0.5
        c = c * (1 - tone.corners * (x * x + y * y))[..., None]
    levels = np.where(
        c <= 0.0031308, 12.92 * c, 1.055 * np.maximum(c, 0.0031308) ** (1 / 2.4) - 0.055
    )
    out: Levels = np.clip(np.round(levels * 255 + _dither(c.shape)), 0, 255).astype(np.uint8)
    return out


def png(levels: Levels, words: dict[str, str]) -> bytes:
    """A PNG that says it is sRGB, with words in it; the same levels give the same bytes."""
    from PIL import Image
    from PIL.PngImagePlugin import PngInfo

    written = io.BytesIO()
    info = PngInfo()
    info.add(b"sRGB", b"\0")
    for key, text in words.items():
        info.add_itxt(key, text)
    Image.fromarray(levels).save(written, "PNG", pnginfo=info, compress_level=6)
    return written.getvalue()


def _dither(shape: tuple[int, ...]) -> NDArray[np.float64]:
    """Half a level either way, so that smooth walls do not band; the same in every picture."""
    y, x = np.mgrid[0 : shape[0], 0 : shape[1]]
    v = np.sin((x + 0.5) * 12.9 + (y + 0.5) * 78.2) * 43758.5
    out: NDArray[np.float64] = ((v - np.floor(v)) - 0.5)[..., None] * np.ones(shape[2])
    return out
