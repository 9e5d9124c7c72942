"""The document of all requests is held to what the server does, with requests drawn from it.

Each is drawn as the document allows it and as it doesn't, by somebody who was let in and by
somebody who wasn't. No answer may be a fault of the server, and each is as the document says.
"""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import httpx
import pytest
import schemathesis
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from schemathesis import Case, GenerationMode
from schemathesis.checks import not_a_server_error
from schemathesis.specs.openapi.checks import (
    content_type_conformance,
    response_headers_conformance,
    response_schema_conformance,
    status_code_conformance,
)

from longpoint.serve.crew.api import REQUESTS, openapi_document
from tests.crew_server import ORIGIN, Laptop, Phone, crew_laptop

SCHEMA = schemathesis.openapi.from_dict(openapi_document())
OPERATIONS: dict[str, Any] = {
    found.label: found
    for each in SCHEMA.get_all_operations()
    if (found := each.ok()) is not None  # type: ignore[union-attr]
}
Drawn = Case[Any]
CASES = [
    (label, mode)
    for label, operation in OPERATIONS.items()
    for mode in GenerationMode
    # Where nothing is asked for, nothing can be wrong with it.
    if mode is GenerationMode.POSITIVE or operation.body or operation.path_parameters
]
CHECKS = [
    not_a_server_error,
    status_code_conformance,
    content_type_conformance,
    response_headers_conformance,
    response_schema_conformance,
]


@pytest.fixture(scope="module")
def busy(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Laptop]:
    """Yield a laptop that serves its crew, for all requests of this page."""
    folder: Path = tmp_path_factory.mktemp("crew")
    with crew_laptop(folder) as laptop:
        yield laptop


def test_every_request_stands_in_the_document() -> None:
    assert {f"{each.method} {each.path}" for each in REQUESTS} == OPERATIONS.keys()


def put_right(case: Drawn, phone: Phone) -> None:
    """Give a request the token or the ticket of today: nobody draws one by chance."""
    body = case.body
    if isinstance(body, dict) and "token" in body:
        body["token"] = phone.laptop.doors.new_token()
    elif isinstance(body, dict) and "waiting" in body:
        token = phone.laptop.doors.new_token()
        found = phone.laptop.doors.knock(token, "Kim's phone", "p")
        if found is not None:
            body["waiting"] = found[0]
            phone.laptop.doors.answer(found[1], let_in=True)


def asked(case: Drawn, phone: Phone) -> httpx.Response:
    drawn: dict[str, Any] = case.as_transport_kwargs(base_url=ORIGIN)
    drawn.pop("cookies", None)
    path = drawn.pop("url").removeprefix(ORIGIN)
    headers = {**drawn.pop("headers", {}), **phone.headers}
    if "data" in drawn:
        drawn["content"] = drawn.pop("data")
    return phone.ask(drawn.pop("method"), path, headers=headers, **drawn)


def hold_to_the_document(
    busy: Laptop, label: str, draw: st.DataObject, mode: GenerationMode
) -> None:
    case = draw.draw(OPERATIONS[label].as_strategy(generation_mode=mode))
    phone = Phone(busy, "p")
    busy.now_s += 600
    if draw.draw(st.booleans(), label="was let in"):
        phone.come_in()
    if draw.draw(st.booleans(), label="shown the code"):
        put_right(case, phone)
    answer = asked(case, phone)
    case.validate_response(answer, checks=CHECKS)


@pytest.mark.parametrize(("label", "mode"), CASES)
@settings(max_examples=6, deadline=None, suppress_health_check=list(HealthCheck))
@given(draw=st.data())
def test_every_answer_is_as_the_document_says(
    busy: Laptop, label: str, draw: st.DataObject, mode: GenerationMode
) -> None:
    hold_to_the_document(busy, label, draw, mode)


@pytest.mark.long
@pytest.mark.parametrize(("label", "mode"), CASES)
@settings(max_examples=500, deadline=None, suppress_health_check=list(HealthCheck))
@given(draw=st.data())
def test_many_answers_are_as_the_document_says(
    busy: Laptop, label: str, draw: st.DataObject, mode: GenerationMode
) -> None:
    hold_to_the_document(busy, label, draw, mode)
