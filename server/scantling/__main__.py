"""`python -m scantling` is `scantling`."""

import sys

from scantling.cli import main

sys.exit(main())
