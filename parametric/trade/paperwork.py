"""All the paper of a job as numbers and words: what is ordered, set up, glued, sent and fixed."""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass
from typing import NamedTuple

from parametric.figures import Figure
from parametric.model import Assembly
from parametric.parts import parts_of
from parametric.resolve.door import Door, Resolved
from parametric.resolve.told_apart import named_by
from parametric.trade.alignment import StackUp, stack_up
from parametric.trade.bar_order import BarLot, bar_order
from parametric.trade.care import Care, care
from parametric.trade.case_fitting import CaseFitting, case_fitting
from parametric.trade.case_glue_ups import CaseGlueUp, case_glue_ups
from parametric.trade.case_loads import CaseLoad, case_loads
from parametric.trade.case_shelves import case_shelves
from parametric.trade.data_sheets import (
    Carried,
    CarriedByHinges,
    ToRead,
    carried,
    carried_by_hinges,
    to_read,
)
from parametric.trade.delivery import Delivery, delivery
from parametric.trade.drawer_glue_ups import DrawerGlueUp, drawer_glue_ups
from parametric.trade.drawn_sizes import DrawnSizes, drawn_sizes
from parametric.trade.edge_band import EdgeBand, edge_bands
from parametric.trade.finish import FinishOrder, finish_order
from parametric.trade.glazing import GlazingOrder, glazing_order
from parametric.trade.glue_up import LeafGlueUp, PanelGlueUp, leaf_glue_ups, panel_glue_ups
from parametric.trade.hardware_item import HardwareItem
from parametric.trade.hardware_list import hardware_list
from parametric.trade.installing import InstallSheet, install_sheet
from parametric.trade.labels import Label, labels
from parametric.trade.leaf_hardware import LeafHardware, leaf_hardware
from parametric.trade.loads import LeafLoad, loads_of
from parametric.trade.milling import Setting, milling_list
from parametric.trade.part_cuts import PartCuts, part_cuts
from parametric.trade.router_setups import (
    GrooveSetUp,
    LooseTenonSetUp,
    groove_set_ups,
    loose_tenon_set_ups,
)
from parametric.trade.saw_setups import PanelSawSetUp, panel_saw_set_ups
from parametric.trade.scribing import Scribed, scribed
from parametric.trade.seasons import LeafSeason, leaf_seasons
from parametric.trade.setting_out import SettingOut, setting_outs
from parametric.trade.sheet_order import BoardLot, board_order
from parametric.trade.stop_blocks import LengthStop, StopLine, length_stops, stop_list
from parametric.trade.story_stick import StoryStick, story_sticks
from parametric.trade.timber import TimberOrder, timber_order


@dataclass(frozen=True, slots=True, kw_only=True)
class Paperwork:
    """One job's lists and set-ups; every figure in it has a name that `explain` knows."""

    timber: TimberOrder
    boards: tuple[BoardLot, ...]
    edge_bands: tuple[EdgeBand, ...]
    bars: tuple[BarLot, ...]
    glazing: GlazingOrder
    hardware: tuple[HardwareItem, ...]
    carried: tuple[Carried, ...]
    carried_by_hinges: tuple[CarriedByHinges, ...]
    data_sheets: tuple[ToRead, ...]
    finish: FinishOrder
    milling: tuple[Setting, ...]
    stops: tuple[StopLine, ...]
    lengths: tuple[LengthStop, ...]
    panel_saw: tuple[PanelSawSetUp, ...]
    loose_tenons: tuple[LooseTenonSetUp, ...]
    grooves: tuple[GrooveSetUp, ...]
    panel_glue_ups: tuple[PanelGlueUp, ...]
    leaf_glue_ups: tuple[LeafGlueUp, ...]
    drawer_glue_ups: tuple[DrawerGlueUp, ...]
    case_glue_ups: tuple[CaseGlueUp, ...]
    alignment: StackUp
    labels: tuple[Label, ...]
    part_cuts: tuple[PartCuts, ...]
    story_sticks: tuple[StoryStick, ...]
    leaf_hardware: tuple[LeafHardware, ...]
    cases: tuple[CaseLoad, ...]
    fitting: CaseFitting | None
    delivery: Delivery
    installs: tuple[InstallSheet, ...]
    care: Care
    seasons: tuple[LeafSeason, ...]
    scribed: tuple[Scribed, ...]
    drawn_sizes: DrawnSizes | None
    setting_outs: tuple[SettingOut, ...] = ()

    @property
    def install(self) -> InstallSheet:
        """The install sheet of a job of one door, or of what was narrowed to one."""
        (install,) = self.installs
        return install

    @property
    def site_trim(self) -> Figure:
        """The most that may still come off the foot of a leaf where it is hung, mm."""
        allowed = [one.adjustment.trim_allowed for one in self.installs]
        return max(allowed, key=float, default=Figure(0.0))

    def of(self, door: Door) -> Paperwork:
        """The same, with what is said of each door narrowed to one of them."""
        leaves = {leaf.name for leaf in door.leaves}
        return dataclasses.replace(
            self,
            carried=tuple(one for one in self.carried if one.leaf in leaves),
            carried_by_hinges=tuple(one for one in self.carried_by_hinges if one.leaf in leaves),
            data_sheets=tuple(one for one in self.data_sheets if one.place == door.place),
            leaf_hardware=tuple(one for one in self.leaf_hardware if one.leaf in leaves),
            installs=tuple(one for one in self.installs if one.place == door.place),
            seasons=tuple(one for one in self.seasons if one.leaf in leaves),
        )


