"""Blobs: whatever is attached to a notebook, each known by the SHA-256 of its bytes and by nothing else.

piece    a part of a blob as it travels: by request, and as a line of a file
keep     the blobs beside a notebook, and those that are still coming
"""

from scantling.blobs.keep import Blobs
from scantling.blobs.piece import BLOB_BYTES, PIECE_BYTES, BlobError, Piece, parse_piece

__all__ = ["BLOB_BYTES", "PIECE_BYTES", "BlobError", "Blobs", "Piece", "parse_piece"]
