"""A table of logged readings, a row one unit at one moment: each row judged by itself."""
