"""One browser for every test that wants one: its driver can be started only once in a process."""

from __future__ import annotations

import shutil

import pytest
from playwright.sync_api import sync_playwright


@pytest.fixture(scope="session")
def chromium():
    """Debian's Chromium."""
    with sync_playwright() as play:
        # all is drawn by the processor, the view in three dimensions too
        args = ["--no-sandbox", "--disable-gpu", "--enable-unsafe-swiftshader"]
        one = play.chromium.launch(executable_path=shutil.which("chromium"), args=args)
        yield one
        one.close()
