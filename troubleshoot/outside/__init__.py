"""What comes from outside: files, typed lines, numbers, text, taken where it can do no harm."""
