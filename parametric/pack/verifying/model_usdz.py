"""The model for phones against the parts: as the model for pictures, and glass seen through."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.pack.verifying.dxf_tags import UnreadableError
from parametric.pack.verifying.known import Known, Verdict
from parametric.pack.verifying.model_glb import scene_faults
from parametric.pack.verifying.usdz_file import UsdzFile, read_usdz


def check_usdz(data: bytes, known: Known) -> Verdict:
    """Hold the USDZ file against the parts where they stand shut.

    Args:
        data: the file.
        known: the design.
    """
    try:
        file = read_usdz(data)
    except UnreadableError as error:
        return Verdict(looked_at={}, faults=(f"cannot be read back: {error}",))
    return Verdict(
        looked_at={
            "parts": sum(node.mesh is not None for node in file.scene.nodes),
            "meshes": len(file.scene.skins),
        },
        faults=(*scene_faults(file.scene, known, animated=False), *_covers(file, known)),
    )


def _covers(file: UsdzFile, known: Known) -> Iterator[str]:
    """Glass is seen through, and nothing else is."""
    for part in known.assembly.parts:
        opacity = file.opacities.get(part.name)
        if opacity is not None and (opacity < 1) != (part.material.look == "glass"):
            yield f"{part.name}: covers {opacity:g} of what stands behind it"
