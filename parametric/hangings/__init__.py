"""Ways to hang a door; the table here is the list of those that build."""

from parametric.hangings.bifold import BifoldSpec
from parametric.hangings.biparting import BipartingSpec
from parametric.hangings.bypass import BypassSpec
from parametric.hangings.cabinet import CabinetSpec
from parametric.hangings.dutch import DutchSpec
from parametric.hangings.hanging import DoorBlock
from parametric.hangings.hinged import HingedSpec
from parametric.hangings.hinged_pair import HingedPairSpec
from parametric.hangings.pocket import PocketSpec
from parametric.hangings.sliding import SlidingSpec

DoorSpec = DoorBlock
"""A door of any kind."""

DOOR_KINDS: dict[str, type[DoorBlock]] = {
    "sliding": SlidingSpec,
    "biparting": BipartingSpec,
    "bypass": BypassSpec,
    "pocket": PocketSpec,
    "bifold": BifoldSpec,
    "hinged": HingedSpec,
    "hinged pair": HingedPairSpec,
    "dutch": DutchSpec,
    "cabinet": CabinetSpec,
}
"""The word after `kind:` in a door, and the Spec it is read by."""
