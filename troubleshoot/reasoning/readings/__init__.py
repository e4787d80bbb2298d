"""From what people typed to readings: values, outcomes, how sure, and whether they count."""
