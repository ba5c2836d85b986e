"""All the paper of a job as numbers and words: what is ordered, set up, glued, sent and fixed."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.model import Assembly
from parametric.resolve.door import Resolved
from parametric.trade.alignment import StackUp, stack_up
from parametric.trade.care import Care, care
from parametric.trade.data_sheets import (
    Carried,
    CarriedByHinges,
    ToRead,
    carried,
    carried_by_hinges,
    to_read,
)
from parametric.trade.delivery import Delivery, delivery
from parametric.trade.finish import FinishOrder, finish_order
from parametric.trade.glazing import GlazingOrder, glazing_order
from parametric.trade.glue_up import LeafGlueUp, PanelGlueUp, leaf_glue_ups, panel_glue_ups
from parametric.trade.hardware_item import HardwareItem
from parametric.trade.hardware_list import hardware_list
from parametric.trade.installing import InstallSheet, install_sheet
from parametric.trade.labels import Label, labels
from parametric.trade.leaf_hardware import LeafHardware, leaf_hardware
from parametric.trade.loads import LeafLoad
from parametric.trade.milling import Setting, milling_list
from parametric.trade.part_cuts import PartCuts, part_cuts
from parametric.trade.router_setups import (
    GrooveSetUp,
    LooseTenonSetUp,
    groove_set_ups,
    loose_tenon_set_ups,
)
from parametric.trade.saw_setups import PanelSawSetUp, panel_saw_set_ups
from parametric.trade.seasons import LeafSeason, leaf_seasons
from parametric.trade.sheet_order import BoardLot, board_order
from parametric.trade.stop_blocks import LengthStop, StopLine, length_stops, stop_list
from parametric.trade.story_stick import StoryStick, story_sticks
from parametric.trade.timber import TimberOrder, timber_order


@dataclass(frozen=True, slots=True, kw_only=True)
class Paperwork:
    """One job's lists and set-ups; every figure in it has a name that `explain` knows."""

    timber: TimberOrder
    boards: tuple[BoardLot, ...]
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
    alignment: StackUp
    labels: tuple[Label, ...]
    part_cuts: tuple[PartCuts, ...]
    story_sticks: tuple[StoryStick, ...]
    leaf_hardware: tuple[LeafHardware, ...]
    delivery: Delivery
    install: InstallSheet
    care: Care
    seasons: tuple[LeafSeason, ...]


def paperwork(resolved: Resolved, assembly: Assembly, loads: tuple[LeafLoad, ...]) -> Paperwork:
    """Work all of it out.

    Args:
        resolved: the design's numbers.
        assembly: its parts.
        loads: its weights.
    """
    hardware = hardware_list(resolved, loads)
    settings, stops = milling_list(assembly), stop_list(resolved, assembly)
    sent = delivery(resolved, assembly, loads, hardware)
    install = install_sheet(resolved, loads, sent)
    glue_ups = panel_glue_ups(resolved, assembly)
    return Paperwork(
        timber=timber_order(resolved, assembly),
        boards=board_order(resolved, assembly),
        glazing=glazing_order(resolved, assembly),
        hardware=hardware,
        carried=carried(loads, resolved.door.track),
        carried_by_hinges=carried_by_hinges(loads),
        data_sheets=to_read(resolved, loads, install),
        finish=finish_order(resolved),
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
        alignment=stack_up(resolved.shop.accuracy),
        labels=labels(resolved, assembly),
        part_cuts=part_cuts(assembly),
        story_sticks=story_sticks(resolved, assembly),
        leaf_hardware=leaf_hardware(resolved.door),
        delivery=sent,
        install=install,
        care=care(resolved, assembly),
        seasons=leaf_seasons(resolved),
    )
