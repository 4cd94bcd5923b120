"""Film cut to panes from a roll, and panels cut from sheets."""
