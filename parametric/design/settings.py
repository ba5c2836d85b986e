"""The blocks that a workshop writes once in its house file, and any job may write again."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Literal, TypeVar

from pydantic import ConfigDict, Field, field_validator, model_validator

from parametric.catalog.shop import (
    Accuracy,
    Blanks,
    Clamps,
    Coating,
    Limits,
    Maker,
    Moisture,
    Offcut,
    Paper,
    Router,
    Saw,
    Shop,
)
from parametric.design.layer_names import LayerNamesSpec, layer_names
from parametric.design.places import EyePoint, Place
from parametric.figures import Figure, named, plain
from parametric.loaded import Stiffness
from parametric.names import join
from parametric.written import (
    Block,
    Count,
    Coverage,
    Density,
    Length,
    LengthPair,
    LengthTriple,
    Mass,
    Movement,
    Percent,
    Text,
    Words,
    refuse,
)

_PIECES = Field(description="each wide x thick x long: [150 x 40 x 620, 90 x 40 x 800]")


class MakerSpec(Block):
    """Who makes it."""

    name: Words | None = None
    address: Words | None = None
    phone: Words | None = None


class SheetSpec(Block):
    """What the title block says beside the job."""

    number: Words | None = None
    drawn_by: Words | None = None
    date: Words | None = None


MOST_PLACES = 4
"""Places to stand that a client's phone has room for."""

MOST_WORDS, MOST_LINES, MOST_IN_LINE = 480, 5, 80
"""Letters of a paragraph, lines of a list, letters of each, that a proposal has room for."""


class ClientSpec(Block):
    """Who it is made for, where, what they are told, and from where they look at it."""

    name: Words | None = None
    place: Words | None = None
    words: Words | None = Field(
        default=None, description="a paragraph in your own words for the first page of the proposal"
    )
    included: tuple[Words, ...] | None = Field(
        default=None, description="what the price has beside what is drawn: [delivery, hanging]"
    )
    not_included: tuple[Words, ...] | None = Field(
        default=None, description="what it has not: [work on the wall]"
    )
    from_: dict[str, Place] | None = Field(
        default=None, description="places to stand by name: {the stairs: [standing, 3200, left]}"
    )

    @field_validator("words")
    @classmethod
    def _a_paragraph(cls, words: Text | None) -> Text | None:
        if words is not None and len(words) > MOST_WORDS:
            raise refuse(
                "wrong_value",
                f"The proposal has room for {MOST_WORDS} letters of your words, "
                f"and there are {len(words)}.",
                found=f"{len(words)} letters",
                allowed=f"up to {MOST_WORDS}",
                fix="Say it in fewer words: sizes and finishes stand on the pages that follow.",
            )
        return words

    @field_validator("included", "not_included")
    @classmethod
    def _a_few_lines(cls, lines: tuple[Text, ...] | None) -> tuple[Text, ...] | None:
        if lines is None:
            return None
        longest = max(lines, key=len, default="")
        if len(lines) > MOST_LINES or len(longest) > MOST_IN_LINE:
            raise refuse(
                "wrong_value",
                f"The proposal has room for {MOST_LINES} lines of {MOST_IN_LINE} letters.",
                found=f"{len(lines)} lines, the longest of {len(longest)} letters",
                allowed=f"up to {MOST_LINES} lines of up to {MOST_IN_LINE} letters",
                fix="Put things together or say them shorter.",
            )
        return lines

    @field_validator("from_")
    @classmethod
    def _a_short_list(cls, places: dict[str, EyePoint] | None) -> dict[str, EyePoint] | None:
        if places is not None and len(places) > MOST_PLACES:
            raise refuse(
                "wrong_value",
                f"The client's page has room for {MOST_PLACES} places to stand, "
                f"and there are {len(places)}.",
                found=", ".join(places),
                allowed=f"up to {MOST_PLACES}",
                fix="Keep the places from which the doors are seen most.",
            )
        return places


FINEST_STEP = 0.01
"""mm: the least that a size is printed to."""


class PaperSpec(Block):
    """What is printed on, and to what step."""

    bench_paper: Literal["A4", "letter"]
    drawing_paper: Literal["A3", "A2", "tabloid"]
    print_to: Length = Field(description="sizes of wood are printed to this step")
    print_glass_and_pockets_to: Length = Field(
        description="glass and machine pockets are printed to this step"
    )

    @field_validator("print_to", "print_glass_and_pockets_to")
    @classmethod
    def _a_step(cls, step: Figure) -> Figure:
        if step < FINEST_STEP:
            raise refuse(
                "wrong_value",
                f"A step of {plain(step)} to print to is finer than anything a shop reads.",
                found=plain(step),
                allowed=f"{FINEST_STEP} or more",
                fix="Write 0.5, 0.1 or 1/32.",
            )
        return step


