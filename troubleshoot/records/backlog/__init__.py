"""What waits on the units that are looked after: the supervisor's view of a fleet."""
