"""How a visit looks in plain lines: its prompts, work, findings and STOPs."""
