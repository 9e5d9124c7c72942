"""The crew's server as an application: its requests, and the built phone app beside them."""

import json
from collections.abc import Awaitable, Callable
from pathlib import Path
from typing import Final

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles
from starlette.types import ASGIApp

from longpoint.errors import LongpointError
from longpoint.journal import Seen, is_house
from longpoint.serve.crew.api import REFUSALS, REQUESTS, openapi_document
from longpoint.serve.crew.bodies import LONGEST_SECRET, name_in, read_body, share_in, wrong_body
from longpoint.serve.crew.doors import Answered, Doors
from longpoint.serve.crew.guard import Guard
from longpoint.serve.crew.kept import Keeper, Shared
from longpoint.serve.crew.limits import DEVICE_RATE, Buckets
from longpoint.serve.crew.members import SESSION_S, Member, Members
from longpoint.serve.crew.refusals import (
    ANSWER_HEADERS,
    Refused,
    no_session,
    refused_by_store,
    slow_down,
)

Audit = Callable[..., None]
"""Writes down what happened: a word for it, and facts by name; no secret and no reading."""

PAGE_SECRET: Final = "X-Longpoint-Device"
KINDS: Final = {".mjs": "text/javascript; charset=utf-8", ".wasm": "application/wasm"}


class Crew:
    """Answers the requests of `api.REQUESTS`; each method is named as there.

    Args:
        keeper: Asks the store.
        doors: Who may knock.
        members: Who was let in.
        audit: Where it is written down.
        is_secure: Whether the server speaks https: its cookie then goes nowhere else.
        clock: Seconds, never going back.
    """

    def __init__(
        self,
        keeper: Keeper,
        doors: Doors,
        members: Members,
        audit: Audit,
        *,
        is_secure: bool,
        clock: Callable[[], float],
    ) -> None:
        self._keeper, self._doors, self._members = keeper, doors, members
        self._audit, self._is_secure = audit, is_secure
        self._by_device = Buckets(DEVICE_RATE, clock)
        self.cookie = "__Host-longpoint" if is_secure else "longpoint"

    async def openapi(self, _request: Request) -> Response:
        """Answer with the document of all requests."""
        return _answer(openapi_document())

    async def knock(self, request: Request) -> Response:
        """Let a phone knock that was shown a token."""
        body = read_body(await request.body())
        token = name_in(body, "token", LONGEST_SECRET)
        name, device = name_in(body, "name"), name_in(body, "device", 100)
        found = self._doors.knock(token, name, device)
        self._audit("knock" if found else "knock-refused", name=name)
        if found is None:
            raise Refused(
                403,
                "A phone knocks at the crew's laptop.",
                "The code that it was shown is used up, or too old.",
                "Take the code that the laptop shows now.",
            )
        ticket, knock = found
        return _answer({"waiting": ticket, "check": knock.check}, 202)

    async def let_in(self, request: Request) -> Response:
        """Tell a phone whether it is let in; if so, give it its secrets."""
        body = read_body(await request.body())
        ticket = name_in(body, "waiting", LONGEST_SECRET)
        answered, knock = self._doors.ask(ticket)
        if answered is Answered.WAITING:
            return _answer({"waiting": ticket}, 202)
        if answered is not Answered.LET_IN or knock is None:
            raise Refused(
                403,
                "A phone waits at the crew's laptop.",
                "Nobody let it in, or it waited too long.",
                "Show it the code on the laptop again.",
            )
        session, page, member = self._members.let_in(knock.device, knock.name)
        self._audit("let-in", name=member.name, device=member.device)
        answer = _answer({"secret": page})
        answer.set_cookie(
            self.cookie,
            session,
            max_age=int(SESSION_S),
            path="/",
            secure=self._is_secure,
            httponly=True,
            samesite="strict",
        )
        return answer

    async def me(self, request: Request) -> Response:
        """Tell a phone who it is to the crew."""
        member = self._member(request)
        return _answer(
            {
                "name": member.name,
                "device": member.device,
                "since_s": member.since_s,
                "until_s": member.until_s,
                "shared_s": member.shared_s,
            }
        )

    async def leave(self, request: Request) -> Response:
        """End a phone's session."""
        read_body(await request.body())
        member = self._member(request)
        self._members.put_out(member.device)
        self._audit("left", name=member.name, device=member.device)
        answer = _answer({"done": True})
        answer.delete_cookie(self.cookie, path="/", secure=self._is_secure, httponly=True)
        return answer

    async def phones(self, request: Request) -> Response:
        """Tell a phone what the others are called."""
        self._member(request)
        return _answer([{"device": m.device, "name": m.name} for m in self._members.all()])

    async def houses(self, request: Request) -> Response:
        """List the houses."""
        self._member(request)
        found = await self._keeper.houses()
        return _answer([{"house": house, "seen": _seen(seen)} for house, seen in found])

    async def share(self, request: Request) -> Response:
        """Take entries of a house, and give those that are lacking."""
        member = self._member(request)
        house = request.path_params["house"]
        if len(house) > 100 or not house.isprintable():
            raise wrong_body("The key of the house is no short text.")
        if not is_house(house):
            raise Refused(
                404,
                "Something that is no house was to be shared.",
                "The laptop keeps it for itself.",
                "Share a house; the list of them says which there are.",
            )
        share = share_in(house, read_body(await request.body()))
        shared = await self._keeper.share(share)
        self._members.shared(member)
        self._audit("shared", device=member.device, took=len(share.entries), gave=len(shared.texts))
        if shared.clashes:
            key = shared.clashes[0].key
            raise Refused(
                409,
                f"Entry {key.counter} of {key.device} was shared.",
                "Another entry stands on the laptop under that key: this phone was copied.",
                "Go on with a new journal on one of the two; all other entries were taken.",
            )
        return _json(_shared_text(shared))

    def _member(self, request: Request) -> Member:
        """Return who asks, by cookie and by the page's own secret.

        Raises:
            Refused: Nobody who was let in, or one that asks too often.
        """
        session = request.cookies.get(self.cookie, "")
        member = self._members.find(session) if session else None
        if member is None:
            raise no_session()
        if not self._members.is_page_of(member, request.headers.get(PAGE_SECRET, "")):
            self._audit("page-refused", device=member.device)
            raise no_session()
        slow_down(self._by_device.wait_s(member.device))
        return member


