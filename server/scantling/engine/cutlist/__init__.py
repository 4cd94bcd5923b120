"""The cut list for life: letters that stay, what is cut and fitted, and what a changed reading means for it."""
