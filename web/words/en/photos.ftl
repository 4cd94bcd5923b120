## Photos, and what is drawn and pinned on one.
