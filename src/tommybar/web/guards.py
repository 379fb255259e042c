"""What every request must pass before a page sees it: host, size, origin, pairing; and what goes back."""

from __future__ import annotations

from http.cookies import CookieError, SimpleCookie
from ipaddress import ip_address

from starlette.datastructures import Headers, MutableHeaders
from starlette.exceptions import HTTPException
from starlette.responses import PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from tommybar.web.pairing import Pairing
from tommybar.web.settings import Settings

POLICY = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self' data:",
        "font-src 'self' data:",
        "connect-src 'self'",
        "form-action 'self'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
    )
)
HEADERS = {
    "content-security-policy": POLICY,
    "x-content-type-options": "nosniff",
    "x-frame-options": "DENY",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), microphone=(), geolocation=()",
}
OPEN_TO_ALL = ("/pair", "/static/")  # what a machine that is not paired yet may see
SAFE = ("GET", "HEAD")


class Guards:
    """ASGI middleware round the whole page."""

    def __init__(self, app: ASGIApp, settings: Settings, pairing: Pairing) -> None:
        self.app, self.settings, self.pairing = app, settings, pairing

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request through, or answer it here."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        headers = Headers(scope=scope)
        refused = (
            self._host(headers)
            or self._origin(scope, headers)
            or self._size(headers)
            or self._stranger(scope, headers)
        )
        if refused is not None:
            await refused(scope, receive, _with_headers(send, scope["path"]))
            return
        body = _limited(receive, self.settings.largest_body)
        await self.app(scope, body, _with_headers(send, scope["path"]))

    def _host(self, headers: Headers) -> Response | None:
        """Called by another name, the page is being led astray by a foreign name server."""
        if _host_name(headers.get("host", "")) in self.settings.hosts:
            return None
        return PlainTextResponse("This page is not called by that name.", 400)

    def _origin(self, scope: Scope, headers: Headers) -> Response | None:
        """What changes something must come from a page of ours."""
        if scope["method"] in SAFE:
            return None
        site, origin = headers.get("sec-fetch-site"), headers.get("origin")
        if site is not None and site != "same-origin":
            return PlainTextResponse("This was sent from another site; it is not taken.", 403)
        if origin is not None and origin.partition("://")[2] != headers.get("host"):
            return PlainTextResponse("This was sent from another site; it is not taken.", 403)
        return None

    def _size(self, headers: Headers) -> Response | None:
        told = headers.get("content-length", "0")
        if not told.isdigit() or int(told) > self.settings.largest_body:
            return PlainTextResponse(_too_large(self.settings.largest_body), 413)
        return None

    def _stranger(self, scope: Scope, headers: Headers) -> Response | None:
        """Another machine must have given the code."""
        if same_machine(scope) or scope["path"].startswith(OPEN_TO_ALL):
            return None
        if self.settings.lan and self.pairing.paired(_cookie(headers, "paired")):
            return None
        if scope["method"] in SAFE and self.settings.lan:
            return RedirectResponse("/pair", 303)
        return PlainTextResponse("This machine is not paired.", 403)


def _too_large(most: int) -> str:
    return f"More was sent than is taken; at most {most // 1000} kB."


def same_machine(scope: Scope) -> bool:
    """Whether a request comes from the machine on which the page runs."""
    client = scope.get("client")
    try:
        return client is not None and ip_address(client[0]).is_loopback
    except ValueError:
        return False


def _host_name(host: str) -> str:
    if host.startswith("["):
        return host.partition("]")[0] + "]"
    return host.partition(":")[0].lower()


def _cookie(headers: Headers, name: str) -> str:
    try:
        found = SimpleCookie(headers.get("cookie", "")).get(name)
    except CookieError:
        return ""
    return found.value if found else ""


def _limited(receive: Receive, most: int) -> Receive:
    """The body, as long as it stays within what is taken, whatever length was told."""
    seen = 0

    async def counted() -> Message:
        nonlocal seen
        message = await receive()
        if message["type"] == "http.request":
            seen += len(message.get("body", b""))
            if seen > most:
                raise HTTPException(413, _too_large(most))
        return message

    return counted


def _with_headers(send: Send, path: str) -> Send:
    async def sent(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in HEADERS.items():
                headers.setdefault(name, value)
            headers.setdefault(
                "cache-control", "max-age=86400" if path.startswith("/static/") else "no-store"
            )
        await send(message)

    return sent
