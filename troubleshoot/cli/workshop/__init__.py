"""`troubleshoot rules`: what an author of rules calls up in a shell."""
