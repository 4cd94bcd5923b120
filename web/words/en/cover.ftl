## Cover
