"""What a room has to have bought for it: boards, coverings and supplies, on one list."""
