"""What there is to paint, and the cans to buy for it."""
