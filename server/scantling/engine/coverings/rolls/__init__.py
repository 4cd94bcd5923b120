"""Rolls of wallpaper: their match, the strips they give, and how many to buy."""
