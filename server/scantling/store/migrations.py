"""The steps that bring a notebook of any age here, each a small named function, run once.

A step never changes once it has been in people's hands: what is to be otherwise is another step. What a step needs of
one database alone stands in that database's own module.
"""

import secrets
from collections.abc import Callable, Mapping
from types import ModuleType
from typing import Any

import sqlalchemy as sa

from scantling.store import postgresql, sqlite
from scantling.store.canonical import NOTHING, digest_of, sum_of
from scantling.store.catalog import code_table, device_table, identity_table, journal_table, migration_table
from scantling.store.refusals import StoreError

#: The module of each database that the store can stand on, by the name that SQLAlchemy gives its dialect.
DIALECTS: Mapping[str, ModuleType] = {"sqlite": sqlite, "postgresql": postgresql}
ROWS_AT_ONCE = 1000


def migrate(engine: sa.Engine) -> None:
    """Run the steps that this file has not had, all in one transaction with the record of each."""
    if not missing_steps(engine):
        return  # without the lock that a writer takes: a notebook opens while another program writes
    with engine.execution_options(writes=True).begin() as connection:
        migration_table.create(connection, checkfirst=True)
        done = set(connection.execute(sa.select(migration_table.c.name)).scalars())
        for name, step in MIGRATIONS.items():
            if name not in done:
                step(connection)
                connection.execute(sa.insert(migration_table).values(name=name))


def missing_steps(engine: sa.Engine) -> list[str]:
    """The steps that this notebook has not had. Raises StoreError for one that has had steps unknown here."""
    with engine.connect() as connection:
        there = sa.inspect(connection).has_table(migration_table.name)
        done = set(connection.execute(sa.select(migration_table.c.name)).scalars()) if there else set()
    unknown = ", ".join(sorted(map(str, done - MIGRATIONS.keys())))
    if unknown:
        newer = unknown > max(MIGRATIONS)
        raise StoreError("newer-store", names=unknown) if newer else StoreError("damaged", why=f"a step {unknown}")
    return [name for name in MIGRATIONS if name not in done]


#: The journal as its first step made it: an entry had to have a number that its device had given to no other.
_numbered_journal = sa.Table(
    "journal",
    sa.MetaData(),
    sa.Column("row", sa.Integer, primary_key=True, autoincrement=True),
    sa.Column("id", sa.Text, nullable=False, unique=True),
    sa.Column("device", sa.Text, nullable=False),
    sa.Column("seq", sa.Integer, nullable=False),
    sa.Column("entry", sa.Text, nullable=False),
    sa.Column("mark", sa.Text, nullable=False, unique=True),
    sa.UniqueConstraint("device", "seq"),
    sqlite_autoincrement=True,
)


def create_journal(connection: sa.Connection) -> None:
    _numbered_journal.create(connection)


def name_the_database(connection: sa.Connection) -> None:
    """A name that no other database has: the mark before the first row."""
    identity_table.create(connection)
    connection.execute(sa.insert(identity_table).values(database_id=secrets.token_hex(16)))


def forbid_changes(connection: sa.Connection) -> None:
    own(connection).forbid_changes_by_number(connection)


def know_entries_by_id(connection: sa.Connection) -> None:
    """A number given twice is no reason to refuse an entry: two copies of one phone have each given it in good faith.

    The table is made anew, for SQLite cannot drop a constraint. Row numbers and marks stay: devices go on from them.
    """
    own(connection).allow_changes(connection)
    connection.execute(sa.text("ALTER TABLE journal RENAME TO numbered_journal"))
    journal_table.create(connection)
    old = sa.table("numbered_journal", *(sa.column(column.name) for column in _numbered_journal.columns))
    total, row = NOTHING, 0
    while rows := _rows_after(connection, old, row):
        for one in rows:
            one["digest"] = digest_of(one["entry"])
            one["total"] = total = sum_of((total, one["digest"]))
        connection.execute(sa.insert(journal_table), rows)
        row = rows[-1]["row"]
    connection.execute(sa.text("DROP TABLE numbered_journal"))
    own(connection).forbid_changes(connection)


def _rows_after(connection: sa.Connection, table: sa.TableClause, row: int) -> list[dict[str, Any]]:
    wanted = sa.select(table).where(table.c.row > row).order_by(table.c.row).limit(ROWS_AT_ONCE)
    return [dict(found) for found in connection.execute(wanted).mappings()]


def register_devices(connection: sa.Connection) -> None:
    device_table.create(connection)
    code_table.create(connection)


def own(connection: sa.Connection) -> ModuleType:
    """The module that knows this connection's database."""
    return DIALECTS[connection.dialect.name]


MIGRATIONS: Mapping[str, Callable[[sa.Connection], None]] = {
    "001 journal": create_journal,
    "002 database id": name_the_database,
    "003 append-only": forbid_changes,
    "004 known by id": know_entries_by_id,
    "005 who may enter": register_devices,
}
