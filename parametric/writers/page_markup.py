"""The markup of the client's page: its frame, and each panel of its tray."""

from __future__ import annotations

import html
import re

from parametric.catalog.finishes import (
    ClearGlass,
    ClearTimber,
    Glass,
    Metal,
    Paint,
    VeiledGlass,
)
from parametric.writers.client_page import Amount, Fact, OwnPlace, Palette, PreviewPage, Saying
from parametric.writers.page_words import (
    CASE_SLIP_WORDS,
    CASE_WORDS,
    MOVED_WORDS,
    NO_WAY_WORDS,
    ONE_SLIP_WORDS,
    ONE_WORDS,
    SLIP_WORDS,
    WORDS,
)

_FRACTION = re.compile("[0-9]+\u2044[0-9]+")


def words_of(page: PreviewPage) -> dict[str, str]:
    """What the page says of itself: of doors that slide, or what it says otherwise."""
    if page.cases:
        return WORDS | CASE_WORDS
    alone = ONE_WORDS[page.moves] if len(page.leaves) == 1 else {}
    through = NO_WAY_WORDS if page.clear_way is None else {}
    return WORDS | MOVED_WORDS[page.moves] | alone | through


def slip_words_of(page: PreviewPage) -> dict[str, str]:
    """The words of the slip that the page writes, of its doors, its one door or its cases."""
    if page.cases:
        return CASE_SLIP_WORDS
    return ONE_SLIP_WORDS if len(page.leaves) == 1 else SLIP_WORDS


def text_of(text: str) -> str:
    """Text that cannot become markup."""
    return html.escape(text, quote=True)


def figures_of(text: str) -> str:
    """Text with its fractions set as fractions."""
    return _FRACTION.sub(r'<span class="fraction">\g<0></span>', text_of(text))


def saying_of(saying: Saying) -> str:
    """A saying with each number under its name."""
    return "".join(
        figures_of(piece)
        if isinstance(piece, str)
        else f'<span data-figure="{text_of(piece.figure)}">{figures_of(piece.text)}</span>'
        for piece in saying
    )


def colour_of(written: str) -> str:
    """A colour, if it is one."""
    if not re.fullmatch("#[0-9a-fA-F]{6}", written):
        message = f"a colour is # and six hex digits, not {written!r}"
        raise ValueError(message)
    return written.lower()


def facts_list(facts: tuple[Fact, ...]) -> str:
    """Each size as a row: one that can be seen in the picture is a button."""
    return "".join(_fact(fact, index) for index, fact in enumerate(facts))


def _fact(fact: Fact, index: int) -> str:
    note = f"<small>{saying_of(fact.note)}</small>" if fact.note else ""
    body = f"<span>{figures_of(fact.label)}</span><b>{saying_of(fact.value)}</b>{note}"
    if fact.chalk:
        return (
            f'<li><button type="button" data-fact="{index}" aria-pressed="false">{body}'
            "</button></li>\n"
        )
    return f"<li><div>{body}</div></li>\n"


def places_list(places: tuple[OwnPlace, ...]) -> str:
    """The client's own places to stand, or a sofa."""
    own = [
        (
            f"own {index}",
            WORDS["own place"].format(place.name),
            WORDS[f"{'seated' if place.seated else 'standing'} {place.side}"],
        )
        for index, place in enumerate(places)
    ] or [("sofa", WORDS["sofa"], WORDS["sofa how"])]
    return "\n".join(
        f'<label><input type="radio" name="place" value="{key}">'
        f'<span dir="auto">{text_of(name)}</span><small>{text_of(how)}</small></label>'
        for key, name, how in own
    )


def beyond_of(page: PreviewPage) -> str:
    """The room behind the doors, where one may stand; casework has a wall behind it."""
    if page.niche is not None:
        return ""
    return (
        '<label><input type="radio" name="place" value="beyond">'
        f"<span>{text_of(WORDS['beyond'])}</span><small>{text_of(WORDS['beyond how'])}</small></label>\n"
    )


def all_of(page: PreviewPage) -> str:
    """The button that opens all leaves or shuts them, where all of them may stand open at once."""
    if not page.all_open:
        return ""
    return f'<button type="button" id="all">{text_of(WORDS["open all"])}</button>\n'


def inside_of(hides: bool) -> str:
    """The switch that shows what is behind boards and doors, where the model has any that hide it."""
    if not hides:
        return ""
    return (
        '<label><input type="checkbox" id="inside" autocomplete="off">'
        f"<span>{text_of(WORDS['inside'])}</span></label>\n"
    )


