"""How the pieces are fixed: nails, glue, packers, and the order of work.

In: a house and its pieces. Out: which nail goes where and how many, what else is used up, the order
of work for each way of fixing, and what is to be said where a nail would come out or fall short.
"""
