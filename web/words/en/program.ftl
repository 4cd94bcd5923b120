## What the program says of itself: starting, updating, the engine, the laptop.
