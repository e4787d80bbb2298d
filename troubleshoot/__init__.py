"""Leads a technician from a rooftop unit's complaint to its cause, safely."""
