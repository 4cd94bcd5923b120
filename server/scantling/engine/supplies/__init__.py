"""What is used up: caulk, adhesive, fasteners, filler, abrasives, tape, paste."""
