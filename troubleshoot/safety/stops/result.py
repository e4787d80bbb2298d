"""What was given of a hand-over and is no result of it."""


class NotAResult(ValueError):
    """What was given is no result of a hand-over; the message says what would do."""
