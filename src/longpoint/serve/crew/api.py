"""The requests of the crew's server as one table: routes and the OpenAPI document come from it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Final

import longpoint
from longpoint.journal import MOST_COUNT
from longpoint.serve.crew.bodies import LONGEST_NAME, LONGEST_SECRET, MOST_DEVICES
from longpoint.serve.crew.kept import MOST_ENTRIES

Schema = Mapping[str, Any]

REFUSALS: Final = {
    401: "This phone isn't let in, or not any more.",
    403: "It comes from another page, or the page's own secret is missing.",
    404: "There is no such thing here.",
    405: "That can't be done with it.",
    408: "It took too long to arrive.",
    409: "Another entry stands here under the same key; all others were taken.",
    413: "It is too large.",
    415: "It is no JSON.",
    421: "This machine was asked by another name than its own.",
    422: "It isn't as it should be.",
    429: "Too much was asked in a short time.",
    503: "The store refuses; nothing of it was taken.",
}
ANYWHERE: Final = (403, 405, 408, 413, 421, 429)


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """One request.

    Attributes:
        name: By which its handler is found.
        method: GET or POST.
        path: With `{house}` where the key of a house stands.
        says: What it does.
        asks: Schema of what is sent; None for a GET.
        answers: Schema for each status of a request that is done.
        refusals: Statuses of those that aren't, besides those that can come anywhere.
        is_open: Whether it is answered to somebody who was not let in.
    """

    name: str
    method: str
    path: str
    says: str
    asks: Schema | None = None
    answers: Mapping[int, Schema] = field(default_factory=dict)
    refusals: tuple[int, ...] = ()
    is_open: bool = False


def _object(**properties: Schema) -> Schema:
    return {"type": "object", "required": list(properties), "properties": properties}


_NAME: Final[Schema] = {"type": "string", "minLength": 1, "maxLength": LONGEST_NAME}
_KEY: Final[Schema] = {"type": "string", "minLength": 1, "maxLength": 100}
_SECRET: Final[Schema] = {"type": "string", "minLength": 1, "maxLength": LONGEST_SECRET}
_COUNT: Final[Schema] = {"type": "integer", "minimum": 1, "maximum": MOST_COUNT - 1}
_UP_TO: Final[Schema] = _object(counter=_COUNT, sum={"type": "string", "maxLength": LONGEST_NAME})
_SEEN: Final[Schema] = {
    "type": "object",
    "additionalProperties": _UP_TO,
    "maxProperties": MOST_DEVICES,
}
_ENTRY: Final[Schema] = {
    **_object(
        device=_KEY,
        counter=_COUNT,
        at={"type": "string", "maxLength": 100},
        house=_KEY,
        what=_KEY,
    ),
    "additionalProperties": True,
}
_ENTRIES: Final[Schema] = {"type": "array", "items": _ENTRY, "maxItems": MOST_ENTRIES}
_REFUSAL: Final[Schema] = _object(
    read={"type": "string"}, wrong={"type": "string"}, do={"type": "string"}
)
_DONE: Final[Schema] = _object(done={"type": "boolean"})

REQUESTS: Final = (
    Request(
        name="openapi",
        method="GET",
        path="/crew/openapi.json",
        says="This document.",
        answers={200: {"type": "object"}},
        is_open=True,
    ),
    Request(
        name="knock",
        method="POST",
        path="/crew/knock",
        says="Knock with the token of the code on the laptop's screen; once, for two minutes.",
        asks=_object(token=_SECRET, name=_NAME, device=_KEY),
        answers={202: _object(waiting=_SECRET, check={"type": "string", "pattern": "^[0-9]{4}$"})},
        refusals=(415, 422),
        is_open=True,
    ),
    Request(
        name="let_in",
        method="POST",
        path="/crew/let-in",
        says="Ask whether somebody at the laptop has answered. 200 brings a cookie and the page's "
        "own secret, which goes with every later request as X-Longpoint-Device.",
        asks=_object(waiting=_SECRET),
        answers={200: _object(secret=_SECRET), 202: _object(waiting=_SECRET)},
        refusals=(415, 422),
        is_open=True,
    ),
    Request(
        name="me",
        method="GET",
        path="/crew/me",
        says="Who this phone is to the crew.",
        answers={
            200: _object(
                name={"type": "string"},
                device={"type": "string"},
                since_s={"type": "number"},
                until_s={"type": "number"},
                shared_s={"type": "number"},
            )
        },
        refusals=(401,),
    ),
    Request(
        name="leave",
        method="POST",
        path="/crew/leave",
        says="End this phone's session.",
        asks={"type": "object"},
        answers={200: _DONE},
        refusals=(401, 415, 422),
    ),
    Request(
        name="phones",
        method="GET",
        path="/crew/phones",
        says="What the phones of the crew are called, those put out too: by it a page says whose a "
        "reading is.",
        answers={
            200: {
                "type": "array",
                "items": _object(device={"type": "string"}, name={"type": "string"}),
            },
        },
        refusals=(401,),
    ),
    Request(
        name="houses",
        method="GET",
        path="/crew/houses",
        says="Every house, and what is here of it.",
        answers={
            200: {"type": "array", "items": _object(house={"type": "string"}, seen=_SEEN)},
        },
        refusals=(401, 503),
    ),
    Request(
        name="share",
        method="POST",
        path="/crew/houses/{house}/share",
        says="Give entries of a house, and get those that are lacking. Whatever is here already is "
        "left as it is, so the same may be given again, in any order.",
        asks=_object(seen=_SEEN, entries=_ENTRIES),
        answers={200: _object(seen=_SEEN, entries=_ENTRIES, more={"type": "boolean"})},
        refusals=(401, 409, 415, 422, 503),
    ),
)


def openapi_document() -> dict[str, Any]:
    """Return the document of all requests, by OpenAPI 3.1."""
    paths: dict[str, dict[str, Any]] = {}
    for request in REQUESTS:
        paths.setdefault(request.path, {})[request.method.lower()] = _operation(request)
    return {
        "openapi": "3.1.0",
        "info": {"title": "longpoint, the crew's laptop", "version": longpoint.__version__},
        "paths": paths,
        "components": {
            "schemas": {"Refusal": _REFUSAL},
            "securitySchemes": {
                "cookie": {"type": "apiKey", "in": "cookie", "name": "__Host-longpoint"},
                "page": {"type": "apiKey", "in": "header", "name": "X-Longpoint-Device"},
            },
        },
    }


def _operation(request: Request) -> dict[str, Any]:
    refusals = sorted({*ANYWHERE, *request.refusals, *((404,) if "{" in request.path else ())})
    made: dict[str, Any] = {
        "operationId": request.name,
        "summary": request.says,
        "security": [] if request.is_open else [{"cookie": [], "page": []}],
        "responses": {
            **{str(status): _answer("Done.", schema) for status, schema in request.answers.items()},
            **{
                str(status): _answer(REFUSALS[status], {"$ref": "#/components/schemas/Refusal"})
                for status in refusals
            },
        },
    }
    if "{house}" in request.path:
        made["parameters"] = [{"name": "house", "in": "path", "required": True, "schema": _KEY}]
    if request.asks is not None:
        content = {"application/json": {"schema": request.asks}}
        made["requestBody"] = {"required": True, "content": content}
    return made


def _answer(says: str, schema: Schema) -> dict[str, Any]:
    return {"description": says, "content": {"application/json": {"schema": schema}}}
