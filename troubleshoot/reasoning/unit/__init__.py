"""One unit: its equipment facts and plate values, and the places on it."""
