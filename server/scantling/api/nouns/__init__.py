"""The nouns of the API, a file each: what can be asked and written of it."""

from scantling.api.nouns import (
    ask,
    attachments,
    coverings,
    devices,
    houses,
    journal,
    money,
    pieces,
    readings,
    rooms,
    sums,
    sync,
    work,
)

NOUNS = (ask, houses, rooms, readings, pieces, coverings, money, work, attachments, sums, journal, sync, devices)
