"""What was read on a unit visit after visit, what drifts, and when it will reach its limit."""
