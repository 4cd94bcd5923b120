## Pieces
