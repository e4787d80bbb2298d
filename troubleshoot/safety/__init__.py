"""What keeps people safe: the work state, the steps, who may do what, cautions, STOPs, dangers."""
