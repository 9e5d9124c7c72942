"""The crew's rack of offcuts: one file for all houses, each offcut with a label.

In: the parsed document. Out: a `Rack` (`read_rack`), and a rack back as text (`rack_text`).
"""

from longpoint.survey.rack.rack_file import FORMAT, read_rack
from longpoint.survey.rack.rack_text import rack_text
from longpoint.survey.rack.records import Gone, Out, Rack, RackPiece, Section

__all__ = ["FORMAT", "Gone", "Out", "Rack", "RackPiece", "Section", "rack_text", "read_rack"]
