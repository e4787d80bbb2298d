"""Scenarios, the unit that answers the apprentice, scoring."""
