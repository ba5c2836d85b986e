"""A pack of a design with stops: drawings and a model to look at, and nothing to make from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from parametric.pack.verifying.dxf_tags import UnreadableError, read_dxf
from parametric.pack.verifying.known import Verdict

WARNING = "NOT FOR MAKING"
_NEVER = ("cnc", "order", "client", "site")
_MODEL = WARNING.replace(" ", "-")


def check_not_for_making(files: Mapping[str, bytes]) -> Verdict:
    """Every drawing and the model say what they are, and no file is there that one makes from.

    Args:
        files: the files of the pack by their path.
    """
    drawings = [path for path in files if path.startswith("shop/") and path.endswith(".dxf")]
    models = [path for path in files if path.startswith("model/")]
    return Verdict(
        looked_at={"marked": [*drawings, *models]},
        faults=(
            *_made_from(files),
            *_unmarked({path: files[path] for path in drawings}),
            *(f"{path}: its name does not say {_MODEL}" for path in models if _MODEL not in path),
        ),
    )


def _made_from(files: Mapping[str, bytes]) -> Iterator[str]:
    for path in files:
        folder = path.split("/")[0]
        if folder in _NEVER:
            yield f"{path}: the design has stops, and {folder}/ is there to make from"


def _unmarked(drawings: Mapping[str, bytes]) -> Iterator[str]:
    for path, data in drawings.items():
        try:
            file = read_dxf(data)
        except UnreadableError as error:
            yield f"{path}: cannot be read back: {error}"
            continue
        entities = [*file.entities, *(r for block in file.blocks.values() for r in block)]
        said = (r.text(1) for r in entities if r.kind in ("TEXT", "MTEXT", "ATTRIB"))
        if not any(WARNING in text for text in said):
            yield f"{path}: does not say {WARNING}"