def finish_panel(palette: Palette) -> str:
    """Swatches: paints, clear timbers, glass, metals."""
    any_paint = {paint.key for paint in palette.paints} <= set(palette.quoted_wood)
    groups = (
        _swatches(
            "wood",
            WORDS["paint"],
            tuple((p.key, p.name, _swatch(p)) for p in palette.paints),
            () if any_paint else palette.quoted_wood,
            palette.wood,
            WORDS["any quoted"] if any_paint and palette.paints else "",
        ),
        _swatches(
            "wood",
            WORDS["timber"],
            tuple((t.key, t.name, _swatch(t)) for t in palette.timbers),
            palette.quoted_wood,
            palette.wood,
        ),
        _swatches(
            "glass",
            WORDS["glass"],
            tuple((g.key, g.name, _swatch(g)) for g in palette.glasses),
            palette.quoted_glass,
            palette.glass,
            "" if palette.quoted_glass else WORDS["none named"],
        ),
        _swatches(
            "metal",
            WORDS["metal"],
            tuple((m.key, m.name, _swatch(m)) for m in palette.metals),
            palette.quoted_metal,
            palette.metal,
            "" if palette.quoted_metal else WORDS["none named"],
        ),
    )
    named = (
        f'<p class="note">{text_of(WORDS["named wood"].format(palette.named_wood))}</p>'
        if palette.named_wood
        else ""
    )
    return "".join(groups) + named + f'<p class="note">{text_of(WORDS["sample"])}</p>'


def _swatches(
    group: str,
    heading: str,
    chips: tuple[tuple[str, str, str], ...],
    quoted: tuple[str, ...],
    chosen: str,
    beside: str = "",
) -> str:
    if not chips:
        return ""
    small = f" <small>{text_of(beside)}</small>" if beside else ""
    four = " four" if len(chips) % 4 == 0 else ""
    return (
        f'<fieldset><legend>{text_of(heading)}{small}</legend><div class="chips{four}">'
        + "".join(
            f'<label class="chip"><input type="radio" name="{group}" value="{text_of(key)}"'
            f"{' checked' if key == chosen else ''}>"
            f'<i style="background:{swatch}"></i>'
            f"<span>{text_of(name)}"
            + (f" <small>{text_of(WORDS['quoted'])}</small>" if key in quoted else "")
            + "</span></label>"
            for key, name, swatch in chips
        )
        + "</div></fieldset>"
    )


def _swatch(what: Paint | ClearTimber | Glass | Metal) -> str:
    """A background that tells one from the other; the picture shows the thing itself."""
    match what:
        case Paint():
            return colour_of(what.colour)
        case ClearTimber():
            light, dark = colour_of(what.early), colour_of(what.late)
            fine, wide = what.ring * 1.3, what.ring * 4.1
            return (
                f"repeating-linear-gradient(88deg,{dark}55 0 1px,transparent 1px {fine:.1f}px),"
                f"repeating-linear-gradient(91deg,{dark}44 0 2px,transparent 3px {wide:.1f}px),"
                f"{light}"
            )
        case ClearGlass() if what.body < 0.3:
            return "linear-gradient(125deg,#e4efeb 44%,#fff 45% 53%,#dde9e5 54%)"
        case ClearGlass():
            colour = colour_of(what.colour)
            return f"linear-gradient(125deg,{colour}c0 44%,{colour}90 45% 53%,{colour}cc 54%)"
        case VeiledGlass() if what.reed:
            return "repeating-linear-gradient(90deg,#c3d0cc 0 2px,#f6faf9 5px 7px,#c3d0cc 10px)"
        case VeiledGlass():
            return "linear-gradient(#dbe4e1,#eff3f2)"
        case Metal():
            colour = colour_of(what.colour)
            return f"linear-gradient(100deg,{colour},color-mix(in srgb,{colour} 62%,#fff) 45%,{colour})"


