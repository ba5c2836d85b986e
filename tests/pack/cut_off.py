"""Place a pack and be killed, with no chance to tidy up, at the step whose number is given.

    python -m tests.pack.cut_off FOLDER STEP

A step is anything that changes the disk: making or deleting a folder, renaming,
deleting, or opening a file to write. The interpreter reports each before it is done.
"""

from __future__ import annotations

import os
import signal
import sys
from pathlib import Path

from parametric.pack.placing import place_pack

_CHANGES = frozenset(("os.mkdir", "os.rename", "os.remove", "os.rmdir"))


def main() -> None:
    """Place the second pack of the tests."""
    folder, step = Path(sys.argv[1]), int(sys.argv[2])
    left = step

    def watch(event: str, args: tuple[object, ...]) -> None:
        nonlocal left
        writes = event == "open" and "x" in str(args[1])
        if event in _CHANGES or writes:
            if left == 0:
                os.kill(os.getpid(), signal.SIGKILL)
            left -= 1

    sys.addaudithook(watch)
    placed = place_pack(folder, {"order/timber.csv": b"2", "numbers.json": b"{2}", "new": b"n"})
    sys.exit(0 if placed.written else 1)


if __name__ == "__main__":
    main()
