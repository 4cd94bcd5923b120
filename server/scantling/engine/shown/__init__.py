"""What lengths are shown in, and the examples that go with it. It stands on nothing, for refusals ask it too."""