def crew_app(crew: Crew, app_folder: Path, guarded: Callable[[ASGIApp], Guard]) -> ASGIApp:
    """Return the application.

    Args:
        crew: Answers the crew's requests.
        app_folder: The built phone app.
        guarded: Puts the guard in front.
    """
    routes = [
        Route(each.path, _told(getattr(crew, each.name)), methods=[each.method])
        for each in REQUESTS
    ]
    inner = Starlette(
        routes=[*routes, Mount("/", AppFiles(directory=app_folder, html=True))],
        exception_handlers={HTTPException: _status_answer},
    )
    return guarded(inner)


class AppFiles(StaticFiles):
    """The built app's files, each as what it is."""

    def file_response(self, full_path, *args, **kwargs):  # type: ignore[no-untyped-def]  # noqa: ANN001, ANN002, ANN003, ANN201
        """Return a file; a machine's own list of kinds may not know the newer ones."""
        answer = super().file_response(full_path, *args, **kwargs)
        kind = KINDS.get(Path(full_path).suffix)
        if kind and answer.status_code == 200:
            answer.headers["Content-Type"] = kind
        return answer


def _told(
    handler: Callable[[Request], Awaitable[Response]],
) -> Callable[[Request], Awaitable[Response]]:
    async def told(request: Request) -> Response:
        try:
            return await handler(request)
        except Refused as refused:
            return refused.response()
        except LongpointError as trouble:
            return refused_by_store(trouble).response()

    return told


async def _status_answer(_request: Request, trouble: Exception) -> Response:
    status = trouble.status_code if isinstance(trouble, HTTPException) else 404
    wrong = REFUSALS.get(status, REFUSALS[404])
    return Refused(
        status,
        "Something was asked of the crew's laptop.",
        wrong,
        "Ask from the app it gives.",
    ).response()


def _answer(content: object, status: int = 200) -> Response:
    # A browser may have written half a sign: it goes on as the escape that it came as.
    return _json(_written(content), status)


def _written(content: object) -> str:
    return json.dumps(content, ensure_ascii=True, separators=(",", ":"))


def _json(text: str, status: int = 200) -> Response:
    return Response(text, status, dict(ANSWER_HEADERS), "application/json")


def _shared_text(shared: Shared) -> str:
    # Each entry is JSON as it stands in the store: written once, given to every phone.
    head = _written({"seen": _seen(shared.seen), "more": shared.more})
    return f'{head[:-1]},"entries":[{",".join(shared.texts)}]}}'


def _seen(seen: Seen) -> dict[str, dict[str, object]]:
    return {device: {"counter": up.counter, "sum": up.sum} for device, up in seen.items()}
