"""What a proposal says: every word and number of it, ready to be set."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.finishes import ClearTimber, Glass, Metal, Paint

Choice = Paint | ClearTimber | Glass | Metal


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """A thing and what is said of it; nothing said leaves a line to write on."""

    name: str
    text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """One size in plain words, as the page has it."""

    label: str
    value: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Swatches:
    """What may be chosen of one kind; `beside` says what the price is for."""

    heading: str
    beside: str
    choices: tuple[Choice, ...]
    box_each: bool = False
    """Whether there is a box to tick by each."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Dress:
    """What the doors wear where they are pictured."""

    wood: Paint | ClearTimber
    glass: Glass
    metal: Metal


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawingWords:
    """What the drawing of one door, or of the cabinets in one room, says: its head, the floor in words, a key to its lines."""

    head: str
    floor: str
    key: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ProposalContent:
    """A proposal page by page.

    The doors: `job`, `under`, `paragraph` (of more doors than it has room for, `brief`),
    `stamp` (maker, date, revision, mark), and the `caption` of what is pictured. The drawings,
    one a door: `drawings`, and one a room with cabinets: `rooms`; `drawing_under`, captions of
    their views. What you get: `included`,
    `not_included` and `to_agree`, `swatches` with their `sample` note, the `sizes`, `living` with the doors. Yes:
    the `summary`, `ticks`, the `say_it` over the lines to sign on, `not_yet` over lines to
    write on. `code` is the text of the small square code, `code_says` what is said of it.
    `fractions` of an inch are stacked.
    """

    job: str
    under: tuple[str, ...]
    paragraph: str
    brief: str
    stamp: tuple[Pair, ...]
    caption: str
    dress: Dress
    drawings: tuple[DrawingWords, ...]
    rooms: tuple[DrawingWords, ...]
    drawing_under: str
    front: str
    side: str
    shut: str
    opened: str
    above: str
    over_all: str
    plumb: str
    opening: str
    get_head: str
    included_head: str
    included: tuple[str, ...]
    not_included_head: str
    not_included: tuple[str, ...]
    to_agree_head: str
    to_agree: tuple[str, ...]
    swatches: tuple[Swatches, ...]
    sample: str
    sizes_head: str
    sizes: tuple[Size, ...]
    living: tuple[Pair, ...]
    yes_head: str
    summary: tuple[Pair, ...]
    ticks_head: str
    ticks: tuple[str, ...]
    superseded: str
    say_it: str
    sign: tuple[tuple[str, ...], ...]
    not_yet: str
    code: str
    code_says: str
    foot: str
    page: str
    made_with: str
    unprintable: str
    no_name: str
    fractions: bool
