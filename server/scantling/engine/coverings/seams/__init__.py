"""Where each strip of wallpaper hangs on the real walls of a room, and which roll it is cut from."""
