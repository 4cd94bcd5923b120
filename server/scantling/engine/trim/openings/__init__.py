"""What goes round a door or a window."""
