"""What people say, typed as it comes: a danger they see, a role, a time, a word of the trade."""
