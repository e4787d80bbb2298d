"""Refrigerant added to a unit's circuits and recovered from them, by weight and day."""
