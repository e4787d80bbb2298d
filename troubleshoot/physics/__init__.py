"""A packaged unit that obeys physics: what its instruments would read, sound or with faults.

For measuring and tests only, never on the way to a question; it needs the optional extra `physics`.
Inside SI units throughout (degrees C, Pa, W, kg/s); `instruments` speaks the trade's units.
"""
