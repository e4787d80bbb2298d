"""The calculations that can be asked for by name: one small module for each topic."""
