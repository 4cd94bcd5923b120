"""The journal of the demo's phone: entries one after the other, their ids and stamps made up alike each time."""

#: A room's id, and those of its walls from left to right.
Room = tuple[str, list[str]]
PHONE = "70686f6e65000001"
FIRST_MORNING = 1_773_480_600_000  # a Saturday in March, in milliseconds
BETWEEN_ENTRIES = 41_000


class Journal:
    """Entries as the demo's phone made them, one after the other."""

    def __init__(self) -> None:
        self.entries: list[dict] = []

    def _uuid(self) -> str:
        count = len(self.entries) * 2 + 1
        ms = f"{FIRST_MORNING + len(self.entries) * BETWEEN_ENTRIES:012x}"
        return f"{ms[:8]}-{ms[8:]}-7{count:03x}-8000-{count:012x}"

    def say(self, kind: str, /, **body: object) -> str:
        """Append an entry; gives back its id."""
        entry = self._uuid()
        stamp = f"{FIRST_MORNING + len(self.entries) * BETWEEN_ENTRIES:012x}-0000-{PHONE}"
        self.entries.append(
            {
                "id": entry,
                "device": PHONE,
                "seq": len(self.entries) + 1,
                "stamp": stamp,
                "version": 1,
                "kind": kind,
                "body": body,
                "supersedes": [],
            }
        )
        return entry

    def new(self, kind: str, /, **body: object) -> str:
        """A new house, room, wall or thing; gives back the id it is known by."""
        subject = self._uuid()
        subject = subject[:-1] + f"{(int(subject[-1], 16) + 1) % 16:x}"
        self.say(kind, **{kind: subject}, **body)
        return subject

    def read(self, of: str, what: str, *texts: str) -> list[str]:
        return [self.say("reading", of=of, what=what, text=text) for text in texts]
