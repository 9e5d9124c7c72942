"""What the weather does to joints after fitting.

In: a joint (corner, boards, species), the moisture of the timber when it was fitted, the driest and
the dampest season of the house. Out: which end opens and how far, and what would help most.
"""
