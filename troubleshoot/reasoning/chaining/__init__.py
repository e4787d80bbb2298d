"""The chains that experta runs: procedures, validity, hazards, causes behind causes."""