def summary_of(page: PreviewPage) -> str:
    """What is said yes to: revision, mark, option, sizes, and the finish that is filled in."""
    revision = ""
    if page.revision:
        when = WORDS["said of"].format(page.revision, page.revision_date)
        revision = (
            f"<dt>{text_of(WORDS['said revision'])}</dt>"
            f'<dd dir="auto">{text_of(when if page.revision_date else page.revision)}</dd>'
        )
    option = (
        f"<dt>{text_of(WORDS['said option'])}</dt>"
        f'<dd dir="auto">{text_of(WORDS["option of"].format(page.option, page.called))}</dd>'
        if page.option
        else ""
    )
    thing = (
        f"<dt>{text_of(words_of(page)['said thing'])}</dt><dd>{saying_of(page.thing)}</dd>"
        if page.thing
        else ""
    )
    return (
        f'<dl class="summary">{revision}{option}'
        f"<dt>{text_of(WORDS['said mark'])}</dt><dd>{text_of(page.mark)}</dd>{thing}"
        f'<dt>{text_of(WORDS["said finish"])}</dt><dd id="in-finish"></dd></dl>'
    )


def ticks_list(page: PreviewPage) -> str:
    """What the client must say to have seen."""
    return "".join(
        f'<label class="tick"><input type="checkbox" name="tick"><span>{saying_of(tick)}</span>'
        "</label>"
        for tick in page.ticks
    )


def options_choice(pages: tuple[PreviewPage, ...]) -> str:
    """The job's options side by side, in the order of their letters; the pack's own is shown."""
    own = pages[0].option
    choices = "".join(
        f'<label><input type="radio" name="option" value="{text_of(page.option)}"'
        f'{" checked" if page.option == own else ""} autocomplete="off">'
        f'<span dir="auto"><b>{text_of(page.option)}</b> {text_of(page.called)}</span></label>'
        for page in sorted(pages, key=lambda page: page.option)
    )
    return (
        f'<section id="options" aria-label="{text_of(WORDS["options"])}"><fieldset>'
        f'<legend class="unseen">{text_of(WORDS["options"])}</legend>'
        f"<div>{choices}</div></fieldset></section>\n"
    )


def option_template(page: PreviewPage, drawing: str) -> str:
    """What the page says of another option, laid by until it is asked for."""
    parts = {
        "facts": facts_list(page.facts),
        "finish": finish_panel(page.palette),
        "summary": summary_of(page),
        "ticks": ticks_list(page),
        "foot": foot_of(page),
        "drawing": drawing,
    }
    return (
        f'<template data-option="{text_of(page.option)}">'
        + "".join(f'<div data-part="{name}">{content}</div>' for name, content in parts.items())
        + "</template>\n"
    )


def yes_panel(page: PreviewPage) -> str:
    """What is said yes to, the ticks, the name, and the button that says it."""
    return (
        f'<form id="asking" autocomplete="on"><h2>{text_of(WORDS["what"])}</h2>'
        f'<div data-part="summary">{summary_of(page)}</div>'
        f'<p id="differs" class="stop" hidden>{text_of(WORDS["differs"])}</p>'
        f'<div data-part="ticks">{ticks_list(page)}</div>'
        f'<label class="field"><span>{text_of(WORDS["your name"])}</span>'
        '<input type="text" id="who" autocomplete="name" maxlength="120" dir="auto"></label>'
        f'<button type="submit" class="big" id="say" disabled aria-describedby="why">'
        f"{text_of(words_of(page)['say it'])}</button>"
        f'<p id="why" class="note"></p>'
        f'<p class="note">{text_of(WORDS["superseded"])}</p>'
        f'<button type="button" class="plain" id="not-yet">{text_of(WORDS["not yet"])}</button>'
        '<p id="change" class="note" role="status"></p></form>'
        '<div id="done" hidden><h2 id="done-head" tabindex="-1"></h2><p id="done-by" dir="auto"></p>'
        f'<p class="note">{text_of(WORDS["nothing left"])}</p>'
        f'<button type="button" class="big" id="send">{text_of(WORDS["send"])}</button>'
        f'<button type="button" class="plain" id="save">{text_of(WORDS["save"])}</button>'
        f'<button type="button" class="plain" id="copy">{text_of(WORDS["copy"])}</button>'
        '<p id="gone" class="note" role="status"></p>'
        f'<textarea id="slip" readonly rows="9" dir="auto" aria-label="{text_of(WORDS["slip"])}"></textarea>'
        f'<button type="button" class="plain" id="take-back">{text_of(WORDS["take back"])}</button></div>'
    )


def foot_of(page: PreviewPage) -> str:
    """Revision, mark, maker, and once, small, what it was made with."""
    words = [
        WORDS["revision"].format(page.revision) if page.revision else "",
        WORDS["option"].format(page.option) if page.option else "",
        WORDS["mark"].format(page.mark) if page.mark else "",
    ]
    words = [word for word in words if word]
    words[:1] = [word[0].upper() + word[1:] for word in words[:1]]
    lines = [" · ".join(f"<span>{text_of(word)}</span>" for word in words)]
    if page.maker:
        lines.append(f"<span>{text_of(WORDS['maker'].format(page.maker))}</span>")
    lines.append(f"<span>{text_of(WORDS['made with'])}</span>")
    return "<br>".join(line for line in lines if line)


