"""The arithmetic of a number, line by line, down to what was measured or chosen."""

from __future__ import annotations

from parametric.figures import Figure, arithmetic, formula, inputs
from parametric.units import Unit, length_text

_ORIGINS = {
    "measured": "measured",
    "chosen": "chosen",
    "house": "house file",
    "assumed": "assumed: the tool's own setting",
    "pinned": "pinned",
    "catalogue": "catalogue",
    "computed": "",
}


def explain(figure: Figure, unit: Unit) -> tuple[str, ...]:
    """A chain that a maker can check with a pencil, each number once.

    The first line is the number; under it its sum in names and in figures; then every
    input in turn, and where the written ones stand.
    """
    lines: list[str] = []
    seen: set[str] = set()

    def tell(one: Figure, step: int) -> None:
        assert one.name is not None
        indent = "  " * step
        if one.name in seen:
            return
        seen.add(one.name)
        lines.append(f"{indent}{one.name} = {value_text(one, unit)}{_from(one)}")
        in_names, in_numbers = formula(one), arithmetic(one)
        if in_names is not None:
            lines.append(f"{indent}    = {in_names}")
            if in_numbers != in_names and one.op != "same":
                lines.append(f"{indent}    = {in_numbers}")
        for behind in inputs(one).values():
            tell(behind, step + 1)

    tell(figure, 0)
    return tuple(lines)


def value_text(figure: Figure, unit: Unit) -> str:
    """The number with its unit: as the design prints lengths, and exactly where that rounds."""
    if figure.unit != "mm":
        shown = f"{float(figure):.6g}" if figure.unit not in ("mm2", "mm3") else f"{figure:.0f}"
        return f"{shown} {figure.unit}".rstrip()
    exact = f"{float(figure):.4f}".rstrip("0").rstrip(".") + " mm"
    return exact if unit == "mm" else f"{length_text(float(figure), unit)} ({exact})"


def _from(figure: Figure) -> str:
    """Where a written number stands, or what says so."""
    if figure.op is not None:
        return ""
    words = _ORIGINS[figure.origin]
    if figure.about:
        words += ", doubted"
    if figure.where is not None:
        return f"   {words}, {figure.where.file}:{figure.where.line}"
    return f"   {words}" + (f", {figure.source}" if figure.source else "")
