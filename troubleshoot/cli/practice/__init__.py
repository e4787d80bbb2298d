"""A practice at the terminal: what is shown, asked and understood until the apprentice commits."""
