"""Cross-sections of mouldings from somebody else's drawing, and drawings of ours.

In: DXF and SVG files. Out: a `Section`, its outline in mm with its back down; and DXF files of
openings and sections.
"""
