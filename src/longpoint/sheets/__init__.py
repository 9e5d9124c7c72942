"""What stands on paper and screen: the content first, then pure writers.

In: a `HousePlan`. Out: `Sheet` records made of blocks, and their text as HTML, SVG, terminal text
or data for the PDF. A sheet never computes; it says what the plan holds.
"""
