"""From readings to ranked causes: conditions, chaining, rows, ranking, next test."""
