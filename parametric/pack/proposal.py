"""The proposal that a client signs on paper: the page's own words and numbers, on four pages, one more for each further door."""

from __future__ import annotations

from collections.abc import Sequence
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
from parametric.infill.glass import Pane
from parametric.pack.door_words import (
    alike,
    door_names,
)
from parametric.pack.page_lengths import glass_amount, true_amount, wood_amount
from parametric.pack.preview_doors import called, of_door
from parametric.pack.preview_facts import facts
from parametric.pack.proposal_paragraph import (
    count,
    floor_words,
    joined,
    on_paper,
    paragraph,
    wood_words,
)
from parametric.resolve.door import Door, Resolved
from parametric.resolve.leaf import Leaf
from parametric.trade.paperwork import Paperwork
from parametric.writers.client_page import Fact, PreviewPage, plain
from parametric.writers.page_markup import words_of
from parametric.writers.page_words import WORDS
from parametric.writers.picture_words import PICTURE_WORDS
from parametric.writers.proposal import picture_shape, picture_words, write_proposal
from parametric.writers.proposal_words import ONE_OUTLINE, OUTLINE, SIGN, proposal_words_of
from parametric.writers.proposal_words import PROPOSAL_WORDS as SAID

_IN_CODE = 80
"""Letters of the job's name that the small square code holds: more make it too fine to read."""
_HUNG_BY = ("track", "hanger", "guide", "hinge", "hinges", "pivot", "lock", "latch", "bolt")
"""The last word of a line of the hardware list that doors are hung or held by."""


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
    drawings = [_of_place(drawing, door) for door in job.resolved.walls]
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
        paragraph=client.words if client and client.words else _paragraphs(job),
        brief=client.words
        if client and client.words
        else _paragraphs(job, brief=len(job.each) > 1),
        stamp=_stamp(page),
        caption=_caption(page, dress, picture),
        dress=dress,
        drawings=tuple(_drawing(job.of(door)) for door in resolved.walls),
        drawing_under=SAID["sizes mm" if millimetres else "sizes in"],
        front=SAID["front"],
        side=SAID["side"],
        shut=SAID["shut"],
        opened=SAID["opened"],
        over_all=SAID["over all"],
        plumb=SAID["plumb"],
        opening=SAID["opening"],
        get_head=SAID["get"],
        included_head=SAID["included"],
        included=(*_included(resolved, paper), *_lines(client.included if client else None)),
        not_included_head=SAID["not included"],
        not_included=_lines(client.not_included if client else None),
        to_agree_head=SAID["to agree"],
        to_agree=_to_agree(page, client),
        swatches=_swatches(page),
        sample=WORDS["sample"],
        sizes_head=WORDS["sizes"],
        sizes=tuple(
            Size(label=f.label, value=on_paper(plain(f.value)), note=on_paper(plain(f.note)))
            for f in page.facts
        ),
        living=(
            Pair(
                name=SAID["care"],
                text=f"{paper.care.upkeep[0]} {proposal_words_of(len(page.leaves))['after']}",
            ),
            Pair(name=SAID["seasons"], text=paper.care.seasons[0]),
        ),
        yes_head=WORDS["what"],
        summary=_summary(page, dress),
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


def _paragraphs(job: Subject, *, brief: bool = False) -> str:
    """The doors in a few sentences, one after the other."""
    return " ".join(
        of_door(one.resolved.door, paragraph(one.resolved, _facts(one), brief=brief))
        for one in job.each
    )


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
    first = SAID["drawn from the front"]
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


def _included(resolved: Resolved, paper: Paperwork) -> tuple[str, ...]:
    """What the drawing and the lists of this revision hold."""
    found = [
        of_door(door, words)
        for door in resolved.doors
        for words in _doors_included(resolved.of(door))
    ]
    panes = [pane for leaf in resolved.leaves for lite in leaf.lites for pane in lite.panes]
    if panes:
        how_many = count(len(panes), SAID["lite"]).capitalize()
        found.append(_glass(resolved, panes[0], how_many))
    counts = {item.what: int(float(item.number)) for item in paper.hardware if item.unit == "off"}
    for what, number in counts.items():
        if what.endswith("pull"):
            found.append(count(number, what).capitalize())
    hung = [count(counts[what], what) for what in counts if what.split()[-1] in _HUNG_BY]
    if hung:
        listed = ", ".join(hung[:-1])
        found.append(
            SAID["hardware"].format(joined([w for w in (listed, hung[-1]) if w]).capitalize())
        )
    found.append(_coats(paper))
    return tuple(on_paper(text) for text in found)


def _glass(resolved: Resolved, pane: Pane, how_many: str) -> str:
    """How many panes of what, and how thick: as it is sold, and as it measures where that differs."""
    if pane.unit is not None:
        build = (glass_amount(resolved, size).text for size in pane.unit)
        return SAID["glass unit"].format(how_many, pane.kind, *build)
    thick = glass_amount(resolved, pane.nominal).text
    if pane.true_differs:
        true = true_amount(resolved, pane.thickness).text
        return SAID["glass true"].format(how_many, pane.kind, thick, true)
    return SAID["glass"].format(how_many, pane.kind, thick)


def _doors_included(resolved: Resolved) -> tuple[str, ...]:
    """The doors by their size."""
    door = resolved.door
    wood, several = wood_words(resolved), len(door.leaves)

    def sizes(leaf: Leaf) -> list[str]:
        figures = (leaf.width, leaf.height, leaf.thickness)
        return [wood_amount(resolved, figure).text for figure in figures]

    if several > 1 and not alike(door):
        return tuple(
            SAID["one door"].format(which, *sizes(leaf), wood)
            for leaf, which in zip(door.leaves, door_names(door).which, strict=True)
        )
    how_many = count(several, SAID["door"]).capitalize()
    words = SAID["one door" if several == 1 else "doors"]
    return (words.format(how_many, *sizes(door.leaves[0]), wood),)


def _coats(paper: Paperwork) -> str:
    finish = paper.finish
    if not finish.coats:
        return SAID["bare"]
    numbers = [count(int(float(coat.coats)), "coat") for coat in finish.coats]
    if len(numbers) == 2:
        said = SAID["paint coats"].format(*numbers)
    else:
        said = SAID["coats"].format(numbers[0], finish.kind)
    words = said[0].upper() + said[1:]
    return f"{words}: {finish.colour}" if finish.colour else words


def _lines(written: Sequence[str] | None) -> tuple[str, ...]:
    """A maker's list, each line with a capital as the rest has it."""
    return tuple(f"{line[:1].upper()}{line[1:]}" for line in written or ())


def _to_agree(page: PreviewPage, client: ClientSpec | None) -> tuple[str, ...]:
    """What the design does not say; who has said what is in the price has said who hangs them."""
    told = client is not None and bool(client.included or client.not_included)
    palette = page.palette
    open_paint = len(palette.quoted_wood) > 1
    said = proposal_words_of(len(page.leaves))
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


def _summary(page: PreviewPage, dress: Dress) -> tuple[Pair, ...]:
    """What is said yes to, as the page repeats it."""
    when = page.revision
    if page.revision and page.revision_date:
        when = WORDS["said of"].format(page.revision, page.revision_date)
    rows = [
        Pair(name=WORDS["said revision"], text=when),
        Pair(name=WORDS["said mark"], text=page.mark),
        Pair(name=words_of(page)["said thing"], text=on_paper(plain(page.thing))),
    ]
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
