"""What is told of any piece: its plus or minus, whether it can be held, what the seasons do to it."""
