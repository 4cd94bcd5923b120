"""A port for a server to name, which nobody else is given before it is up, nor while it sleeps."""

import random
import socket

#: Below what systems give out themselves, to whoever opens a connection (from 32768 on Linux, 49152 elsewhere): one of
#: those may be taken by any test beside this one. Above the registered ones that a machine may serve.
ASIDE = range(20_000, 32_000)
TRIES = 100
#: Not the tests' own chance, which a seed repeats in every process.
CHANCE = random.SystemRandom()


def free_port() -> int:
    """One that is free on every address, itself and the one below it, where the trust page is."""
    for _ in range(TRIES):
        port = CHANCE.choice(ASIDE)
        if is_free(port) and is_free(port - 1):
            return port
    raise OSError("no free port")


def is_free(port: int) -> bool:
    """Whether a server could listen there now."""
    with socket.socket() as probe:
        try:
            probe.bind(("0.0.0.0", port))
        except OSError:
            return False
    return True
