"""Questions about boards to buy."""
