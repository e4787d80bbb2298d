"""Leads a technician from a rooftop unit's complaint to its cause, safely."""

__version__ = "0.1.0"
