"""Solids kept between runs: a folder of kernel files named by what they hold.

An entry is the sha256 of the kernel's binary shape followed by the shape. It is found
again only under the same blank and cuts, the same shape-making code and the same kernel;
a torn or altered entry is passed over and built anew. The cache is a convenience: where
its folder cannot be read or written, solids are simply built.
"""

from __future__ import annotations

import functools
import hashlib
import io
import os
import tempfile
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

import OCP
import platformdirs
from OCP.BinTools import BinTools, BinTools_FormatVersion
from OCP.TopoDS import TopoDS_Shape, TopoDS_Solid

from parametric import model, outlines, paths, runs, sections
from parametric.solids import moulding, outline, rough, shape, tools

LARGEST = 64 * 1024 * 1024
"""How much the folder may hold, bytes."""

ENDING = ".solid"
_DIGEST = hashlib.sha256().digest_size


@dataclass(frozen=True, slots=True, kw_only=True)
class Cache:
    """A folder of solids, holding `largest` bytes at most."""

    folder: Path
    largest: int = LARGEST

    def find(self, key: str, volume: float) -> TopoDS_Solid | None:
        """The solid kept under a shape key, or None.

        Args:
            key: see `model.shape_key`.
            volume: what the solid must measure, mm3.
        """
        path = self._path(key)
        try:
            held = path.read_bytes()
        except OSError:
            return None
        seal, content = held[:_DIGEST], held[_DIGEST:]
        if hashlib.sha256(content).digest() != seal:
            return None
        read = TopoDS_Shape()
        BinTools.Read_s(read, io.BytesIO(content))
        found = shape.solids_in(read)
        if len(found) != 1 or not shape.measures(found[0], volume):
            return None
        with suppress(OSError):
            os.utime(path)
        return found[0]

    def keep(self, key: str, solid: TopoDS_Solid) -> None:
        """Put a solid in the folder, whole or not at all."""
        stream = io.BytesIO()
        version = BinTools_FormatVersion.BinTools_FormatVersion_CURRENT
        BinTools.Write_s(solid, stream, False, False, version)
        content = stream.getvalue()
        with suppress(OSError):
            self.folder.mkdir(parents=True, exist_ok=True)
            handle, aside = tempfile.mkstemp(dir=self.folder)
            try:
                with os.fdopen(handle, "wb") as file:
                    file.write(hashlib.sha256(content).digest() + content)
                Path(aside).replace(self._path(key))
            except BaseException:
                Path(aside).unlink(missing_ok=True)
                raise

    def trim(self) -> None:
        """Throw out what was used longest ago until the folder is within its size."""
        with suppress(OSError):
            entries = sorted(self._entries(), key=lambda entry: entry[0], reverse=True)
            held = 0
            for _, size, path in entries:
                held += size
                if held > self.largest:
                    path.unlink(missing_ok=True)

    def _entries(self) -> Iterator[tuple[float, int, Path]]:
        for path in self.folder.glob(f"*{ENDING}"):
            status = path.stat()
            yield status.st_mtime, status.st_size, path

    def _path(self, key: str) -> Path:
        return self.folder / (hashlib.sha256((key + _made_by()).encode()).hexdigest() + ENDING)


def user_cache() -> Cache:
    """The cache in the user's own cache folder."""
    return Cache(folder=platformdirs.user_cache_path("stilewright", appauthor=False) / "solids")


@functools.cache
def _made_by() -> str:
    """Which code and which kernel make shapes.

    The code speaks for itself instead of a version number, so that a change to it
    cannot be forgotten.
    """
    modules = (model, outlines, paths, runs, sections, moulding, outline, rough, shape, tools)
    sources = [Path(module.__file__ or "") for module in modules]
    code = hashlib.sha256(b"".join(path.read_bytes() for path in sources)).hexdigest()
    return f" {code} {OCP.__version__}"
