"""The proposal that a client signs on paper: the page's own words and numbers, on four pages, one more for each further door."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from parametric.catalog.finishes import GLASSES, METALS, PLAIN_WOOD, ClearTimber, Paint
from parametric.design.settings import ClientSpec
from parametric.drawing.audit import Finding, audit
from parametric.drawing.proposal import (
    Choice,
    DrawingWords,
    Dress,
    Pair,
    ProposalContent,
    Size,
    Swatches,
    draw_proposal,
    says_anything,
)
from parametric.drawing.sheet import TitleBlock
from parametric.drawing.subject import Subject
from parametric.pack.preview_doors import called, of_door
from parametric.pack.preview_facts import facts
from parametric.pack.proposal_cases import cabinets_paragraph, rooms_words
from parametric.pack.proposal_included import every_door, included, lines
from parametric.pack.proposal_paragraph import (
    floor_words,
    on_paper,
    paragraph,
)
from parametric.resolve.door import Door, Resolved
from parametric.trade.paperwork import Paperwork
from parametric.writers.client_page import Fact, PreviewPage, plain
from parametric.writers.page_markup import words_of
from parametric.writers.page_words import WORDS
from parametric.writers.picture_words import PICTURE_WORDS
from parametric.writers.proposal import picture_shape, picture_words, write_proposal
from parametric.writers.proposal_words import (
    CABINETS_OUTLINE,
    ONE_OUTLINE,
    OUTLINE,
    SIGN,
    proposal_words_of,
)
from parametric.writers.proposal_words import PROPOSAL_WORDS as SAID

_IN_CODE = 80
"""Letters of the job's name that the small square code holds: more make it too fine to read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Proposal:
    """The PDF, how many pages it has, and what the audit of them found."""

    file: bytes
    pages: int
    findings: tuple[Finding, ...]


def proposal(
    job: Subject, page: PreviewPage, paper: Paperwork, *, picture: bytes | None = None
) -> Proposal:
    """Write it.

    Args:
        job: the job.
        page: what the client's page says of it.
        paper: its lists.
        picture: a PNG of the doors; without one they are drawn in its place.
    """
    content = proposal_content(job, page, paper, picture)
    title = TitleBlock(
        owner=page.maker,
        document="Proposal",
        title=page.job,
        second_line="",
        drawn="",
        approved="",
        date=page.revision_date,
        scale="",
        sizes=job.rules.unit_words,
        number="",
        revision=page.revision,
        fingerprint=page.mark,
    )
    shape = None if picture is None else picture_shape(picture)
    pages = draw_proposal(job, content, title, pictured=shape)
    first, drawing, *rest = ONE_OUTLINE if len(page.leaves) == 1 else OUTLINE
    if page.cases:
        first, drawing, *rest = CABINETS_OUTLINE
    drawings = [_of_place(drawing, door) for door in job.resolved.walls]
    drawings += [room.head for room in content.rooms]
    outline = (first, *drawings, *rest)
    found = tuple(finding for one in pages for finding in audit(one.sheet))
    return Proposal(file=write_proposal(pages, outline, picture), pages=len(pages), findings=found)


