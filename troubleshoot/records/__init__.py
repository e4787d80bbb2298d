"""Units and nameplates, history, reports."""
