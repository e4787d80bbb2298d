"""One visit as prompts and replies: what every door drives, and no door keeps for itself."""
