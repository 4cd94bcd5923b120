## Supplies
