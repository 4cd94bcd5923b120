"""An open notebook: readings, each one snapshot, and writings, each all or nothing."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from threading import Lock

import sqlalchemy as sa

from scantling.store import postgresql, readonly, sqlite
from scantling.store.catalog import identity_table
from scantling.store.ledger import Ledger
from scantling.store.migrations import migrate, missing_steps
from scantling.store.postgresql import Database
from scantling.store.refusals import StoreError, is_busy, refusals
from scantling.store.register import Register


class Store:
    """An open notebook folder. `reading` and `writing` give a Ledger; a writing is one transaction, all or nothing.

    `only_read` says why nothing can be written, or is empty.
    """

    def __init__(self, engine: sa.Engine, only_read: str = "") -> None:
        self._engine = engine
        # Who waits for SQLite's own lock looks again now and then, and in a crowd one may look in vain for long: those
        # of this process stand in line for it.
        self._line = Lock()
        self.only_read = only_read
        if not only_read:
            migrate(engine)
        elif missing_steps(engine):
            raise StoreError("older-read-only", why=only_read)
        with engine.connect() as connection:
            names = connection.execute(sa.select(identity_table.c.database_id)).scalars().all()
        if len(names) != 1:
            raise StoreError("damaged", why="it has lost its name")
        self.database_id: str = names[0]

    @contextmanager
    def reading(self) -> Iterator[Ledger]:
        """One snapshot: what is read within it belongs together."""
        with refusals(), self._engine.connect() as connection:
            yield Ledger(connection, self.database_id)

    @contextmanager
    def writing(self) -> Iterator[Ledger]:
        """All or nothing."""
        if self.only_read:
            raise StoreError("read-only", why=self.only_read)
        with self._line, refusals(), self._engine.execution_options(writes=True).begin() as connection:
            yield Ledger(connection, self.database_id)

    @contextmanager
    def register(self, writes: bool = False) -> Iterator[Register]:
        """Who may enter, in one transaction; `writes` to change it."""
        with refusals(), self._engine.execution_options(writes=writes).begin() as connection:
            yield Register(connection)

    def close(self) -> None:
        self._engine.dispose()


def open_store(place: Path | Database) -> Store:
    """The store of a notebook's folder or of a household in a database, made if it is not there. Raises StoreError.

    Where a folder cannot be written, its store is there to read.
    """
    return _open_database(place) if isinstance(place, Database) else _open_folder(place)


def _open_database(database: Database) -> Store:
    with _as_refusals():
        return _opened(postgresql.create_engine(database))


@contextmanager
def _as_refusals() -> Iterator[None]:
    """What a database server does to whoever comes."""
    try:
        yield
    except sa.exc.OperationalError as error:
        why = " ".join(str(error.orig).split())
        raise StoreError("busy" if is_busy(error) else "no-database", why=why) from error
    except sa.exc.DatabaseError as error:
        raise StoreError("no-database", why=str(error.orig).partition("\n")[0]) from error


def describe_database(database: Database) -> list[str] | None:
    """The steps that a household's journal has not had, None where it has not begun. Raises StoreError."""
    with _as_refusals():
        if database.household not in postgresql.list_households(database):
            return None
        engine = postgresql.engine_to_read(database)
        try:
            return missing_steps(engine)
        finally:
            engine.dispose()


def _open_folder(folder: Path) -> Store:
    path = folder / sqlite.FILE_NAME
    try:
        folder.mkdir(parents=True, exist_ok=True, mode=0o700)
        return _opened(sqlite.create_engine(path))
    except (OSError, sa.exc.OperationalError) as error:
        why = str(getattr(error, "orig", None) or getattr(error, "strerror", None) or error)
        if "locked" in why:
            raise StoreError("busy") from error
        return _open_to_read(folder, why)
    except sa.exc.DatabaseError as error:
        raise _what_is_wrong(path, str(error.orig)) from error


def _opened(engine: sa.Engine, only_read: str = "") -> Store:
    try:
        return Store(engine, only_read)
    except BaseException:
        engine.dispose()
        raise


def _open_to_read(folder: Path, why: str) -> Store:
    path = folder / sqlite.FILE_NAME
    try:
        if not path.is_file() or not path.stat().st_size:
            raise StoreError("no-folder", path=folder, why=why)
        return _opened(readonly.create_engine(path), why)
    except (OSError, sa.exc.OperationalError) as error:
        raise StoreError("no-folder", path=folder, why=why) from error
    except sa.exc.DatabaseError as error:
        raise _what_is_wrong(path, str(error.orig)) from error


def _what_is_wrong(path: Path, why: str) -> StoreError:
    """A notebook that is damaged is not a stranger's file: its head, at least, says so."""
    with path.open("rb") as file:
        ours = file.read(len(sqlite.HEAD)) == sqlite.HEAD
    return StoreError("damaged", why=why) if ours else StoreError("not-a-store", path=path)