def numbers_in(page: PreviewPage) -> tuple[Amount, ...]:
    """Every number that the page says of the job, in reading order."""
    sayings = [part for fact in page.facts for part in (fact.value, fact.note)]
    return tuple(
        piece
        for saying in (*sayings, page.thing, *page.ticks)
        for piece in saying
        if isinstance(piece, Amount)
    )


PAGE = """\
<!doctype html>
<html lang="{{language}}" data-hour="day">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover">
<meta http-equiv="Content-Security-Policy" content="{{allowed}}">
<meta name="referrer" content="no-referrer">
<title>{{title}}</title>
<!--
{{notice}}-->
<style>{{fonts}}
{{style}}:root{--finish:{{finish}}}</style>
</head>
<body>
<div id="app">
<header id="title"><h1 dir="auto"{{long}}>{{job}}</h1><p dir="auto">{{under}}</p></header>
{{options}}<section id="strip" aria-label="{{words.strip}}">
<p class="say"><b id="state">{{words.shut}}</b></p>
{{all}}<div id="plan"><svg aria-hidden="true"></svg><p class="seen">{{words.seen from above}}</p></div>
<div id="hour" role="group" aria-label="{{words.hour}}"><button type="button" data-set="day" aria-pressed="true">{{words.day}}</button><button type="button" data-set="evening" aria-pressed="false">{{words.evening}}</button></div>
</section>
<aside id="side">
<div id="tabs" role="tablist" aria-label="{{words.tabs}}">
<button type="button" role="tab" id="tab-stand" aria-controls="stand">{{words.stand}}</button>
<button type="button" role="tab" id="tab-finish" aria-controls="finish">{{words.finish}}</button>
<button type="button" role="tab" id="tab-sizes" aria-controls="sizes">{{words.sizes}}</button>
<button type="button" role="tab" id="tab-yes" aria-controls="yes">{{words.yes}}</button>
</div>
<div id="drawer">
<div id="tray" tabindex="-1">
<section id="stand" role="tabpanel" aria-labelledby="tab-stand">
<h2 id="where">{{words.where}}</h2>
<div class="rows" role="radiogroup" aria-labelledby="where">
<label><input type="radio" name="place" value="facing" checked><span>{{words.facing}}</span><small>{{words.facing how}}</small></label>
{{places}}
<label><input type="radio" name="place" value="pull"><span>{{words.pull}}</span><small>{{words.pull how}}</small></label>
{{beyond}}</div>
<h2>{{words.also}}</h2>
<div class="rows">
<label><input type="checkbox" id="person"><span>{{person}}</span></label>
{{inside}}<label><input type="checkbox" id="cut"><span>{{words.cut}}</span></label>
</div>
<label id="cut-where" class="field" hidden><span>{{words.cut at}}</span><input type="range" id="cut-at"></label>
</section>
<section id="finish" role="tabpanel" aria-labelledby="tab-finish" data-part="finish">
{{finish panel}}
</section>
<section id="sizes" role="tabpanel" aria-labelledby="tab-sizes">
<h2>{{words.sizes}} <small>{{unit}}</small></h2>
<ul class="facts" data-part="facts">
{{facts}}</ul>
<button type="button" class="plain" id="measure" aria-pressed="false">{{words.measure}}</button>
<p class="note" id="measured" role="status"></p>
</section>
<section id="yes" role="tabpanel" aria-labelledby="tab-yes">
{{yes panel}}
</section>
</div>
<footer id="foot"><p dir="auto" data-part="foot">{{foot}}</p></footer>
</div>
</aside>
<main id="picture">
<div id="drawing" data-part="drawing" role="img" aria-label="{{words.drawing}}">{{drawing}}</div>
<canvas id="canvas" tabindex="0" role="application" aria-label="{{words.canvas}}"></canvas>
<svg id="chalk" aria-hidden="true"></svg>
<p id="waiting"><noscript>{{words.no script}}</noscript></p>
<p id="hint" aria-hidden="true"></p>
</main>
</div>
<p id="told" class="unseen" aria-live="polite"></p>
<script type="application/json" id="job">{{data}}</script>
{{model}}{{beside}}<script>{{script}}</script>
</body>
</html>
"""