class SawSpec(Block):
    """The table saw, measured."""

    blade: Length = Field(description="diameter")
    most_height: Length = Field(description="of the blade over the table, upright, measured")
    tilts: Literal["left", "right"] = Field(description="which way the blade leans")
    kerf: Length
    dado_set: Length = Field(description="diameter")


class RouterSpec(Block):
    """The cutters that are owned, and what is done in corners that they leave round."""

    cutters: tuple[Length, ...] = Field(
        description="diameters of the cutters you own", min_length=1
    )
    inside_corners: Literal["keep", "relieve"] = Field(
        description="keep: too large a cutter is refused, square ends are chopped by hand; "
        "relieve: the cutter runs on into the corner where it stays hidden"
    )

    @field_validator("cutters")
    @classmethod
    def _a_cutter_has_a_size(cls, cutters: tuple[Figure, ...]) -> tuple[Figure, ...]:
        if not cutters or min(cutters) <= 0:
            raise refuse(
                "wrong_value",
                "A router cutter has a diameter of more than 0.",
                found=", ".join(plain(c) for c in cutters) or "nothing",
                allowed="diameters: [6, 8, 12]",
                fix="Write the diameters that you own.",
            )
        return cutters


class ClampsSpec(Block):
    """The clamps that are owned."""

    owned: Count
    caul: Length = Field(description="width of the cauls; 0 for none")
    glue_minutes: Count = Field(description="how long the glue stays open")


class BlanksSpec(Block):
    """Rough over finished."""

    length: Length
    width: Length
    panel: Length
    panel_planing: Length = Field(description="planed off a panel's thickness once it is glued")
    filler: Length
    waste: Percent
    edge_band_spare: Percent
    sheet_trim: Length = Field(description="off every edge of a full sheet, before it is sawn")
    keep_offcut: LengthPair = Field(description="wide x long: what is left is kept from this size")


class OffcutsSpec(Block):
    """What is left of boards and timbers, and stands in the workshop: under each its pieces."""

    model_config = ConfigDict(extra="allow")

    __pydantic_extra__: dict[str, Annotated[tuple[LengthTriple, ...], _PIECES]]

    @model_validator(mode="after")
    def _a_piece_has_a_size(self) -> OffcutsSpec:
        for material, pieces in self.__pydantic_extra__.items():
            for sizes in pieces:
                if min(sizes) <= 0:
                    raise refuse(
                        "wrong_value",
                        f"An offcut of {material} has no size.",
                        found=" x ".join(map(plain, sizes)),
                        allowed="wide x thick x long, each more than 0",
                        fix="Write its three sizes, or take it out.",
                        where=sizes[0].where,
                    )
        return self


class AccuracySpec(Block):
    """How far each is trusted, plus or minus."""

    reading: Length
    marking: Length
    slot: Length
    clamping: Length
    hanging: Length
    marked: Literal["together", "singly"] = Field(description="together: leaves from one stick")


class MoistureSpec(Block):
    """At the bench, and in the room over a year."""

    made: Percent
    driest: Percent
    dampest: Percent


class LimitsSpec(Block):
    """What this workshop will not go below."""

    groove_wall: Length = Field(description="wood left beside a groove")
    engagement: Length = Field(description="of a panel in its groove at its driest")
    tongue_spare: Length = Field(
        description="a tongue is longer than its deepest engagement by this"
    )
    pocket_wall: Length = Field(description="wood left between pockets back to back")
    behind_slot: Length = Field(description="wood left between a slot's end and the far edge")
    below_guide: Length = Field(description="wood left over the guide groove after site trim")
    passing: Length = Field(description="air kept between leaves that pass")
    uneven_gap: Length = Field(description="a floor gap may grow by this before it is mentioned")
    reach_spare: Percent = Field(description="of a saw's reach, before it is mentioned")
    screw_in_timber: Length = Field(description="least thread in solid timber")
    one_person: Mass = Field(description="the most that one person lifts")


class FinishSpec(Block):
    """What goes on the wood."""

    kind: Literal["paint", "varnish", "oil", "none"]
    colour: Words | None = None
    primer_coats: Count
    top_coats: Count
    primer_covers: Coverage
    top_coat_covers: Coverage
    spare: Percent


