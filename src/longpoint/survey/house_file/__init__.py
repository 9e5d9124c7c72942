"""The house file: one house, read on site, as TOML by hand or JSON by program.

In: the parsed document. Out: a `House` and findings (`read_house`), and a house back as a
document (`house_document`). The keys are described once, in the `*_tables` modules; the reader,
the schema (`house_schema`) and its pages follow them.
"""

from longpoint.survey.house_file.document import house_document
from longpoint.survey.house_file.reader import read_house
from longpoint.survey.house_file.readings_code import readings_code
from longpoint.survey.house_file.schema import house_schema, schema_text
from longpoint.survey.house_file.starter import starter_house

__all__ = [
    "house_document",
    "house_schema",
    "read_house",
    "readings_code",
    "schema_text",
    "starter_house",
]
