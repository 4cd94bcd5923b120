"""QR codes, read back by another reader (ZXing): what a phone's camera sees in the terminal and on the page."""

import re

import pytest
import zxingcpp
from scantling.lan.code import code_path, terminal_code

LINKS = ["https://scantling-7f3kq2.local:8443/#pair=ABCD-EFGH", "http://192.0.2.7:8016/", "https://" + "n" * 200]
#: What stands for light above and below in one letter.
HALVES = {" ": (0, 0), "▀": (1, 0), "▄": (0, 1), "█": (1, 1)}
MODULE = 6


def read(light):
    """The text of the code in a picture of light and dark modules."""
    rows = [bytes(255 * module for module in row for _ in range(MODULE)) for row in light for _ in range(MODULE)]
    (found,) = zxingcpp.read_barcodes(memoryview(b"".join(rows)).cast("B", (len(rows), len(rows[0]))))
    return found.text


@pytest.mark.parametrize("link", LINKS)
def test_a_code_in_the_terminal_says_the_link(link):
    lines = terminal_code(link).splitlines()
    assert read([[HALVES[letter][half] for letter in line] for line in lines for half in (0, 1)]) == link


@pytest.mark.parametrize("link", LINKS)
def test_a_code_on_a_page_says_the_link(link):
    drawn = code_path(link)
    light = [[1] * drawn["side"] for _ in range(drawn["side"])]
    for column, line in re.findall(r"M(\d+) (\d+)h1v1h-1z", drawn["path"]):
        light[int(line)][int(column)] = 0
    assert read(light) == link
