"""A layer of USD text read back: prims in one another, what is said of each and what each holds.

Only what a model of solid pieces needs is known; whatever else stands in a layer is
refused, not passed over.

Source: the text grammar of USD layers (openusd.org, from memory).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from parametric.pack.verifying.dxf_tags import UnreadableError

_TOKEN = re.compile(
    r"""\s*(?:
    (?P<numbers>\[[-+0-9.eE,()\s]+\])
  | (?P<text>"(?:\\.|[^"\\\n])*")
  | <(?P<path>[^<>\n]*)>
  | (?P<number>[-+]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][-+]?[0-9]+)?(?![\w.]))
  | (?P<word>[A-Za-z_][\w:.]*(?:\[\])?)
  | (?P<sign>[(){}\[\]=;,])
  | (?P<end>\Z)
    )""",
    re.VERBOSE,
)
_ESCAPED = re.compile(r"\\(x[0-9a-fA-F]{2}|.)")
_KINDS = ("def", "class")
_BEFORE = ("uniform", "custom", "prepend")


class Path(str):
    """A place in a layer, told from text."""

    __slots__ = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Prim:
    """One prim; a layer is one without a name. What is said of an attribute is held too,
    under the attribute's name and its own: `normals interpolation`.
    """

    kind: str = ""
    type: str = ""
    name: str = ""
    said: dict[str, Any] = field(default_factory=dict)
    held: dict[str, Any] = field(default_factory=dict)
    children: dict[str, Prim] = field(default_factory=dict)


def read_layer(text: str) -> Prim:
    """Read a layer.

    Raises:
        UnreadableError: it is none, or says something that is not known here.
    """
    if not text.startswith("#usda 1.0\n"):
        raise UnreadableError("no layer of USD text")
    tokens = _Tokens(text.removeprefix("#usda 1.0"))
    layer = Prim()
    if tokens.next_is("("):
        layer.said.update(_entries(tokens, ")"))
    while not tokens.at_end:
        _add(layer, _prim(tokens))
    return layer


class _Tokens:
    """The words and signs of a layer, one at a time."""

    def __init__(self, text: str) -> None:
        self._all = self._cut(text)
        self._now = next(self._all)

    @staticmethod
    def _cut(text: str) -> Iterator[tuple[str, str]]:
        at = 0
        while True:
            found = _TOKEN.match(text, at)
            if found is None or found.lastgroup is None:
                raise UnreadableError(f"cannot be read at {text[at : at + 30].strip()!r}")
            yield found.lastgroup, found[found.lastgroup]
            if found.lastgroup == "end":
                return
            at = found.end()

    @property
    def at_end(self) -> bool:
        return self._now[0] == "end"

    def take(self, kind: str) -> str:
        """The next token, which must be of a kind."""
        found, text = self._now
        if found != kind:
            raise UnreadableError(f"a {kind} was due where {text[:30]!r} stands")
        if kind != "end":
            self._now = next(self._all, ("end", ""))
        return text

    def next_is(self, sign: str) -> bool:
        """Take a sign if it is the next."""
        if self._now == ("sign", sign):
            self.take("sign")
            return True
        return False

    def must_be(self, sign: str) -> None:
        if not self.next_is(sign):
            raise UnreadableError(f"a {sign} was due where {self._now[1][:30]!r} stands")

    def kind(self) -> str:
        return self._now[0]

    def text(self) -> str:
        return self._now[1]


def _prim(tokens: _Tokens) -> Prim:
    kind, of_type = tokens.take("word"), tokens.take("word")
    if kind not in _KINDS:
        raise UnreadableError(f"a {kind} stands in the layer")
    prim = Prim(kind=kind, type=of_type, name=_unquoted(tokens.take("text")))
    if tokens.next_is("("):
        prim.said.update(_entries(tokens, ")"))
    tokens.must_be("{")
    while not tokens.next_is("}"):
        if tokens.text() in _KINDS:
            _add(prim, _prim(tokens))
        else:
            _attribute(tokens, prim)
    return prim


def _add(parent: Prim, child: Prim) -> None:
    if child.name in parent.children:
        raise UnreadableError(f"{child.name} stands twice in one place")
    parent.children[child.name] = child


def _attribute(tokens: _Tokens, prim: Prim) -> None:
    """A typed value, a relation, or a bare output."""
    while tokens.text() in _BEFORE:
        tokens.take("word")
    tokens.take("word")
    name = tokens.take("word")
    if name in prim.held:
        raise UnreadableError(f"{prim.name} holds {name} twice")
    prim.held[name] = _value(tokens) if tokens.next_is("=") else None
    if tokens.next_is("("):
        for said, value in _entries(tokens, ")"):
            prim.held[f"{name} {said}"] = value


def _entries(tokens: _Tokens, closing: str, *, typed: bool = False) -> Iterator[tuple[str, Any]]:
    while not tokens.next_is(closing):
        if tokens.text() in _BEFORE:
            tokens.take("word")
        if typed:
            tokens.take("word")
        name = tokens.take("word")
        tokens.must_be("=")
        yield name, _value(tokens)
        tokens.next_is(";")


def _value(tokens: _Tokens) -> Any:
    match tokens.kind():
        case "numbers":
            text = tokens.take("numbers").translate(str.maketrans("[](),", "     "))
            return np.array(text.split(), dtype=float)
        case "text":
            return _unquoted(tokens.take("text"))
        case "path":
            return Path(tokens.take("path"))
        case "number":
            return float(tokens.take("number"))
        case "word":
            word = tokens.take("word")
            return {"true": True, "false": False}[word]
        case _:
            return _gathered(tokens)


def _gathered(tokens: _Tokens) -> Any:
    """A list, a tuple or a dictionary."""
    if tokens.next_is("{"):
        return dict(_entries(tokens, "}", typed=True))
    for opening, closing in ("[]", "()"):
        if tokens.next_is(opening):
            found: list[Any] = []
            while not tokens.next_is(closing):
                found.append(_value(tokens))
                tokens.next_is(",")
            return found
    raise UnreadableError(f"a value was due where {tokens.text()[:30]!r} stands")


def _unquoted(text: str) -> str:
    def sign(found: re.Match[str]) -> str:
        return chr(int(found[1][1:], 16)) if len(found[1]) == 3 else found[1]

    return _ESCAPED.sub(sign, text[1:-1])
