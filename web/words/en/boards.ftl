## Boards
