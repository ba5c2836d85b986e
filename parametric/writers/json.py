"""JSON files: the same content, the same bytes."""

from __future__ import annotations

import json
from typing import Any


def write_json(content: Any) -> bytes:
    """UTF-8, keys in the order given, two spaces a step, floats at full precision."""
    return (json.dumps(content, ensure_ascii=False, indent=2, allow_nan=False) + "\n").encode()
