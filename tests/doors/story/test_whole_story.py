"""The whole story through the page alone, as a new user: an empty folder to a build on another machine."""

from __future__ import annotations

import pytest

from . import first_evening, the_build

pytestmark = pytest.mark.browser


def test_from_an_empty_folder_to_the_last_tick(serve, devices, shoot, serious, tmp_path):
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
    the_build.choose_a_way_out(tablet, shoot, serious)
    the_build.go_on_without_the_server(tablet, build, server, shoot)
    phone = devices(server, "phone")
    the_build.go_on_with_another_device(tablet, phone, build, shoot)
    the_build.disagree_and_settle(tablet, phone, desk, build, shoot)
    the_build.take_over_what_was_built(desk, build, shoot)
    the_build.take_it_all_elsewhere(desk, devices(serve("elsewhere"), "desk"), shoot, tmp_path)
    assert devices.faults == []
