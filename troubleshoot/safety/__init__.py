"""What keeps people safe: the work state, the safety steps, who may do what, what is warned of."""
