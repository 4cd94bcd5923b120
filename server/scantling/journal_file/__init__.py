"""The journal as a file: its lines, and what of them is brought into a notebook."""
