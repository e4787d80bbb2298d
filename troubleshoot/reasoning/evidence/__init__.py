"""From readings to ranked causes: chances of outcomes, hypotheses, weights, the ranking."""
