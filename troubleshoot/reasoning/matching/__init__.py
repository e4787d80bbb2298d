"""One matcher of words: what people say -> which of several named things they mean."""
