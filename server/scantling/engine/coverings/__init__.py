"""What covers the room once its wood is up: wallpaper, film and panels, paint."""
