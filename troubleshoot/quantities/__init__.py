"""Numbers with units: typed text, meter accuracy, formulas, saturation tables."""
