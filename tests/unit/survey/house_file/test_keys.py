from longpoint.survey.house_file.keys import Key, Kind, Table

TABLE = Table(
    title="a thing",
    keys=(
        Key(name="a", kind=Kind.TEXT, meaning="Its a.", example="x", required=True),
        Key(name="b", kind=Kind.FLAG, meaning="Its b.", example=True),
    ),
)


def test_a_table_knows_its_keys_by_name_and_which_it_needs() -> None:
    assert list(TABLE.by_name) == ["a", "b"]
    assert TABLE.required == ("a",)


def test_the_example_of_a_table_holds_every_key() -> None:
    assert TABLE.example() == {"a": "x", "b": True}
