"""Commands and the plain-line conversation; the only place that prints."""
