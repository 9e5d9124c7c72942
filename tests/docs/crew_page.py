"""The reference page of the crew's requests, made from the table that the server goes by."""

from collections.abc import Iterator, Mapping
from typing import Any

from longpoint.journal import MOST_AHEAD
from longpoint.serve.crew.api import ANYWHERE, REFUSALS, REQUESTS, Request
from longpoint.serve.crew.bodies import DEEPEST
from longpoint.serve.crew.guard import BODY_S, LARGEST_BODY
from longpoint.serve.crew.limits import DEVICE_RATE
from longpoint.serve.crew.patience import HEAD_S

OPENING = (
    "# Requests of the crew's server\n\n"
    "What `longpoint serve` answers to phones; see [sharing with the crew]"
    "(../how-to/share-with-the-crew.md) and [what it holds against](../explanation/security.md). "
    "This page is made from the table that routes and the OpenAPI document come from; the document "
    "itself is at `/crew/openapi.json`.\n\n"
    "Bodies are JSON objects, UTF-8, of at most "
    f"{LARGEST_BODY:,} bytes within {BODY_S:g} seconds, nested at most {DEEPEST} deep; headers are "
    f"to be there within {HEAD_S:g}. A device may ask {DEVICE_RATE.at_once:g} times at once and "
    f"{DEVICE_RATE.a_second:g} times a second. A count in a share may be {MOST_AHEAD:,} ahead of "
    "all that are here, not more. A request "
    "says by `Origin` or `Sec-Fetch-Site` that it comes from the server's own page. Where a phone "
    "has to be let in, the cookie and the page's secret, `X-Longpoint-Device`, go together. What "
    'is not done is answered with three sentences: `{"read": …, "wrong": …, "do": …}`.\n'
)


def crew_page() -> str:
    """Return the page as Markdown."""
    parts = [OPENING]
    for request in REQUESTS:
        parts += [f"## {request.method} {request.path}\n", f"{request.says}\n"]
        parts.append("Open to everybody.\n" if request.is_open else "For phones that are let in.\n")
        parts += _sent(request)
        for status, schema in request.answers.items():
            parts.append(f"Answers {status}: {_shape(schema)}.\n")
        if request.refusals:
            parts.append(f"Refused with {', '.join(map(str, sorted(request.refusals)))}.\n")
    parts += [
        "## Refusals\n",
        f"Anywhere: {', '.join(map(str, ANYWHERE))}. The others where they are named above.\n",
        "| status | meaning |",
        "|---|---|",
        *(f"| {status} | {says} |" for status, says in REFUSALS.items()),
    ]
    return "\n".join(parts) + "\n"


def _sent(request: Request) -> Iterator[str]:
    properties: Mapping[str, Any] = (request.asks or {}).get("properties", {})
    if not properties:
        return
    yield "| sent | what it is |\n|---|---|"
    for name, schema in properties.items():
        yield f"| `{name}` | {_shape(schema)} |"
    yield ""


def _shape(schema: Mapping[str, Any]) -> str:
    """Return what a schema asks for, in words."""
    match schema:
        case {"properties": properties}:
            each = ", ".join(f"`{name}`: {_shape(of)}" for name, of in properties.items())
            rest = "; and whatever else it says" if schema.get("additionalProperties") else ""
            return f"an object ({each}{rest})"
        case {"additionalProperties": dict() as of}:
            return f"an object, at most {schema['maxProperties']} names, each with {_shape(of)}"
        case {"type": "array", "items": of}:
            most = f" of at most {schema['maxItems']}" if "maxItems" in schema else ""
            return f"a list{most}, each {_shape(of)}"
        case {"type": "string", "maxLength": most}:
            least = f"{schema['minLength']} to " if "minLength" in schema else "at most "
            return f"text, {least}{most} signs"
        case {"type": "string", "pattern": pattern}:
            return f"text, `{pattern}`"
        case {"type": "integer", "minimum": least, "maximum": most}:
            return f"a whole number, {least} to {most}"
        case {"type": kind}:
            return {
                "string": "text",
                "number": "a number",
                "boolean": "true or false",
                "object": "an object",
            }[kind]
        case _:
            raise AssertionError(schema)
