## The frame of every screen: tabs, offline cover, keys, what went wrong.
