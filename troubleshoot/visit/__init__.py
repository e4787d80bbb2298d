"""One visit to one unit: a pure state machine and the journal that makes it durable."""
