"""The units that are looked after: a file each, read strictly, with what their data plates say."""
