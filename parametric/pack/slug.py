"""The folder name of a job."""

from __future__ import annotations

import unicodedata

_DEVICES = frozenset(
    ("con", "prn", "aux", "nul", *(f"{d}{n}" for d in ("com", "lpt") for n in range(1, 10)))
)
"""Names that some system keeps for its devices."""


def slug(job: str) -> str:
    """The folder name for a job: words joined by hyphens, safe on every file system.

    Accents on Latin letters fall away, other scripts stay, signs and emoji do not. A
    name of which nothing is left is `job`; one that is a device's on some system gets
    `-job` behind it.

    >>> slug("Larch Hill reading room")
    'larch-hill-reading-room'
    """
    letters: list[str] = []
    for letter in unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", job).casefold()):
        if letter.isalnum():
            letters.append(_without_accent(letter))
        elif unicodedata.category(letter) in ("Mn", "Mc") and letters and letters[-1] != "-":
            # A vowel sign belongs to the letter before it; after a Latin one it is an accent.
            letters.append("" if letters[-1].isascii() else letter)
        else:
            letters.append("-")
    words = "-".join(filter(None, "".join(letters).split("-")))
    # 80 bytes leave room for `.NAME.new` within the 255 that file systems allow.
    short = words.encode()[:80].decode(errors="ignore").strip("-")
    if len(short) < len(words) and words[len(short)] != "-" and "-" in short:
        short = short.rpartition("-")[0]
    return f"{short}-job" if short in _DEVICES else short or "job"


def _without_accent(letter: str) -> str:
    bare = unicodedata.normalize("NFKD", letter)
    return bare[0] if bare[0].isascii() else letter
