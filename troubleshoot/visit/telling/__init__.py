"""What is told of a visit: the account for scripts, why a test is next, how causes are worded."""
