"""The search for the cheapest boards; plan.py is its door."""
