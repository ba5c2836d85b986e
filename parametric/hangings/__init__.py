"""Ways to hang a door; the union here is the list of those that build."""

from parametric.hangings.bypass import BypassSpec

DoorSpec = BypassSpec
"""Every kind of door that this version builds."""

DOOR_KINDS: dict[str, type[DoorSpec]] = {"bypass": BypassSpec}
"""The word after `kind:` in a door, and the Spec it is read by."""
