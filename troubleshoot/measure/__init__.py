"""How well the rule base tells faults apart: IEEE 1522 figures, simulated visits, the optimum."""
