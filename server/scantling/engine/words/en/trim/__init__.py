"""What is said of trim, a table a folder, as one."""

from scantling.engine.words.en.trim import casing, dressed, moldings, openings, own, piece, runs, told, windows

FOLDERS = (piece, casing, openings, windows, dressed, told, own, moldings, runs)
TEXTS = {key: text for folder in FOLDERS for key, text in folder.TEXTS.items()}
