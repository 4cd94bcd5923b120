"""What is said of trim, a table a folder, as one."""

from scantling.engine.words.en.trim import dressed, piece, told

TEXTS = {key: text for folder in (piece, told, dressed) for key, text in folder.TEXTS.items()}
