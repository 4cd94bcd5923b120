"""One thing that was looked at: what it is about, a key that stays, whether it is wrong, and a sentence.

What cannot be known from here is no fault: a guess says that it is one, and is not counted as wrong.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, ClassVar

from scantling.engine.errors import EngineError


class Said(EngineError):
    sentences: ClassVar[Mapping[str, str]] = {
        "folder-good": "The folder {path} can be read and written.",
        "folder-none": "There is no notebook in {path} yet: scantling serve begins one.",
        "folder-closed": "The folder {path} cannot be {what} ({why}): make it yours, or choose another with --data.",
        "folder-open": "Others on this machine can read the folder {path}: chmod 700 {path} closes it.",
        "served": "A Scantling serves this notebook now; a second one is refused.",
        "not-served": "Nobody serves this notebook at the moment.",
        "disk-good": "{free} MB are free on the disk.",
        "disk-full": "Only {free} MB are free on the disk of {path}, and copies of the notebook want {wanted}: free "
        "some, or move the folder and name it with --data.",
        "notebook-good": "The notebook is sound: {entries} entries, each proved by its marks, {copies} dated copies.",
        "notebook-bad": "{why} Stop Scantling where it runs, then run scantling check --mend.",
        "notebook-older": "The notebook is an older Scantling's ({step}): the next start brings it up to date.",
        "database-good": "The database answers, and the journal of {household} is up to date.",
        "database-new": "The database answers; {household} has no journal in it yet: scantling pair begins one.",
        "database-older": "The database answers; the next start brings the journal of {household} up to date, "
        "by {steps}.",
        "blobs-good": "All {count} attachments that the notebook names are here, each proved by its digest.",
        "blobs-closed": "The attachments in {path} cannot be read ({why}): make them yours, then look again.",
        "blob-spoilt": "The attachment in {path} is not what its name says: delete that file, and a device that has it "
        "brings it again.",
        "blobs-missing": "{count} attachments that the notebook names are not here: {names}. Open Scantling near this "
        "laptop on the device that took them, and leave it open until it says that all is shared; where that device is "
        "gone, scantling restore brings them home from a backup that has them.",
        "blobs-apart": "{count} attachments that the notebook names are not in {path}: {names}. Where several servers "
        "stand on this database, give all of them one folder with --data, or each has only what came to it. Else open "
        "Scantling on the device that took them, and leave it open until it says that all is shared.",
        "blobs-coming": "{count} attachments are here in part: they go on when the device that has them is back.",
        "blobs-unnamed": "{count} attachments are here that no entry names which this Scantling reads: {names}. Leave "
        "them: the entry may still come from a device, and it does no harm if none does.",
        "blobs-aside": "{count} spoilt attachments were set aside in {path}, where something may still be seen in "
        "them: delete them when you have looked.",
        "clock-good": "The clock says {now} UTC, which fits the notebook.",
        "clock-off": "The clock says {now} UTC, which cannot be: set it, for certificates and pairing codes go by it.",
        "clock-behind": "The clock says {now} UTC, and the notebook was written on {then}: set the clock.",
        "clock-ahead": "{count} entries bear times more than a day after this clock, up to {then}: this clock or "
        "that of the device {device} is wrong. Nothing is lost by it; set the one that is.",
        "clock-alone": "The system says that it sets its clock by no other: look at it now and then.",
        "lan-none": "This notebook is not on the house's network: scantling serve --lan puts it there.",
        "name-good": "Phones know this laptop as {origin}, and the network answers to that name with its addresses.",
        "name-kept": "Phones know this laptop as {origin}; the name is announced while scantling serve --lan runs.",
        "name-silent": "Nobody on the network answers to {name}: phones find this laptop by its address only. See that "
        "the router lets multicast through between its own devices, and that both are on one network.",
        "name-taken": "Another machine answers to {name}, at {addresses}: end Scantling there, it was copied from "
        "here.",
        "addresses-good": "This machine is at {addresses} on its network.",
        "addresses-none": "This machine has no address on a private network: join one, or phones cannot reach it.",
        "port-free": "Port {port} is free.",
        "port-ours": "Port {port} is answered by the Scantling that runs here.",
        "port-taken": "Port {port} is taken by another program: end that one, or choose another port with {option}.",
        "port-other": "Port {port} is answered by a Scantling that serves another notebook: stop it, or choose another "
        "port with {option}.",
        "authority-good": "The authority of this laptop vouches for {name} until {ends}.",
        "authority-over": "The authority of this laptop ended on {ends}: move the folder {folder} away and start "
        "scantling serve --lan again; every phone then has to trust a new one.",
        "authority-name": "The authority of this laptop vouches for another name than {name}: move the folder {folder} "
        "away and start scantling serve --lan again; every phone then has to trust a new one.",
        "leaf-good": "The certificate is good until {ends}, and is renewed by itself.",
        "leaf-next": "The certificate is made anew at the next scantling serve --lan: {why}.",
        "leaf-stale": "The certificate that is shown is no longer good, {why}, and was not renewed: stop Scantling and "
        "start it again.",
        "own-good": "The certificate {path} is good until {ends}.",
        "firewall-none": "No firewall that could be seen keeps phones out.",
        "firewall-open": "The firewall {name} lets phones in at {ports}.",
        "firewall-closed": "The firewall {name} keeps phones out at {ports}: {way}",
        "firewall-perhaps": "The firewall {name} is on, and whether it lets phones in cannot be seen from here. If a "
        "phone finds nothing: {way}",
    }  # fmt: skip


@dataclass(frozen=True, slots=True)
class Finding:
    about: str
    key: str
    wrong: bool
    message: str


def good(about: str, key: str, **facts: Any) -> Finding:
    """Told, and not wrong: it is well, or it is a guess."""
    return Finding(about, key, False, Said(key, **facts).message)


def wrong(about: str, key: str, **facts: Any) -> Finding:
    return Finding(about, key, True, Said(key, **facts).message)


def refused(about: str, error: EngineError) -> Finding:
    """What another part of Scantling says of it."""
    return Finding(about, error.key, True, error.message)
