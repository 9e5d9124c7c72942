import tomllib

import jsonschema
import pytest

from longpoint.errors import SurveyError
from longpoint.quantities.length import Units
from longpoint.survey.house import Dialect
from longpoint.survey.house_file import house_schema, read_house, starter_house


@pytest.mark.parametrize("units", list(Units))
@pytest.mark.parametrize("dialect", list(Dialect))
def test_the_starter_file_reads_and_only_asks_for_the_saw_the_crew_and_the_season(
    units: Units, dialect: Dialect
) -> None:
    document = tomllib.loads(starter_house("Wren House", units, dialect))

    result = read_house(document)

    assert (result.house.units, result.house.dialect) == (units, dialect)
    assert [f.code for f in result.findings] == [
        "saw-not-proved",
        "crew-assumed",
        "season-assumed",
    ]
    assert [o.mark for o in result.house.openings] == ["W1", "D1"]
    assert (len(result.house.rooms), len(result.house.runs)) == (1, 1)
    assert jsonschema.Draft202012Validator(house_schema()).is_valid(document)


@pytest.mark.parametrize("units", list(Units))
def test_the_lines_for_the_forecast_read_once_their_sign_is_taken_off(units: Units) -> None:
    tables = ("[crew]", "walls", "refit", "batch_saves", "[season]", "moisture", "driest")
    starts = tuple(f"# {start}" for start in (*tables, "dampest", "as_built"))
    lines = starter_house("Wren House", units).splitlines()
    freed = [line.removeprefix("# ") if line.startswith(starts) else line for line in lines]

    result = read_house(tomllib.loads("\n".join(freed)))

    assert len([line for line in lines if line.startswith(starts)]) == 9
    assert [f.code for f in result.findings] == ["saw-not-proved"]
    assert (result.house.crew.assumed, result.house.seasons.assumed) == (False, False)
    assert result.house.openings[0].as_built is not None


@pytest.mark.parametrize("units", list(Units))
def test_the_lines_for_fixing_read_once_their_sign_is_taken_off(units: Units) -> None:
    starts = tuple(
        f"# {start}"
        for start in ("[fixing]", "nails", "lining", "built", "[handover]", "contract", "fills")
    )
    lines = starter_house("Wren House", units).splitlines()
    freed = [line.removeprefix("# ") if line.startswith(starts) else line for line in lines]

    result = read_house(tomllib.loads("\n".join(freed)))

    assert len(result.house.fixing.nails) == 2
    assert result.house.fixing.lining_mm == pytest.approx(19.0, abs=0.1)
    assert not result.house.handover.assumed
    assert not {"fixing-unreadable", "handover-unreadable"} & {f.code for f in result.findings}


def test_both_units_describe_about_the_same_house() -> None:
    metric, inches = (
        read_house(tomllib.loads(starter_house("Wren House", units))).house for units in Units
    )

    for one, other in zip(metric.openings, inches.openings, strict=True):
        for reading, same in zip(one.readings.lengths, other.readings.lengths, strict=True):
            assert reading.value_mm == pytest.approx(same.value_mm, abs=2.0)


@pytest.mark.parametrize("dialect", list(Dialect))
def test_the_comments_speak_the_dialect(dialect: Dialect) -> None:
    comments = " ".join(
        line.partition("#")[2] for line in starter_house("A", dialect=dialect).splitlines()
    )

    american = dialect in {Dialect.US, Dialect.CA}
    assert ("casing" in comments, "baseboard" in comments) == (american, american)
    # The word of the file stands once in any dialect: it is what a run may stop at.
    assert (comments.count("architrave") == 1) is american


def test_lines_fit_a_narrow_screen_and_carry_no_stray_spaces() -> None:
    for units in Units:
        for line in starter_house("Wren House", units).splitlines():
            assert len(line) <= 100, line
            assert line == line.rstrip()


def test_any_name_that_prints_makes_a_file_that_reads() -> None:
    name = 'The "old" \\ mill, Ñandú'

    assert tomllib.loads(starter_house(name))["name"] == name
    with pytest.raises(SurveyError):
        starter_house("a\nb")
    with pytest.raises(SurveyError):
        starter_house(" ")
