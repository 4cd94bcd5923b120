"""The wheel holds everything: the page, the demo house, the templates. It is built, unpacked far away, and served."""

import http.client
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
PATIENCE = 120


@pytest.fixture
def installed(tmp_path):
    """The environment in which `import scantling` finds the wheel's files and not the checkout's."""
    site = tmp_path / "site"
    pip = [sys.executable, "-m", "pip", "--disable-pip-version-check", "--quiet"]
    subprocess.run([*pip, "wheel", "--no-deps", "--wheel-dir", tmp_path, ROOT], check=True, timeout=PATIENCE)
    (wheel,) = tmp_path.glob("scantling-*.whl")
    subprocess.run([*pip, "install", "--no-deps", "--target", site, wheel], check=True, timeout=PATIENCE)
    return {**os.environ, "PYTHONPATH": str(site)}


def run(installed, tmp_path, *arguments):
    command = [sys.executable, "-m", "scantling", "--data", tmp_path / "notebook", *arguments]
    return subprocess.Popen(command, cwd=tmp_path, env=installed, stdout=subprocess.PIPE, text=True)


def test_the_wheel_serves_the_page_without_the_checkout(installed, tmp_path):
    found = subprocess.run([sys.executable, "-c", "import scantling; print(scantling.__file__)"], env=installed,
                           cwd=tmp_path, capture_output=True, text=True, check=True)  # fmt: skip
    assert found.stdout.startswith(str(tmp_path))
    process = run(installed, tmp_path, "demo", "--port", "0")
    try:
        address = next(line for line in process.stdout if line.startswith("http://localhost:"))
        connection = http.client.HTTPConnection("127.0.0.1", int(address.rpartition(":")[2]), timeout=PATIENCE)
        replies = {}
        for path in ("/", "/sw.js", "/api/", "/api/houses"):
            connection.request("GET", path)
            response = connection.getresponse()
            replies[path] = response.status, response.read().decode()
        connection.close()
    finally:
        process.terminate()
        process.communicate(timeout=PATIENCE)
    assert {path: status for path, (status, _) in replies.items()} == dict.fromkeys(replies, 200)
    assert len(json.loads(replies["/api/houses"][1])["houses"][0]["rooms"]) == 3
    assert '"ask": "read"' in replies["/api/"][1]
