"""Another language: every text that leaves the program, in the words of a catalogue."""
