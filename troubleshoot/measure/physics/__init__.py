"""How well the rules tell faults apart on a unit that obeys physics, beside a peer that has learnt.

Nothing of the rule base is used to draw a unit, and the cards were not made from it. It needs the
optional extra `physics`; only `rules measure --physics` imports it.
"""
