"""The proof of a plan, gone through without the search; proof.py is its door."""
