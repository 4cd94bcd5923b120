"""Whether a firewall keeps phones out: mostly a guess, for most of them tell nobody but an administrator.

A phone asks at two ports by TCP, and for the laptop's name by multicast at 5353 by UDP (RFC 6762).
"""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

from scantling.doctor.finding import Finding, good, wrong

#: Gives what a command of the system says, None where there is no such command.
Run = Callable[[Sequence[str]], str | None]
SECONDS = 5
UFW = Path("/etc/ufw")
APPLE = "/usr/libexec/ApplicationFirewall/socketfilterfw"


def run_command(command: Sequence[str]) -> str | None:
    if shutil.which(command[0]) is None:
        return None
    try:
        done = subprocess.run(command, capture_output=True, text=True, timeout=SECONDS, check=False)
    except (OSError, subprocess.TimeoutExpired):
        return None
    return done.stdout


def look_at_firewall(
    ports: Sequence[int], run: Run, ufw: Path = UFW, platform: str = sys.platform
) -> Iterator[Finding]:
    """`ports`: where phones ask by TCP."""
    if platform == "darwin":
        found = _apple(run)
    elif platform == "win32":
        found = _windows(ports, run)
    else:
        found = [*_firewalld(ports, run), *_ufw(ports, ufw)]
    yield from found or [good("firewall", "firewall-none")]


def _firewalld(ports: Sequence[int], run: Run) -> list[Finding]:
    if (run(("firewall-cmd", "--state")) or "").strip() != "running":
        return []
    closed = [port for port in ports if (run(("firewall-cmd", f"--query-port={port}/tcp")) or "").strip() != "yes"]
    if not closed:
        return [good("firewall", "firewall-open", name="firewalld", ports=_listed(ports))]
    options = " ".join(f"--add-port={port}/tcp" for port in closed)
    way = f"sudo firewall-cmd --permanent --add-service=mdns {options}, then sudo firewall-cmd --reload."
    return [wrong("firewall", "firewall-closed", name="firewalld", ports=_listed(closed), way=way)]


def _ufw(ports: Sequence[int], folder: Path) -> list[Finding]:
    try:
        if not re.search(r"^\s*ENABLED=yes", (folder / "ufw.conf").read_text(encoding="utf-8"), re.MULTILINE):
            return []
    except OSError:
        return []
    way = f"{'; '.join(f'sudo ufw allow {port}/tcp' for port in ports)}; sudo ufw allow 5353/udp."
    try:
        rules = (folder / "user.rules").read_text(encoding="utf-8")
    except OSError:
        return [good("firewall", "firewall-perhaps", name="ufw", way=way)]
    allowed = set(re.findall(r"^### tuple ### allow (?:any|tcp) (\d+) ", rules, re.MULTILINE))
    closed = [port for port in ports if str(port) not in allowed]
    if closed:
        return [wrong("firewall", "firewall-closed", name="ufw", ports=_listed(closed), way=way)]
    return [good("firewall", "firewall-open", name="ufw", ports=_listed(ports))]


def _apple(run: Run) -> list[Finding]:
    if "enabled" not in (run((APPLE, "--getglobalstate")) or ""):
        return []
    way = "System Settings, Network, Firewall, Options: allow Python to take incoming connections."
    return [good("firewall", "firewall-perhaps", name="of macOS", way=way)]


def _windows(ports: Sequence[int], run: Run) -> list[Finding]:
    if not re.search(r"\bON\b", run(("netsh", "advfirewall", "show", "currentprofile", "state")) or ""):
        return []
    way = f"let Python through on private networks, at the ports {_listed(ports)}, in Windows Security."
    return [good("firewall", "firewall-perhaps", name="of Windows", way=way)]


def _listed(ports: Sequence[int]) -> str:
    return ", ".join(map(str, ports))
