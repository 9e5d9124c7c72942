"""Plain cutting stock by general-purpose libraries, to measure the nester beside them.

In: a `CuttingStock`, and how long it may take. Out: an `Answer`, which `check_answer` adds up anew.
The libraries are in the dependency group `bench`; nobody else needs them.
"""
