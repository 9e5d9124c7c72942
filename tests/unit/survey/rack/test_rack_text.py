import tomllib
from dataclasses import replace
from datetime import date

from longpoint.quantities.length import Units
from longpoint.survey.rack import Gone, Out, Rack, RackPiece, Section, rack_text, read_rack

RACK = Rack(
    old_after_days=365,
    sections=(
        ("OG57", Section(name="OG57", width_mm=57.0, thickness_mm=18.0, least_mm=250.0)),
        ('a "b" \\ c', Section(name="SQ", width_mm=66.5, thickness_mm=18.0, reversible=True)),
    ),
    pieces=(
        RackPiece(
            label="EMKR",
            section="OG57",
            length_mm=1310.25,
            left="mitre -45.0",
            house='Wren "House" \x7f\\',
            origin="7XKQ4M OG57-3",
            put_up=date(2026, 3, 1),
            note="primed, ø",
            gone=Gone(why=Out.USED, on=date(2026, 5, 1), house="Plover House"),
        ),
        RackPiece(label="QC7R", section='a "b" \\ c', length_mm=900.0, put_up=date(2026, 3, 2)),
    ),
)


def read_back(rack: Rack) -> Rack:
    return read_rack(tomllib.loads(rack_text(rack)))


def test_what_is_written_is_read_back_to_the_same() -> None:
    printable = replace(RACK.pieces[0], house='Wren "House" \\')
    rack = replace(RACK, pieces=(printable, RACK.pieces[1]))

    assert read_back(rack) == rack


def test_a_rack_in_inches_loses_nothing() -> None:
    rack = replace(RACK, units=Units.INCH, pieces=RACK.pieces[1:])

    assert read_back(rack) == rack


def test_the_text_is_sound_whatever_stands_in_a_name() -> None:
    assert tomllib.loads(rack_text(RACK))["offcuts"][0]["house"] == 'Wren "House" \x7f\\'


def test_an_empty_rack_is_a_rack() -> None:
    assert read_back(Rack()) == Rack()
