"""The rack: what is bought for a room's pieces, what stands there already, and what was settled on."""
