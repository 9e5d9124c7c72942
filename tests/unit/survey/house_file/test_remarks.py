from longpoint.errors import Finding, Severity
from longpoint.quantities.length import Units
from longpoint.survey.house_file.assumptions import QUIRK
from longpoint.survey.house_file.remarks import Remarks
from longpoint.survey.house_file.trouble import HouseFileTrouble


def test_an_assumption_is_told_once_however_often_it_was_used() -> None:
    remarks = Remarks("Wren House", Units.MM)

    remarks.assume(QUIRK)
    remarks.assume(QUIRK)

    (finding,) = remarks.all()
    assert (finding.place, finding.severity) == ("Wren House", Severity.NOTE)
    assert finding.wrong == "5 mm is assumed there."


def test_lengths_are_told_in_the_units_of_the_house() -> None:
    remarks = Remarks("Wren House", Units.INCH)

    remarks.assume(QUIRK)

    assert remarks.all()[0].wrong == "3/16 in is assumed there."


def test_what_goes_for_the_house_comes_first_and_nothing_twice() -> None:
    remarks = Remarks("Wren House", Units.MM)
    at_w1 = Finding(code="x", severity=Severity.STOP, place="W1", read="A.", wrong="B.", do="C.")

    remarks.at_place(at_w1, at_w1)
    remarks.trouble(HouseFileTrouble("A.", "B.", "C."), "D.", code="y")

    assert [f.place for f in remarks.all()] == ["Wren House", "W1"]
    assert remarks.all()[0].wrong == "B. D."
