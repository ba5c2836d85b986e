"""Parts -> solids: the only package, with the STEP and GLB writers, that knows the CAD kernel.

Importing any module in here but this one and `looks` loads the kernel (over half a second),
so callers import them where a solid is wanted, not at the top of a file.

shape       one part's solid: its rough shape less its cuts
rough       the shape a part has before its pockets, slots and grooves
tools       the cutting tool of each cut
outline     rounded rectangles, polygons and flat-faced bodies
solid_set   the solids of many parts, each shape built once
cache       solids kept between runs
placing     where a part stands
mesh        a solid as triangles
clash       what overlaps, what touches, and how far apart things are
looks       what a material looks like in a picture
"""
