"""What the folder of a job and the files in it are called: safe on every file system."""

from __future__ import annotations

import unicodedata

_DEVICES = frozenset(
    ("con", "prn", "aux", "nul", *(f"{d}{n}" for d in ("com", "lpt") for n in range(1, 10)))
)
"""Names that some system keeps for its devices."""


def slug(job: str) -> str:
    """The folder name for a job: words joined by hyphens, small letters.

    A name of which nothing is left is `job`; one that is a device's on some system gets
    `-job` behind it.

    >>> slug("Larch Hill reading room")
    'larch-hill-reading-room'
    """
    # what casefold makes of one letter may be a combination that is one letter again
    return _own(_joined(unicodedata.normalize("NFKC", job).casefold()), "job")


def file_stem(text: str) -> str:
    """A file's name without its ending: words joined by hyphens, capitals kept.

    >>> file_stem("S1 stile with pull, inner edge")
    'S1-stile-with-pull-inner-edge'
    """
    return _own(_joined(text), "piece")


def _own(name: str, instead: str) -> str:
    return f"{name}-{instead}" if name.casefold() in _DEVICES else name or instead


def _joined(text: str) -> str:
    """Words joined by hyphens.

    Accents on Latin letters fall away, other scripts stay, signs and emoji do not.
    """
    letters: list[str] = []
    for letter in unicodedata.normalize("NFKC", text):
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
    return short


def _without_accent(letter: str) -> str:
    bare = unicodedata.normalize("NFKD", letter)
    return bare[0] if bare[0].isascii() else letter
