## What can be set.
