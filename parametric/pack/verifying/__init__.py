"""A pack read back: its files against the design, by code that shares nothing with their writers.

dxf_tags       a DXF file by its group codes
outlines       closed outlines: area, middle, corners, doubled edges
layers_read    the workshop's names of layers
machine_file   one machine file, and how it breaks the contract by itself
bench_words    the words of the saw and bench list
fronts         edges of parts as the front shows them
drawing_file   one drawing: dimensions, lines, windows
glb_file       the model for pictures
usd_text       a layer of USD text
usdz_file      the model for phones: archive, layer, scene
step_file      the model for other programs: statements, products, pieces
step_solids    its solids, measured from their faces
printed        lengths as paper prints them

expected       what the parts ask of their files
boxes          how far finished parts and leaves reach
known          the design a pack is held against

machine_files  every cut of every face
rebuilt        blank less machine files less saw and bench list is the part
drawings       dimensions and what they span
model_glb      every part there, where it stands, right way round
model_usdz     the same of the model for phones
model_step     products, pieces, places, units, volumes
lists          cut list and glass order
glass_outlines outlines of shaped panes
page           the client's page holds the model that was read back
figures_file   numbers.json
not_for_making a pack of a design with stops is marked, and holds nothing to make from
pack           all of it
folder         a pack on disk
"""
