"""How every law is tried: the same examples on every machine, so that what fails here fails there and again.

`python3 tests laws` looks further, with fresh examples each time; what it finds becomes an example of its own.
"""

from hypothesis import HealthCheck, settings

settings.register_profile("same", deadline=None, derandomize=True, max_examples=40, database=None)
settings.register_profile(
    "further", deadline=None, max_examples=1000, suppress_health_check=[HealthCheck.too_slow], print_blob=True
)
settings.register_profile("few", deadline=None, derandomize=True, max_examples=8, database=None)  # for tests/mutants
settings.load_profile("same")
