"""What the check `safe-advice` knows of words: devices, ways to defeat them, and who says so."""
