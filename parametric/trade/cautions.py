"""The usual cautions, in the words that the sheets print, for work that can hurt someone.

They never replace training, the machine's own instructions or the law of the place.
"""

from __future__ import annotations

Cautions = tuple[str, ...]

LOCAL = "Local codes, the machine's instructions and the hardware maker's data sheet come first."

# Source: 29 CFR 1910.213 for guards, spreader, combs, push blocks and hoods.
SAW: Cautions = (
    "Guard and riving knife on whenever the cut allows. Where the guard cannot be, a tall fence, "
    "combs and a push block take its place.",
    "Blade still and isolated before any setting. Eyes and ears covered. No gloves, no loose "
    "sleeves.",
    "Never reach over or behind the blade; stand out of its line.",
)
CLAMPED: Cautions = ("Clamp the piece; both hands behind the edge.",)
DADO: Cautions = (
    "A dado set: riving knife off, a comb over the piece, push blocks; the set is raised into the "
    "clamped sacrificial fence. Where it is not allowed, a single blade in passes.",
)
# Source: 29 CFR 1910.213 (c) and (d), ripsaws and crosscut saws: guard, spreader, hold the piece.
SHEETS: Cautions = (
    "A full sheet is two people's work: carried on edge, feet clear, gloves for carrying and none "
    "at the saw.",
    "Panel saw: the sheet sits on both rollers or stops and nothing leans on it; the blade and its "
    "carriage are still before a part is lifted off.",
    "Table saw: no rip without fence, riving knife, guard and a support that the sheet comes out "
    "on; no crosscut freehand, and never with the fence as a stop beside the blade.",
    "A narrow strip is cut off on the side away from the fence, or with a push block; an offcut "
    "beside the blade is left until the blade stands.",
)
BARS: Cautions = (
    "Crosscutting to length: the bar lies along its fence and on a support at its far end; a short "
    "end is held by a clamp, never by fingers; the blade stands before it is taken away.",
)
TRACK_SAW: Cautions = (
    "Leaf and track clamped; the saw let run down before it is lifted; the offcut is left to lie.",
)
ROUTER: Cautions = (
    "Feed against the rotation. Cutter isolated while it is set; eyes and ears covered.",
    "Hold the piece with a push block or a clamped jig; never free-hand near the cutter.",
)
STOPPED_CUT: Cautions = (
    "A stopped cut starts inside the wood: both blocks clamped, the piece lowered on the running "
    "cutter from its first stop, hands clear of the exit.",
)
PLUNGED_CUT: Cautions = (
    "Piece clamped, both hands on the machine; lift off only when the cutter stands still.",
)
SOLVENTS: Cautions = (
    "Solvents and thinners: fresh air, no flame or spark, gloves; a mask for the vapour, as the "
    "tin's data sheet asks.",
    "Spraying needs a booth and a breathing mask that suit the product, by local codes.",
)
# Source: NFPA guidance on oily rags, from memory.
OILY_RAGS: Cautions = (
    "Rags with oil heat up by themselves and catch fire: spread them flat outdoors to dry, or "
    "keep them under water in a closed metal can.",
)
# Source: OSHA and ACGIH limits for wood dust; IARC group 1, wood dust.
DUST: Cautions = (
    "Wood dust harms the lungs and burns: extraction on, a dust mask when sanding, sweep nothing "
    "dry.",
)
GLASS: Cautions = (
    "Glass: cut-proof gloves, sleeves and eye cover; carry it on edge; nobody below it. Toughened "
    "glass breaks all at once when its edge is knocked.",
)
GLUE: Cautions = ("Glue: gloves, and nothing below the temperature on the bottle.",)


def lifting(people: int, weight: str) -> Cautions:
    """For a piece of this weight."""
    hands = "Two people lift it" if people == 2 else f"{people} people lift it"
    who = hands if people > 1 else "One person lifts it, with the way clear"
    return (f"{weight}. {who}: backs straight, gloves, toes out from under.",)


OVERHEAD: Cautions = (
    "Drilling overhead: look for cables and pipes first; eyes covered; a steady platform, no "
    "chair, no top rung.",
    "Nobody stands under a track or a leaf that is not yet fixed at every point.",
)
HINGING: Cautions = (
    "A leaf on one hinge is not hung: somebody holds it until every hinge has all its screws.",
    "No hand in the gap beside the hinges of a leaf that can move: wedge it first.",
)
LETTING_IN: Cautions = (
    "Sharp chisels and a router at the jamb: both hands behind the edge, eyes covered, cables "
    "looked for before a long screw goes into a jamb.",
)
ON_SITE: Cautions = (
    "Old paint may hold lead and old boards may hold asbestos: test before drilling or sanding.",
)
