"""Building models: openings in, as they were drawn; trim out, with its quantities.

In: IFC files. Out: nominal sizes for the list to confirm, never readings; and IFC4 files of the
pieces of a plan.
"""
