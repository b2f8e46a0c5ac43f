"""Taking no new connections while those that are there are still served."""

from __future__ import annotations

import array
import os
import socket
import struct
from typing import Final

# Of <linux/filter.h>: a program of one to four instructions, each code, two jumps and a number.
_ATTACH_FILTER: Final = 26
_PROGRAM: Final = b"".join(
    struct.pack("HBBI", *instruction)
    for instruction in (
        (0x30, 0, 0, 13),  # load the flags of the TCP header
        (0x54, 0, 0, 0x12),  # keep SYN and ACK
        (0x15, 0, 1, 0x02),  # a SYN alone begins a connection
        (0x06, 0, 0, 0),  # drop it
        (0x06, 0, 0, 0xFFFFFFFF),  # take the rest, so that those under way come to their end
    )
)


def take_no_more(listener: int) -> bool:
    """Make the system drop attempts to connect to this listening socket; return whether it does.

    Closing a listener resets what waits in its queue. Dropping comes first, so that the queue can be emptied; whoever
    tries to connect meanwhile tries again after a second and is then refused.
    """
    program = array.array("B", _PROGRAM)
    address, length = program.buffer_info()
    described = struct.pack("HP", length // 8, address)
    try:
        with socket.socket(fileno=os.dup(listener)) as listening:
            listening.setsockopt(socket.SOL_SOCKET, _ATTACH_FILTER, described)
    except OSError:
        return False
    return True
