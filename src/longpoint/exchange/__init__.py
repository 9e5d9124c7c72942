"""Files in and out: the only place that reads or writes a house file.

In: paths. Out: parsed documents and houses; a refusal is an `ExchangeError` in three sentences.
"""
