"""The store: the journal on disk, and the only place that speaks SQL.

It knows rows: one entry is one row, written once. Triggers refuse to change or delete a row, also for a stranger's
connection, so no bug above this package can lose a reading. It knows nothing of what an entry means, and it has no
clock.

    catalog      the tables, and how a thing of another kind gets one
    canonical    the one spelling of an entry
    ledger       the journal within one transaction
    migrations   the steps that bring any older notebook here
    sqlite       what is SQLite's own: files, locks, triggers
    postgresql   what is PostgreSQL's own: schemas, locks, triggers
    readonly     a notebook that can be read and not written
    examine      a file that nobody should trust, read row by row
    copies       dated copies beside the notebook
    mend         a damaged notebook made anew of copies and of what is readable
    register     who may enter: paired devices and the codes that let one in
    database     an open notebook: readings, writings
"""

from scantling.store.canonical import EntryData, canonical_text, digest_of, sum_of
from scantling.store.database import Store, describe_database, open_store
from scantling.store.ledger import ROWS_AT_ONCE, Kept, KeptRow, Ledger
from scantling.store.migrations import MIGRATIONS
from scantling.store.postgresql import Database
from scantling.store.refusals import StoreError
from scantling.store.register import PairedDevice, Register
from scantling.store.sqlite import FILE_NAME

__all__ = [
    "FILE_NAME",
    "MIGRATIONS",
    "ROWS_AT_ONCE",
    "Database",
    "EntryData",
    "Kept",
    "KeptRow",
    "Ledger",
    "PairedDevice",
    "Register",
    "Store",
    "StoreError",
    "canonical_text",
    "describe_database",
    "digest_of",
    "open_store",
    "sum_of",
]