def proposal_content(
    job: Subject, page: PreviewPage, paper: Paperwork, picture: bytes | None = None
) -> ProposalContent:
    """Every word of it."""
    resolved = job.resolved
    revision = WORDS["revision"].format(page.revision) if page.revision else ""
    mark = WORDS["mark"].format(page.mark)
    short = page.job if len(page.job) <= _IN_CODE else f"{page.job[:_IN_CODE]}…"
    code = "  ".join(word for word in (short, page.revision, page.mark) if word)
    millimetres = page.unit == "mm"
    dress = _dress(page)
    spec = resolved.design.block("client")
    client = spec if isinstance(spec, ClientSpec) else None
    return ProposalContent(
        job=page.job,
        under=tuple(text for text in (page.subtitle, _for_whom(client)) if text),
        paragraph=client.words if client and client.words else _paragraphs(job, page),
        brief=client.words
        if client and client.words
        else _paragraphs(job, page, brief=len(job.each) > 1),
        stamp=_stamp(page),
        caption=_caption(page, dress, picture),
        dress=dress,
        drawings=tuple(_drawing(job.of(door)) for door in resolved.walls),
        rooms=rooms_words(job, page) if page.cases else (),
        drawing_under=SAID["sizes mm" if millimetres else "sizes in"],
        front=SAID["front"],
        side=SAID["side"],
        shut=SAID["shut"],
        opened=SAID["opened"],
        above=SAID["above"],
        over_all=SAID["over all"],
        plumb=SAID["plumb"],
        opening=SAID["opening"],
        get_head=SAID["get"],
        included_head=SAID["included"],
        included=(*included(job, page, paper), *lines(client.included if client else None)),
        not_included_head=SAID["not included"],
        not_included=lines(client.not_included if client else None),
        to_agree_head=SAID["to agree"],
        to_agree=_to_agree(page, client),
        swatches=_swatches(page),
        sample=WORDS["sample"],
        sizes_head=WORDS["sizes"],
        sizes=tuple(
            Size(label=label, value=on_paper(plain(f.value)), note=on_paper(plain(f.note)))
            for label, f in (*((f.label, f) for f in page.facts), *_beside_cabinets(job, page))
        ),
        living=(
            Pair(
                name=SAID["care"],
                text=f"{paper.care.upkeep[0]} {_words(page)['after']}",
            ),
            Pair(name=SAID["seasons"], text=paper.care.seasons[0]),
        ),
        yes_head=WORDS["what"],
        summary=_summary(job.resolved, page, dress),
        ticks_head=SAID["ticks"],
        ticks=tuple(on_paper(plain(tick)) for tick in page.ticks),
        superseded=WORDS["superseded"],
        say_it=words_of(page)["say it"],
        sign=(
            (WORDS["your name"], *SIGN),
            (page.maker if says_anything(page.maker) else SAID["for the maker"], *SIGN),
        ),
        not_yet=WORDS["not yet"],
        code=code,
        code_says=SAID["code"].format(", ".join(code.split("  "))),
        foot=" · ".join(
            word for word in (revision, mark, SAID["unit mm" if millimetres else "unit in"]) if word
        ),
        page=SAID["page"],
        made_with=WORDS["made with"],
        unprintable=SAID["left out"],
        no_name=SAID["no name"].format(page.mark),
        fractions=not millimetres,
    )


def _of_place(words: str, door: Door) -> str:
    """Words that head something of one door; of one of several with its name."""
    name = called(door)
    return SAID["of place"].format(words, name) if name else words


def _words(page: PreviewPage) -> Mapping[str, str]:
    """What is said of its doors, its one door or its cabinets."""
    return proposal_words_of(len(page.leaves), cases=page.cases)


def _paragraphs(job: Subject, page: PreviewPage, *, brief: bool = False) -> str:
    """The doors in a few sentences, one after the other; the cabinets before them."""
    said = [cabinets_paragraph(job.resolved, page, brief=brief)] if page.cases else []
    for one in map(job.of, job.resolved.walls):
        words = paragraph(one.resolved, _facts(one), brief=brief)
        said.append(of_door(one.resolved.door, words))
    return " ".join(said)


def _facts(job: Subject) -> dict[str, Fact]:
    """The sizes that a client is told of one door, by what they are known by."""
    return {fact.key: fact for fact in facts(job.resolved, job.loads)}


def _drawing(job: Subject) -> DrawingWords:
    return DrawingWords(
        head=_of_place(SAID["drawing"], job.resolved.door),
        floor=floor_words(_facts(job)),
        key=_key(job.resolved),
    )


def _key(resolved: Resolved) -> str:
    """What the drawing's lines mean; an opening is dashed where doors stand before it."""
    hanging, said = resolved.door.hanging, proposal_words_of(len(resolved.door.leaves))
    words = (
        (said["key dashed"], hanging.on_wall),
        (SAID["key tracks"], bool(hanging.tracks)),
        (SAID["key hinges"], hanging.swings),
        (said["key arcs"], hanging.swings),
        (SAID["key"], True),
    )
    return " ".join(text for text, wanted in words if wanted)


def _for_whom(client: ClientSpec | None) -> str:
    if client is None:
        return ""
    if client.name and client.place:
        return SAID["for at"].format(client.name, client.place)
    one = client.name or client.place
    return SAID["for"].format(one) if one else ""


def _stamp(page: PreviewPage) -> tuple[Pair, ...]:
    pairs = (
        Pair(name=SAID["maker"], text=page.maker),
        Pair(name=SAID["date"], text=page.revision_date),
        Pair(name=WORDS["said revision"], text=page.revision),
        Pair(name=WORDS["said mark"], text=page.mark),
    )
    return tuple(pair for pair in pairs if pair.text)


def _dress(page: PreviewPage) -> Dress:
    """What they are shown in: what the page shows them in first."""
    palette = page.palette
    return Dress(
        wood=palette.wood_shown,
        glass=next(g for g in GLASSES if g.key == palette.glass),
        metal=next(m for m in METALS if m.key == palette.metal),
    )


