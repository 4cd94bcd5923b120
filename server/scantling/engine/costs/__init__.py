"""Money: what a room was planned to cost and did, and what the next ones may."""
