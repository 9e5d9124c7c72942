"""A small rack for the tests of its sheets."""

from datetime import date
from typing import Final

from longpoint.survey.rack import Rack, RackPiece, Section

TODAY: Final = date(2026, 11, 26)
RACK: Final = Rack(
    old_after_days=365,
    sections=(
        ("OG57", Section(name="OG57", width_mm=57.0, thickness_mm=18.0)),
        ("SQ66", Section(name="SQ66", width_mm=66.0, thickness_mm=18.0, reversible=True)),
    ),
    pieces=(
        RackPiece(
            label="EMKR",
            section="OG57",
            length_mm=900.0,
            left="mitre -45.0",
            house="Finch Rise",
            origin="7XKQ4M OG57-3",
            put_up=date(2026, 5, 1),
        ),
        RackPiece(
            label="QC7R",
            section="OG57",
            length_mm=1310.5,
            put_up=date(2025, 5, 1),
            note="primed",
        ),
        RackPiece(
            label="6WPK",
            section="SQ66",
            length_mm=640.0,
            left="square",
            house="Finch Rise",
            put_up=date(2026, 11, 25),
        ),
    ),
)