def paperwork(resolved: Resolved, assembly: Assembly, loads: tuple[LeafLoad, ...]) -> Paperwork:
    """Work all of it out.

    Args:
        resolved: the design's numbers.
        assembly: its parts.
        loads: its weights.
    """
    hardware = hardware_list(resolved, loads)
    timber = timber_order(resolved, assembly)
    settings, stops = milling_list(assembly), stop_list(resolved, assembly)
    cases = case_loads(resolved, assembly, loads)
    sent = delivery(resolved, assembly, loads, hardware, cases)
    each = [_of_door(resolved, door, assembly, loads) for door in resolved.doors]
    glue_ups = panel_glue_ups(resolved, assembly)
    return Paperwork(
        timber=timber,
        boards=board_order(resolved, assembly),
        edge_bands=edge_bands(resolved.shop, assembly),
        bars=bar_order(resolved, timber),
        glazing=glazing_order(resolved, assembly),
        hardware=hardware,
        carried=carried(resolved, loads),
        carried_by_hinges=carried_by_hinges(loads),
        data_sheets=tuple(one for own in each for one in own.data_sheets),
        finish=finish_order(resolved, assembly),
        milling=settings,
        stops=stops,
        lengths=length_stops(
            assembly, frozenset(one.mark for one in glue_ups if int(one.boards) > 1)
        ),
        panel_saw=panel_saw_set_ups(resolved, assembly),
        loose_tenons=loose_tenon_set_ups(resolved, assembly),
        grooves=groove_set_ups(settings, stops),
        panel_glue_ups=glue_ups,
        leaf_glue_ups=leaf_glue_ups(resolved),
        drawer_glue_ups=drawer_glue_ups(resolved, assembly),
        case_glue_ups=case_glue_ups(resolved, assembly),
        alignment=stack_up(resolved.shop.accuracy),
        labels=labels(resolved, assembly),
        part_cuts=part_cuts(assembly),
        story_sticks=story_sticks(resolved, assembly),
        leaf_hardware=tuple(one for door in resolved.doors for one in leaf_hardware(door)),
        cases=cases,
        fitting=case_fitting(
            resolved, cases, case_shelves(resolved), tuple(own.install for own in each)
        ),
        delivery=sent,
        installs=tuple(
            own.install for door, own in zip(resolved.doors, each, strict=True) if not door.case
        ),
        care=care(resolved, assembly),
        seasons=leaf_seasons(resolved),
        scribed=scribed(resolved.casework),
        drawn_sizes=drawn_sizes(resolved),
        setting_outs=setting_outs(resolved.casework),
    )


class _DoorPaper(NamedTuple):
    """What is worked out of one door by itself."""

    install: InstallSheet
    data_sheets: tuple[ToRead, ...]


def _of_door(
    resolved: Resolved, door: Door, assembly: Assembly, loads: tuple[LeafLoad, ...]
) -> _DoorPaper:
    own, carried = resolved.of(door), loads_of(door, loads)
    sent = delivery(own, parts_of(door, assembly), carried, hardware_list(own, carried))
    install = install_sheet(own, carried, sent)
    return named_by(
        door,
        _DoorPaper(install=install, data_sheets=to_read(own, carried, install)),
        resolved.shop,
    )
