"""A case: what is asked of the planner, how it is counted, and how boards are cut."""