def _caption(page: PreviewPage, dress: Dress, picture: bytes | None) -> str:
    """What is pictured, what of it is imagined, and in what it is shown."""
    first = _words(page)["drawn from the front"]
    if picture is not None:
        first = picture_words(picture)
        if PICTURE_WORDS["quick"] not in first:
            imagined = "imagined alone" if len(page.leaves) == 1 else "imagined"
            first = f"{first} {PICTURE_WORDS[imagined]}".strip()
    wood = WORDS["in paint" if isinstance(dress.wood, Paint) else "in timber"]
    worn = [SAID["plain wood"] if dress.wood is PLAIN_WOOD else wood.format(dress.wood.name)]
    worn += [WORDS["in glass"].format(dress.glass.name)] if page.palette.glasses else []
    worn += [WORDS["in metal"].format(dress.metal.name)] if page.palette.metals else []
    said = [first, SAID["shown in"].format(", ".join(worn))]
    if page.palette.named_wood:
        said.append(WORDS["named wood"].format(page.palette.named_wood))
    return " ".join(said)


def _beside_cabinets(job: Subject, page: PreviewPage) -> Iterator[tuple[str, Fact]]:
    """The sizes of doors in walls, which a page of cabinets does not tell, and their labels."""
    for door in job.resolved.walls if page.cases else ():
        for fact in _facts(job.of(door)).values():
            yield of_door(door, fact.label), fact


def _to_agree(page: PreviewPage, client: ClientSpec | None) -> tuple[str, ...]:
    """What the design does not say; who has said what is in the price has said who hangs them."""
    told = client is not None and bool(client.included or client.not_included)
    palette = page.palette
    open_paint = len(palette.quoted_wood) > 1
    said = _words(page)
    return tuple(
        said[key]
        for key, wanted in (
            ("price", True),
            ("dates", True),
            ("hanging", not told),
            ("wall", not told),
            ("colour", open_paint),
            ("kind of glass", bool(palette.glasses) and not palette.quoted_glass),
            ("kind of pull", bool(palette.metals) and not palette.quoted_metal),
        )
        if wanted
    )


def _swatches(page: PreviewPage) -> tuple[Swatches, ...]:
    """Of each kind what the price is for; where it names none, all that the page shows."""
    palette = page.palette
    woods: tuple[Paint | ClearTimber, ...] = (*palette.paints, *palette.timbers)
    quoted = tuple(wood for wood in woods if wood.key in palette.quoted_wood)
    painted = bool(quoted) and isinstance(quoted[0], Paint)
    found = []
    if quoted:
        heading = WORDS["paint" if painted else "timber"]
        found.append(_kind(heading, quoted, palette.quoted_wood, WORDS["any quoted"]))
    if palette.glasses:
        found.append(_kind(WORDS["glass"], palette.glasses, palette.quoted_glass))
    if palette.metals:
        found.append(_kind(WORDS["metal"], palette.metals, palette.quoted_metal))
    return tuple(found)


def _kind(
    heading: str, choices: tuple[Choice, ...], quoted: tuple[str, ...], any_of: str = ""
) -> Swatches:
    shown = tuple(choice for choice in choices if choice.key in quoted) or choices
    beside = WORDS["none named"] if not quoted else WORDS["quoted"]
    if len(quoted) > 1:
        beside = any_of
    return Swatches(heading=heading, beside=beside, choices=shown, box_each=len(shown) > 1)


def _summary(resolved: Resolved, page: PreviewPage, dress: Dress) -> tuple[Pair, ...]:
    """What is said yes to, as the page repeats it."""
    when = page.revision
    if page.revision and page.revision_date:
        when = WORDS["said of"].format(page.revision, page.revision_date)
    rows = [
        Pair(name=WORDS["said revision"], text=when),
        Pair(name=WORDS["said mark"], text=page.mark),
        Pair(name=words_of(page)["said thing"], text=on_paper(plain(page.thing))),
    ]
    if page.cases:
        text = "; ".join(every_door(resolved))
        rows.append(Pair(name=SAID["doors beside"], text=on_paper(text)))
    rows = [row for row in rows if row.text]
    return (*rows, *_chosen(page, dress))


def _chosen(page: PreviewPage, dress: Dress) -> tuple[Pair, ...]:
    """In what they are made: what is quoted, or a line to write on."""
    palette = page.palette
    if palette.named_wood:
        wood = Pair(name=WORDS["said finish"], text=palette.named_wood)
    elif len(palette.quoted_wood) == 1:
        words = WORDS["in paint" if isinstance(dress.wood, Paint) else "in timber"]
        wood = Pair(name=WORDS["said finish"], text=words.format(dress.wood.name))
    else:
        wood = Pair(name=WORDS["paint"])
    rows = [wood]
    for kind, names, quoted, chosen in (
        ("glass", palette.glasses, palette.quoted_glass, dress.glass.name),
        ("metal", palette.metals, palette.quoted_metal, dress.metal.name),
    ):
        if names:
            text = WORDS[f"in {kind}"].format(chosen) if quoted else ""
            rows.append(Pair(name=WORDS[kind], text=text))
    return tuple(rows)
