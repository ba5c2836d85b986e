"""The block that says how layers of machine files are named: its keys, and what is refused.

A name must read back in one way only, and fit every reader.
"""

from __future__ import annotations

import itertools
import re
from typing import Literal, Self, cast, get_args

from pydantic import Field, field_validator, model_validator

from parametric.catalog.layer_names import LONGEST, LayerNames, Said
from parametric.written import Block, Text, Words, refuse

_Order = Literal[
    "kind depth",
    "depth kind",
    "kind depth cutter",
    "kind cutter depth",
    "depth kind cutter",
    "depth cutter kind",
    "cutter kind depth",
    "cutter depth kind",
]
_BETWEEN = {"underscore": "_", "hyphen": "-", "nothing": ""}
_SIGNS = {"point": ".", "p": "p", "hyphen": "-", "underscore": "_"}
_WORDS = ("slot", "pocket", "groove", "bore", "through", "stock", "datum", "notes")
_TAKEN = ("defpoints",)
"""Layer names that readers of DXF keep for themselves; so is 0, which is no word."""
_DEEPEST, _WIDEST = "999.999999", "99.999999"


class LayerNamesSpec(Block):
    """How the layers of machine files are named."""

    order: _Order = Field(description="what a name says, from left to right")
    between: Literal["underscore", "hyphen", "nothing"]
    depth_mark: Words = Field(description="letters before the depth, or none")
    cutter_mark: Words = Field(description="letters before the cutter's diameter, or none")
    decimal_sign: Literal["point", "p", "hyphen", "underscore"]
    slot: Words
    pocket: Words
    groove: Words
    bore: Words
    through: Words = Field(description="a cut right through: its name has no depth")
    stock: Words
    datum: Words
    notes: Words

    @field_validator("depth_mark", "cutter_mark")
    @classmethod
    def _a_mark(cls, mark: Text) -> Text:
        if not re.fullmatch(r"[A-Za-z]{1,4}", mark):
            raise refuse(
                "wrong_value",
                f'"{{key}}" takes up to four letters, or none; "{mark}" is neither.',
                found=str(mark),
                allowed="letters, as d; or none",
            )
        return mark

    @field_validator(*_WORDS)
    @classmethod
    def _a_word(cls, word: Text) -> Text:
        if not re.fullmatch(r"[A-Za-z](?:[A-Za-z_-]*[A-Za-z])?", word):
            raise refuse(
                "wrong_value",
                f'"{word}" cannot stand in a layer name: a figure in it would be read as a size.',
                found=str(word),
                allowed="letters without accents, and _ or - between them",
            )
        if word.casefold() in _TAKEN:
            raise refuse(
                "wrong_value",
                f'Programs keep the layer "{word}" for themselves.',
                found=str(word),
                allowed="another word",
            )
        return word

    @model_validator(mode="after")
    def _one_reading(self) -> Self:
        self._words_apart()
        self._numbers_apart()
        self._short_enough()
        return self

    def _words_apart(self) -> None:
        """Readers of DXF take capitals and small letters for the same."""
        for one, other in itertools.combinations(_WORDS, 2):
            word = getattr(self, other)
            if getattr(self, one).casefold() == word.casefold():
                raise refuse(
                    "layers_not_told_apart",
                    f'"{one}" and "{other}" would both be drawn on layer "{word}".',
                    found=str(word),
                    allowed="a word of its own for each",
                    where=self.line(other),
                )

    def _numbers_apart(self) -> None:
        """The end of one number must not be the beginning of the next, nor of a word."""
        names = layer_names(self)
        between = f"decimal sign: {self.decimal_sign}", f"between: {self.between}"
        if names.decimal_sign == names.between:
            raise refuse(
                "layers_not_told_apart",
                f"With {' and '.join(between)}, 14.2 deep would read as two sizes.",
                found=between[0],
                allowed="another sign than stands between the words",
                where=self.line("decimal sign"),
            )
        for first, second in itertools.pairwise(names.order):
            mark = {"depth": names.depth_mark, "cutter": names.cutter_mark}.get(second, "x")
            runs_on = not mark or mark.startswith(names.decimal_sign)
            if first != "kind" and not names.between and runs_on:
                key = f"{second} mark"
                raise refuse(
                    "layers_not_told_apart",
                    f"Nothing parts the {first} from the {second} in a layer name.",
                    found=f"between: {self.between}, {key}: {self.depth_mark if second == 'depth' else self.cutter_mark}",
                    allowed="letters before the second size, or an underscore between them",
                    where=self.line(key),
                )

    def _short_enough(self) -> None:
        names = layer_names(self)
        numbers = {"depth": names.depth_mark + _DEEPEST, "cutter": names.cutter_mark + _WIDEST}
        for key in _WORDS:
            sizes = [numbers[part] for part in names.order if part != "kind"]
            if key == "through":
                sizes = [numbers["cutter"]] if "cutter" in names.order else []
            if key in ("stock", "datum", "notes"):
                sizes = []
            longest = len(names.between.join([getattr(self, key), *sizes]))
            if longest > LONGEST:
                raise refuse(
                    "layer_name_too_long",
                    f'A layer name with "{getattr(self, key)}" in it can come to {longest} letters; '
                    f"older readers take {LONGEST}.",
                    found=str(getattr(self, key)),
                    allowed=f"{len(getattr(self, key)) - longest + LONGEST} letters or fewer",
                    where=self.line(key),
                )


def layer_names(spec: LayerNamesSpec) -> LayerNames:
    """The naming as it is used."""
    parts = tuple(spec.order.split())
    assert set(parts) <= set(get_args(Said))
    return LayerNames(
        order=cast("tuple[Said, ...]", parts),
        between=_BETWEEN[spec.between],
        depth_mark=_letters(spec.depth_mark),
        cutter_mark=_letters(spec.cutter_mark),
        decimal_sign=_SIGNS[spec.decimal_sign],
        slot=str(spec.slot),
        pocket=str(spec.pocket),
        groove=str(spec.groove),
        bore=str(spec.bore),
        through=str(spec.through),
        stock=str(spec.stock),
        datum=str(spec.datum),
        notes=str(spec.notes),
    )


def _letters(mark: str) -> str:
    return "" if mark == "none" else str(mark)
