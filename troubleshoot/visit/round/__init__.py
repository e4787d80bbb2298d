"""A routine round: its season, its points on one unit, their order, and what came of them."""
