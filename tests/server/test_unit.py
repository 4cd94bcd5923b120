"""The unit for a home server says nothing that the command line does not know, nor systemd where there is one."""

import configparser
import shlex
import shutil
import subprocess
from pathlib import Path

import pytest
from scantling.cli.parser import parse_command

UNIT = Path(__file__).resolve().parents[2] / "server" / "scantling.service"


@pytest.fixture
def unit():
    read = configparser.ConfigParser(interpolation=None)
    read.optionxform = str
    read.read_string(UNIT.read_text(encoding="utf-8"))
    return read


def test_what_it_starts_is_a_command_of_ours_with_options_of_ours(unit):
    program, *arguments = shlex.split(unit["Service"]["ExecStart"])
    assert Path(program).is_absolute()
    chosen = parse_command(arguments)
    assert chosen.run.__name__ == "run_serve"
    assert chosen.lan
    assert chosen.data == Path("/var/lib") / unit["Service"]["StateDirectory"]


def test_the_database_that_it_names_for_several_households_is_one_that_is_taken(unit):
    (line,) = [line for line in UNIT.read_text(encoding="utf-8").splitlines() if "--database" in line]
    _, _, url = line.partition("--database ")
    assert parse_command(["serve", "--database", url]).place.url == url


def test_nobody_but_its_own_user_reads_what_it_keeps(unit):
    said = unit["Service"]
    assert (said["UMask"], said["StateDirectoryMode"], said["ProtectSystem"]) == ("0077", "0700", "strict")


@pytest.mark.skipif(shutil.which("systemd-analyze") is None, reason="no systemd-analyze here to ask")
def test_systemd_takes_it(unit, tmp_path):
    """With a program that is there in the place of ours, which is not installed for the tests."""
    text = UNIT.read_text(encoding="utf-8").replace("/usr/local/bin/scantling", shutil.which("true"))
    (tmp_path / "scantling.service").write_text(text)
    done = subprocess.run(
        ["systemd-analyze", "verify", "--man=no", tmp_path / "scantling.service"],
        capture_output=True, text=True, check=False, timeout=60,
    )  # fmt: skip
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")
