"""What the store refuses, in sentences, and what the disk does to it, turned into such refusals."""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from typing import ClassVar

import sqlalchemy as sa

from scantling.engine.errors import EngineError


class StoreError(EngineError):
    """The disk, or the journal's own law, said no."""

    sentences: ClassVar[Mapping[str, str]] = {
        "id-taken": "An entry with this id is kept already, with other content: entries never change, write a new one.",
        "not-carriable": "The entry holds a number that cannot travel between devices: write it as text.",
        "newer-store": "This notebook was written by a newer Scantling ({names}): update this one first.",
        "not-a-store": "The file {path} is not a Scantling notebook: move it away, or choose another folder.",
        "damaged": "The notebook file is damaged ({why}): stop Scantling, then run scantling check --mend.",
        "no-folder": "The folder {path} cannot be used for the notebook ({why}): choose another with --data.",
        "disk": "The notebook could not be written ({why}): nothing of this was kept, try again when that is mended.",
        "busy": "Another program has been writing to the notebook for long: nothing of this was kept, try again.",
        "read-only": "The notebook can be read and not written ({why}): nothing of this was kept. Mend that, and start "
        "Scantling again.",
        "older-read-only": "The notebook is an older Scantling's and cannot be brought up to date ({why}): mend that.",
        "no-room-to-read": "There is no room to read {path}, which holds the newest entries: free some of the disk.",
        "gone": "The notebook file {path} was moved, deleted or replaced while it was open: nothing of this was kept. "
        "Export what is here, put the file back, and start Scantling again.",
        "other-database": "A database is named by a URL, postgresql+psycopg://user@host/name, and not by {name}.",
        "no-driver": 'The driver for PostgreSQL is not installed: pip install "scantling[postgresql]".',
        "no-database": "The database cannot be used ({why}): see that it runs, and who may use it.",
        "no-household-name": "{name} is no name for a household: a small letter, then small letters, digits and _.",
        "no-copy": "No copy of the notebook could be made ({why}): the copies before it are as they were.",
        "not-mended": "The notebook could not be mended ({why}): everything is as it was.",
    }


def is_busy(error: sa.exc.OperationalError) -> bool:
    """Whether it was another writer that kept us waiting: SQLite and PostgreSQL say it each in its own words."""
    return any(words in str(error.orig) for words in ("locked", "lock timeout"))


@contextmanager
def refusals() -> Iterator[None]:
    """What the disk does to us, as refusals; a broken constraint stays what it is, a fault of ours."""
    try:
        yield
    except sa.exc.IntegrityError:
        raise
    except sa.exc.OperationalError as error:
        raise StoreError("busy" if is_busy(error) else "disk", why=str(error.orig)) from error
    except sa.exc.DatabaseError as error:
        raise StoreError("damaged", why=str(error.orig)) from error
