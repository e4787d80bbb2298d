"""What an author of rules is helped with: finding what there is, writing a card, trying it."""
