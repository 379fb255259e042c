"""A browser's place taken by an in-process client: the same application, no socket."""

from __future__ import annotations

import asyncio
import html
import re
import time
from urllib.parse import urlsplit

import httpx
import pytest

from tommybar.web.app import make_app
from tommybar.web.settings import Settings

PATIENT = Settings(plan_patience=60.0)


class Browser:
    """Keeps its cookies, follows where it is sent, and knows the token of the last form it saw."""

    def __init__(self, app, address="127.0.0.1", host="http://127.0.0.1:8700"):
        self.app = app
        self.runner = asyncio.Runner()
        transport = httpx.ASGITransport(app, client=(address, 50000), raise_app_exceptions=False)
        self.client = httpx.AsyncClient(transport=transport, base_url=host, follow_redirects=True)
        self.token = ""

    def _seen(self, answer):
        found = re.search(r'name="token" value="(\w+)"', answer.text)
        self.token = found[1] if found else self.token
        return answer

    def get(self, path, **more):
        return self._seen(self.runner.run(self.client.get(path, **more)))

    def post(self, path, data=None, **more):
        """Send a form of ours: with the token, from our own page."""
        if not self.token:
            self.get("/")
        headers = {"sec-fetch-site": "same-origin", "origin": str(self.client.base_url).rstrip("/")}
        headers |= more.pop("headers", {})
        data = {"token": self.token, **(data or {})}
        return self._seen(self.runner.run(self.client.post(path, data=data, headers=headers, **more)))

    def settled(self, answer):
        """Wait for work that an answer shows the progress of, and give the page that comes of it."""
        for _ in range(600):
            path = urlsplit(str(answer.url)).path
            if not path.startswith("/work/"):
                return answer
            time.sleep(0.05)
            answer = self.get(path)
        raise AssertionError("the work did not end")

    def close(self):
        self.runner.run(self.client.aclose())
        self.runner.close()


@pytest.fixture(scope="session")
def words():
    """What a person reads of a page."""

    def read(answer):
        text = re.sub(r"(?s)<(script|style|svg).*?</\1>", " ", answer.text)
        return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", text)).split())

    return read


@pytest.fixture
def make_browser(tmp_path):
    """Browsers at one application, each with its own address."""
    made = []

    def make(settings=PATIENT, address="127.0.0.1", host="http://127.0.0.1:8700", app=None):
        made.append(Browser(app or make_app(tmp_path / "things", settings), address, host))
        return made[-1]

    yield make
    for one in made:
        one.close()


@pytest.fixture
def browser(make_browser):
    """A browser on the same machine, at an empty folder."""
    return make_browser()


@pytest.fixture(scope="module")
def opened(tmp_path_factory):
    """A browser with the demonstrator opened as demo, planned for the small bench; only to be looked at."""
    one = Browser(make_app(tmp_path_factory.mktemp("opened"), PATIENT))
    one.post("/designs", {"kind": "example", "example": "demonstrator", "name": "demo"})
    one.post("/designs/demo/shop", {"shop": "small-bench"})
    yield one
    one.close()
