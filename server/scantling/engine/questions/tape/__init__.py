"""Questions about figures alone: lengths, sums, corners, saw settings."""
