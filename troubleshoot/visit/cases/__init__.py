"""A case from a file: its words and rows, what is assessed of it, the rules tried on examples."""
