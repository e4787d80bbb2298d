"""What senior technicians wrote: strict YAML text, places in the file, an immutable model."""
