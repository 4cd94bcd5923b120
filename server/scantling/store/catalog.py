"""The tables. A thing of another kind gets a table of its own here, made by a step of its own in `migrations`.

Portable as they stand; what a table needs of one database alone is said with that database's prefix.
"""

import sqlalchemy as sa

catalog = sa.MetaData()
migration_table = sa.Table("migration", catalog, sa.Column("name", sa.Text, primary_key=True))
identity_table = sa.Table("identity", catalog, sa.Column("database_id", sa.Text, primary_key=True))
#: An entry is known by its id alone: a number that a device gave twice is kept as it is, and may be looked up.
journal_table = sa.Table(
    "journal",
    catalog,
    sa.Column("row", sa.Integer, primary_key=True, autoincrement=True),
    sa.Column("id", sa.Text, nullable=False, unique=True),
    sa.Column("device", sa.Text, nullable=False),
    sa.Column("seq", sa.BigInteger, nullable=False),
    sa.Column("entry", sa.Text, nullable=False),
    sa.Column("digest", sa.Text, nullable=False),
    sa.Column("total", sa.Text, nullable=False),
    sa.Column("mark", sa.Text, nullable=False, unique=True),
    sa.Index("journal_digest", "digest"),
    sqlite_autoincrement=True,  # a row number is never given twice, or a phone's cursor would step over an entry
)
#: Who may enter: beside the journal and no part of it. Digests alone: whoever reads the file has no token from it.
device_table = sa.Table(
    "paired_device",
    catalog,
    sa.Column("id", sa.Text, primary_key=True),
    sa.Column("name", sa.Text, nullable=False),
    sa.Column("digest", sa.Text, nullable=False, unique=True),
    sa.Column("paired_ms", sa.BigInteger, nullable=False),
    sa.Column("seen_ms", sa.BigInteger, nullable=False),
    sa.Column("struck_ms", sa.BigInteger),
)
code_table = sa.Table(
    "pairing_code",
    catalog,
    sa.Column("digest", sa.Text, primary_key=True),
    sa.Column("made_ms", sa.BigInteger, nullable=False),
    sa.Column("ends_ms", sa.BigInteger, nullable=False),
    sa.Column("used_ms", sa.BigInteger),
    sa.Column("wrong", sa.Integer, nullable=False),
)
