"""A site's folder of rules in a line: by which rules people were led, and who answers for them."""

from __future__ import annotations

from troubleshoot.knowledge.model import Pack


def pack_line(pack: Pack) -> str:
    """Name, version and hash of a folder, and who has signed it."""
    named = f"{pack.name}, version {pack.version}" if pack.version else pack.name
    told = f"{named}, rules {pack.digest}"
    signed = pack.signed
    if signed is None:
        return f"{told}; not signed"
    since = "" if pack.is_as_signed else ", and changed since"
    return f"{told}; signed by {signed.by} on {signed.on}{since}"
