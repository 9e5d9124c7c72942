"""The crew's rack of offcuts through all houses, each offcut with a label.

In: the parsed document. Out: a `Rack` (`read_rack`), and a rack back as text (`rack_text`). Or in:
entries of a journal, out: the rack that they come to (`kept_rack`).
"""

from longpoint.survey.rack.from_file import with_file
from longpoint.survey.rack.kept_rack import RACK_KEY, RackNow, rack_changes, rack_now, rack_words
from longpoint.survey.rack.rack_file import FORMAT, read_rack
from longpoint.survey.rack.rack_text import rack_text
from longpoint.survey.rack.records import Gone, Out, Rack, RackPiece, Section

__all__ = [
    "FORMAT",
    "RACK_KEY",
    "Gone",
    "Out",
    "Rack",
    "RackNow",
    "RackPiece",
    "Section",
    "rack_changes",
    "rack_now",
    "rack_text",
    "rack_words",
    "read_rack",
    "with_file",
]
