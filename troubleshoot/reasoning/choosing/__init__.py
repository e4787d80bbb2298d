"""Which test is done next, what has to be asked for it, and when none pays any more."""
