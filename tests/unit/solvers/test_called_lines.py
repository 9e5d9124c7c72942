from longpoint.forecast.plain_lines import PlainLines
from longpoint.solvers.called_lines import CalledLines
from tests import called_engines
from tests.line_houses import line_house


def test_all_lines_and_errors_go_across_and_the_counts_come_back() -> None:
    house = line_house(3, 200, seed=2**40 + 7)
    tally = CalledLines(called_engines.tally).tally(house)
    assert tally == PlainLines().tally(house)
    assert any(0 < opening.together < 200 for opening in tally.openings)
