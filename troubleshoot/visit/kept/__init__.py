"""A visit kept in a file: the journal, its lines and name, and reading it back, even damaged."""
