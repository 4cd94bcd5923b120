"""Questions about what is used up."""
