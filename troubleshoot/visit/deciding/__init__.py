"""What comes next in a visit: a step, a test, a STOP or an end, and what is left off at the end."""
