## Sums
