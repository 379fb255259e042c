"""The whole story through the page alone, as a new user: an empty folder to a build on another machine."""

from __future__ import annotations

import pytest

from . import first_evening, the_build

pytestmark = pytest.mark.browser


def test_from_an_empty_folder_to_the_last_tick(serve, devices, shoot):
    """Shop, design, sizes, drawing, pack, two parts made, a bore oversize, cuts of the network, the archive."""
    server = serve("story")
    desk = devices(server, "desk")
    first_evening.describe_a_shop(desk, shoot)
    first_evening.try_the_dial(desk, shoot)
    first_evening.fit_the_design(desk, shoot)
    first_evening.edit_the_drawing(desk, shoot)
    first_evening.print_the_pack(desk, shoot)

    build = the_build.begin(desk, shoot)
    tablet = devices(server, "tablet", light="night")
    the_build.at_the_machine(tablet, build)
    the_build.make_the_bushes(tablet, shoot)
    the_build.choose_a_way_out(tablet, shoot)
    assert devices.faults == []
