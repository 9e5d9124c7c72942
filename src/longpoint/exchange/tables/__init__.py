"""Other people's tables: CSV and XLSX, read within limits and never trusted.

In: a path. Out: `ForeignTable`s of texts, each with the address of its cell; what is no table of a
house's readings is refused with an `ExchangeError`. Out the other way: plain rows as CSV and XLSX.
"""
