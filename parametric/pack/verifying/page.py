"""The client's page against the model: what is seen there is the model that was read back."""

from __future__ import annotations

import base64
from collections.abc import Mapping

from parametric.pack.verifying.known import Known, Verdict

PAGE = "client/preview.html"


def check_page(files: Mapping[str, bytes], known: Known) -> Verdict:
    """Hold the page that the client opens against the pack's own model and fingerprint.

    Args:
        files: the files of the pack by their path.
        known: the design.
    """
    page = files.get(PAGE)
    if page is None:
        return Verdict(looked_at={}, faults=(f"{PAGE} is missing",))
    models = [data for path, data in files.items() if path.endswith(".glb")]
    held = [data for data in models if base64.b64encode(data) in page]
    faults = [] if held else [f"{PAGE}: does not hold the model of the pack"]
    if known.mark.encode() not in page:
        faults.append(f"{PAGE}: does not carry the fingerprint {known.mark}")
    return Verdict(looked_at={"models": len(held)}, faults=tuple(faults))
