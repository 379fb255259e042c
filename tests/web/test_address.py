"""Where the page listens, and by which names the network finds it."""

from __future__ import annotations

import pytest

from tommybar.refusals import Refusal
from tommybar.web.address import addresses, listening


def test_a_port_that_is_taken_is_told():
    """The words name the port and what to do."""
    with listening("127.0.0.1", 0) as door:
        port = door.getsockname()[1]
        with pytest.raises(Refusal, match=f"Port {port} cannot be listened on.*take another --port"):
            listening("127.0.0.1", port)


def test_the_addresses_for_others_are_not_those_of_this_machine_alone():
    """No loopback address is told to a tablet."""
    assert [one for one in addresses() if one.startswith("127.") or one == "localhost"] == []
