from longpoint.sheets.mark_pictures import Passed, mark_picture


def test_each_mark_has_a_shape_of_its_own_and_says_what_it_is() -> None:
    drawn = {passed: mark_picture(passed) for passed in Passed}
    assert len({each.marks for each in drawn.values()}) == len(Passed)
    assert all(each.described == passed.value for passed, each in drawn.items())
