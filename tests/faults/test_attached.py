"""Bad days for attachments, drawn from a seed: whatever anybody still holds whole is whole everywhere in the end.

Pieces and answers are lost, doubled, delayed, cut short and spoilt; the laptop is killed between any two steps of
taking one in; a bag is stolen, and laptop and phones are set up again from older copies. What a killed process leaves
is asked in `tests/server/test_blobs.py` too, and the page's own code in `tests/browser/test_carried.py`.
"""

import hashlib
import json
import os
import random
import shutil
import tempfile
from pathlib import Path

import pytest
from scantling.blobs import BlobError, Blobs, keep, parse_piece
from scantling.blobs.piece import Piece
from scantling.doctor.attachments import look_at_attachments
from scantling.engine.errors import EngineError

from tests.faults.days import MEMORY

RUNS = max(1, int(os.environ.get("SCANTLING_RUNS", "300")) // 6)
FIRST = int(os.environ.get("SCANTLING_SEED", "1"))
PARTS = min(RUNS, 4)
EVENTS = 60
PHONES = 3
STEP = 700
SIZES = (1, STEP - 1, STEP, STEP + 1, 2_500, 6_000)
ROUNDS_TO_REST = 3


class Killed(BaseException):
    """The laptop's process is no more; no `except` of its own may catch that."""


class Refused(Exception):
    """The laptop answered, and would not have this piece."""


class Keeper:
    """What the laptop keeps, and the way to it; while it is calm, all arrives once."""

    def __init__(self, chance, folder, monkeypatch):
        self.chance, self.folder, self.calm = chance, folder, False
        self.copies, self.old, self.deaths, self.refusals = [], [], 0, 0
        self.blobs = Blobs(folder / "blobs")
        #: How much of each was acknowledged, by the name of what is coming: that much was flushed.
        self.proved = {}
        for owner, name in ((os, "fsync"), (os, "replace"), (keep, "flush_folder")):
            monkeypatch.setattr(owner, name, self._mortal(getattr(owner, name)))
        monkeypatch.setattr(keep, "PIECE_BYTES", STEP)  # an answer is cut into pieces too

    def _mortal(self, step):
        def take(*given):
            if not self.calm and self.chance.random() < 0.04:
                self._tear()
                raise Killed
            step(*given)
            if not self.calm and self.chance.random() < 0.04:
                raise Killed

        return take

    def _tear(self):
        """Of what was not flushed any part may be on the disk."""
        for path in (self.folder / "blobs" / "coming").glob("*"):
            size = path.stat().st_size
            os.truncate(path, self.chance.randint(min(size, self.proved.get(path.name, 0)), size))

    def offset(self, blob):
        return self._alive(lambda: self.blobs.offset(blob))

    def _alive(self, work):
        """What comes of it, or LookupError where the laptop died of it; it is started anew then."""
        try:
            return work()
        except Killed:
            self.deaths += 1
            self.blobs = Blobs(self.folder / "blobs")
            raise LookupError from None

    def bring(self, piece):
        """How many bytes it has now, None for all. Raises LookupError where no answer came, and Refused."""
        text = json.dumps(piece.body())
        luck = 1 if self.calm else self.chance.random()
        if luck < 0.08:
            raise LookupError
        self.old.append(text)
        if luck < 0.13:
            text = self._spoilt(text)
        offset = self._receive(text)
        if 0.13 <= luck < 0.20:
            offset = self._receive(text)
        if 0.20 <= luck < 0.28:
            raise LookupError
        return offset

    def _receive(self, text):
        try:
            piece = parse_piece(json.loads(text))
            offset = self._alive(lambda: self.blobs.receive(piece))
        except (EngineError, ValueError) as error:
            self.refusals += 1
            raise Refused from error
        if offset is not None:
            self.proved[f"{piece.blob}.{piece.size}"] = offset
        return offset

    def _spoilt(self, text):
        """Cut short, or a letter of it another."""
        if self.chance.random() < 0.5:
            return text[: self.chance.randrange(len(text))]
        at = self.chance.randrange(text.index('"data"') + 9, len(text) - 2)
        return f"{text[:at]}{'A' if text[at] != 'A' else 'B'}{text[at + 1 :]}"

    def hand_over(self, blob, at):
        """A piece as it arrives; None where there is none; raises LookupError where no answer came."""
        try:
            text = json.dumps(self.blobs.read(blob, at).body())
        except BlobError:
            return None
        luck = 1 if self.calm else self.chance.random()
        if luck < 0.10:
            raise LookupError
        try:
            return parse_piece(json.loads(self._spoilt(text) if luck < 0.20 else text))
        except (EngineError, ValueError) as error:
            raise LookupError from error

    def deliver_an_old_piece(self):
        if self.old:
            try:
                self._receive(self.chance.choice(self.old))
            except (LookupError, Refused):
                return

    def copy_aside(self):
        aside = self.folder / f"copy-{len(self.copies)}"
        shutil.copytree(self.folder / "blobs", aside) if (self.folder / "blobs").exists() else aside.mkdir()
        self.copies.append((aside, dict(self.proved)))

    def put_back(self):
        if self.copies:
            aside, proved = self.chance.choice(self.copies)
            self.proved = dict(proved)
            shutil.rmtree(self.folder / "blobs", ignore_errors=True)
            shutil.copytree(aside, self.folder / "blobs")
            self.blobs = Blobs(self.folder / "blobs")


class Carrier:
    """A phone, doing with attachments what `web/journal/carry.js` and `blobs.js` do."""

    def __init__(self):
        self.whole: dict[str, bytes] = {}
        self.coming: dict[str, bytes] = {}

    def copy(self):
        return dict(self.whole), dict(self.coming)

    def put_back(self, copy):
        self.whole, self.coming = map(dict, copy)

    def carry(self, laptop, named):
        try:
            for blob, data in self.whole.items():
                self._send(laptop, blob, data)
            for blob in sorted(named - self.whole.keys()):
                self._fetch(laptop, blob)
        except LookupError:
            return

    def _send(self, laptop, blob, data):
        at = laptop.offset(blob)
        while at is not None:
            try:
                offset = laptop.bring(Piece(blob, len(data), at, data[at : at + STEP]))
            except Refused:
                return  # one that it will not have holds up no other
            assert offset is None or offset > at
            at = offset

    def _fetch(self, laptop, blob):
        while blob not in self.whole:
            held = self.coming.get(blob, b"")
            piece = laptop.hand_over(blob, len(held))
            if piece is None:
                return
            self.take(piece)

    def take(self, piece):
        held = self.coming.get(piece.blob, b"")
        if piece.blob in self.whole or piece.at > len(held):
            return
        held += piece.data[len(held) - piece.at :]
        self.coming[piece.blob] = held
        if len(held) == piece.size:
            del self.coming[piece.blob]
            if hashlib.sha256(held).hexdigest() == piece.blob:
                self.whole[piece.blob] = held


def attach(chance, phone, named):
    data = chance.randbytes(chance.choice(SIZES))
    blob = hashlib.sha256(data).hexdigest()
    phone.whole[blob] = data
    named.add(blob)


def carry_a_file(chance, phone, other):
    """All of a phone's, in order but with lines twice; or cut off anywhere."""
    lines = [Piece(blob, len(data), at, data[at : at + STEP])
             for blob, data in phone.whole.items() for at in range(0, len(data), STEP)]  # fmt: skip
    for line in lines[: chance.randrange(len(lines) + 1)]:
        for _ in range(chance.choice((1, 1, 2))):
            other.take(line)


def live(chance, laptop, phones, named):
    copies = []
    for _ in range(EVENTS):
        phone = chance.choice(phones)
        luck = chance.random()
        if luck < 0.25:
            attach(chance, phone, named)
        elif luck < 0.70:
            phone.carry(laptop, named)
        elif luck < 0.78:
            laptop.deliver_an_old_piece()
        elif luck < 0.84:
            carry_a_file(chance, phone, chance.choice(phones))
        elif luck < 0.92:
            laptop.copy_aside()
            copies.append((phone, phone.copy()))
        elif luck < 0.97 and copies:
            laptop.put_back()
            other, copy = chance.choice(copies)
            other.put_back(copy)
        else:
            assert laptop.blobs.damaged() == []


def come_to_rest(laptop, phones, named):
    laptop.calm = True
    for _ in range(ROUNDS_TO_REST):
        for phone in phones:
            phone.carry(laptop, named)


def whole_of(phones, laptop):
    return {blob for phone in phones for blob in phone.whole}.union(laptop.blobs.whole())


def check_doctor(laptop, named, before, seed):
    """The doctor finds nothing wrong but what nobody has any more: that it says."""
    texts = [json.dumps({"kind": "attachment", "body": {"blob": blob}}) for blob in sorted(named)]
    found = {finding.key: finding for finding in look_at_attachments(laptop.blobs, texts)}
    lost = set(named) - before - laptop.blobs.begun()
    assert {key for key in found if found[key].wrong} == ({"blobs-missing"} if lost else set()), seed
    assert not lost or f"{len(lost)} attachments" in found["blobs-missing"].message, seed
    assert ("blobs-good" in found) == (set(named) <= before and bool(named)), seed
    assert "blobs-unnamed" not in found, seed


@pytest.mark.parametrize("part", range(PARTS))
def test_after_any_bad_days_every_attachment_that_anybody_holds_is_whole_everywhere(part, monkeypatch):
    deaths = refusals = 0
    for seed in range(FIRST + part, FIRST + RUNS, PARTS):
        with tempfile.TemporaryDirectory(dir=MEMORY) as folder, monkeypatch.context() as patched:
            chance, named = random.Random(seed), set()
            laptop, phones = Keeper(chance, Path(folder), patched), [Carrier() for _ in range(PHONES)]
            live(chance, laptop, phones, named)
            before = whole_of(phones, laptop)
            come_to_rest(laptop, phones, named)
            assert set(laptop.blobs.whole()) == before, seed
            assert laptop.blobs.damaged() == [], seed
            for phone in phones:
                assert phone.whole.keys() == before, seed
                assert all(hashlib.sha256(data).hexdigest() == blob for blob, data in phone.whole.items()), seed
            for blob in before:
                data = b"".join(piece.data for piece in laptop.blobs.pieces(blob))
                assert hashlib.sha256(data).hexdigest() == blob, seed
            check_doctor(laptop, named, before, seed)
            deaths, refusals = deaths + laptop.deaths, refusals + laptop.refusals
    assert RUNS < 50 or min(deaths, refusals) > 0, "the days were not bad"
