"""Money and hours: what goes in is a house as counted or read, and the crew's own rates.

Out come the hours and the timber as ranges, a quote, its variations and the invoice. Sums are kept
in whole minor units of one currency; nothing here knows how money looks on a sheet.
"""
