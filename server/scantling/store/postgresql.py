"""What is PostgreSQL's own: a schema for each household, the lock that a writer takes, the trigger on its journal.

Several servers may stand on one database. Whoever writes to a household's journal waits for whoever does, so that row
numbers become visible in their order and no phone's cursor steps over one. Copies and mending are PostgreSQL's matter.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

import sqlalchemy as sa

from scantling.store.refusals import StoreError

BUSY_SECONDS = 10
PREFIX = "household_"
HOUSEHOLD = re.compile(r"[a-z][a-z0-9_]{0,39}\Z")


@dataclass(frozen=True, slots=True)
class Database:
    """A household's journal in a database, by its URL. Raises StoreError for a name that no household can have."""

    url: str = field(repr=False)  # there may be a password in it
    household: str = "home"

    def __post_init__(self) -> None:
        if not HOUSEHOLD.match(self.household):
            raise StoreError("no-household-name", name=self.household)

    @property
    def schema(self) -> str:
        return PREFIX + self.household


def create_engine(database: Database) -> sa.Engine:
    """The engine of a household's journal, whose schema is made here if it is not there. Raises StoreError."""
    engine = _engine(database, f"-csearch_path={database.schema} -clock_timeout={BUSY_SECONDS}s")

    def begin(connection: sa.Connection) -> None:
        if connection.get_execution_options().get("writes", False):
            _take_line(connection, database.schema)
        else:
            connection.exec_driver_sql("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ, READ ONLY")

    sa.event.listen(engine, "begin", begin)
    with engine.execution_options(writes=True).begin() as connection:
        connection.execute(sa.schema.CreateSchema(database.schema, if_not_exists=True))
    return engine


def engine_to_read(database: Database) -> sa.Engine:
    """The engine of a household's journal as it is: no schema is made. Raises StoreError."""
    return _engine(database, f"-csearch_path={database.schema}")


def list_households(database: Database) -> list[str]:
    """The households that have a journal in this database."""
    engine = _engine(database)
    try:
        with engine.connect() as connection:
            schemas = sa.inspect(connection).get_schema_names()
    finally:
        engine.dispose()
    return sorted(name.removeprefix(PREFIX) for name in schemas if name.startswith(PREFIX))


def _engine(database: Database, options: str = "") -> sa.Engine:
    try:
        url = sa.make_url(database.url)
        if url.drivername != "postgresql+psycopg":
            raise StoreError("other-database", name=url.drivername)
        return sa.create_engine(url, connect_args={"options": options}, pool_pre_ping=True, max_overflow=15)
    except sa.exc.ArgumentError as error:
        raise StoreError("other-database", name="no URL") from error
    except ModuleNotFoundError as error:
        raise StoreError("no-driver") from error


def _take_line(connection: sa.Connection, schema: str) -> None:
    """Wait to be the one who writes here, until this transaction ends. What others have written is seen after that: the
    isolation is READ COMMITTED, where each statement looks anew."""
    connection.execute(sa.select(sa.func.pg_advisory_xact_lock(sa.func.hashtext(schema))))


def forbid_changes(connection: sa.Connection) -> None:
    """No row changes, none goes, not by TRUNCATE and not by ON CONFLICT DO UPDATE either."""
    connection.exec_driver_sql(
        "CREATE OR REPLACE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql "
        "AS $$ BEGIN RAISE EXCEPTION 'the journal is append-only'; END $$"
    )
    connection.exec_driver_sql(
        "CREATE TRIGGER journal_no_change BEFORE UPDATE OR DELETE OR TRUNCATE ON journal "
        "FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()"
    )


def forbid_changes_by_number(connection: sa.Connection) -> None:
    """As one step of the migrations asks; here it comes to the same."""
    forbid_changes(connection)


def allow_changes(connection: sa.Connection) -> None:
    """For a step of the migrations alone, within its transaction."""
    connection.exec_driver_sql("DROP TRIGGER IF EXISTS journal_no_change ON journal")
