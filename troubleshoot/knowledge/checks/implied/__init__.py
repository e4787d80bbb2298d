"""What an instrument, a work state or a kind of work implies: hazards, needs and who may do it.

Each line is what the shipped rules do throughout, with the reason and the law or practice behind
it. 29 CFR 1910 is the American workplace rule, 40 CFR 82 subpart F that on refrigerants; both are
cited from memory. A line only ever asks for more, so a test may say more than is asked.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.checks.implied.electrical import ELECTRICAL
from troubleshoot.knowledge.checks.implied.hands import HANDS
from troubleshoot.knowledge.checks.implied.heat import HEAT
from troubleshoot.knowledge.checks.implied.implication import Implication
from troubleshoot.knowledge.checks.implied.refrigerant import REFRIGERANT
from troubleshoot.knowledge.checks.implied.site import SITE

__all__ = ["IMPLICATIONS", "Implication"]

IMPLICATIONS: Final = (*HANDS, *ELECTRICAL, *REFRIGERANT, *HEAT, *SITE)