class TimberSpec(Block):
    """A timber's own figures, where they are better known than the tool's."""

    density: Density | None = None
    movement: Movement | None = Field(
        default=None, description="across the grain, per cent of the width per cent of moisture"
    )
    stiffness: Stiffness | None = None
    lengths: tuple[Length, ...] | None = Field(
        default=None, description="that the yard sells it in: pieces are planned on them"
    )

    @field_validator("lengths")
    @classmethod
    def _a_board_has_a_length(cls, lengths: tuple[Figure, ...] | None) -> tuple[Figure, ...] | None:
        if lengths is not None and (not lengths or min(lengths) <= 0):
            raise refuse(
                "wrong_value",
                "A length that the yard sells is more than 0.",
                found=", ".join(plain(one) for one in lengths) or "nothing",
                allowed="lengths: [2400, 3000, 3600]",
                fix="Write the lengths that the yard has.",
            )
        return lengths


class BoardSpec(Block):
    """A sheet material's own figures, where they are better known than the tool's."""

    density: Density | None = None
    stiffness: Stiffness | None = None
    sheet: LengthPair | None = Field(default=None, description="long x wide")
    thickness: Length | None = Field(default=None, description="that it is asked for by")
    measured: Length | None = Field(
        default=None, description="what a gauge says it is: what is made of it goes by this"
    )
    grain: Literal["along", "none"] | None = Field(
        default=None, description="none: pieces may be sawn from a sheet either way round"
    )


def _offcuts(block: OffcutsSpec) -> tuple[Offcut, ...]:
    """Every piece that is in stock, named by its material and its place in the list."""
    found = []
    for material, pieces in block.__pydantic_extra__.items():
        for number, sizes in enumerate(pieces, 1):
            place = join("offcuts", f"{material} {number}")
            wide, thick, long = sizes
            found.append(
                Offcut(
                    material=material,
                    width=named(join(place, "width"), wide),
                    thickness=named(join(place, "thickness"), thick),
                    length=named(join(place, "length"), long),
                )
            )
    return tuple(found)


_S = TypeVar("_S", bound=Block)


def make_shop(setting: Callable[[str], Block]) -> Shop:
    """The Shop from its merged blocks.

    Args:
        setting: the block under a heading, all three layers merged.
    """

    def block(kind: str, spec: type[_S]) -> _S:
        found = setting(kind)
        assert isinstance(found, spec)
        return found

    maker = block("maker", MakerSpec)
    paper, saw = block("shop", PaperSpec), block("saw", SawSpec)
    router, clamps, blanks = (
        block("router", RouterSpec),
        block("clamps", ClampsSpec),
        block("blanks", BlanksSpec),
    )
    accuracy, moisture = block("accuracy", AccuracySpec), block("moisture", MoistureSpec)
    finish = block("finish", FinishSpec)
    return Shop(
        maker=Maker(name=maker.name or "", address=maker.address or "", phone=maker.phone or ""),
        paper=Paper(
            bench_paper=paper.bench_paper,
            drawing_paper=paper.drawing_paper,
            print_to=paper.print_to,
            print_glass_and_pockets_to=paper.print_glass_and_pockets_to,
        ),
        saw=Saw(
            blade=saw.blade,
            most_height=saw.most_height,
            tilts=saw.tilts,
            kerf=saw.kerf,
            dado_set=saw.dado_set,
        ),
        router=Router(cutters=router.cutters, inside_corners=router.inside_corners),
        layers=layer_names(block("layer names", LayerNamesSpec)),
        clamps=Clamps(owned=clamps.owned, caul=clamps.caul, glue_minutes=clamps.glue_minutes),
        blanks=Blanks(
            length=blanks.length,
            width=blanks.width,
            panel=blanks.panel,
            panel_planing=blanks.panel_planing,
            filler=blanks.filler,
            waste=blanks.waste,
            edge_band_spare=blanks.edge_band_spare,
            sheet_trim=blanks.sheet_trim,
            keep_offcut=blanks.keep_offcut,
        ),
        offcuts=_offcuts(block("offcuts", OffcutsSpec)),
        accuracy=Accuracy(
            reading=accuracy.reading,
            marking=accuracy.marking,
            slot=accuracy.slot,
            clamping=accuracy.clamping,
            hanging=accuracy.hanging,
            marked=accuracy.marked,
        ),
        moisture=Moisture(made=moisture.made, driest=moisture.driest, dampest=moisture.dampest),
        limits=_limits(block("limits", LimitsSpec)),
        finish=Coating(
            primer_covers=finish.primer_covers,
            top_coat_covers=finish.top_coat_covers,
            spare=finish.spare,
        ),
    )


def _limits(limits: LimitsSpec) -> Limits:
    return Limits(
        groove_wall=limits.groove_wall,
        engagement=limits.engagement,
        tongue_spare=limits.tongue_spare,
        pocket_wall=limits.pocket_wall,
        behind_slot=limits.behind_slot,
        below_guide=limits.below_guide,
        passing=limits.passing,
        uneven_gap=limits.uneven_gap,
        reach_spare=limits.reach_spare,
        screw_in_timber=limits.screw_in_timber,
        one_person=limits.one_person,
    )
