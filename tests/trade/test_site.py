"""Hardware, glass, delivery, install, labels and care of Larch Hill and of doors unlike it."""

from __future__ import annotations

from parametric.figures import Figure
from parametric.job import Job
from parametric.trade.delivery_item import people_for
from parametric.trade.fingerprint import fingerprint, mark
from parametric.trade.labels import Label
from parametric.trade.order_tables import hardware_table
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import Printed, printed
from parametric.trade.site_tables import fixing_table
from parametric.writers.csv import write_csv
from tests.trade.conftest import Edited, paper_of


def by_what(paper: Paperwork) -> dict[str, tuple[int, str]]:
    return {i.what: (int(i.number), i.known_by) for i in paper.hardware}


def test_hardware_of_larch_hill(paper: Paperwork) -> None:
    assert by_what(paper) == {
        "track": (2, "design"),
        "track bracket": (12, "by supplier"),
        "bracket screw": (12, "design"),
        "hanger": (4, "by supplier"),
        "track stop": (4, "by supplier"),
        "floor guide": (2, "by supplier"),
        "recessed pull": (4, "design"),
        "glazing tape": (20, "design"),
        "setting block": (8, "design"),
        "glass stop pin": (160, "design"),
    }
    screw = next(i for i in paper.hardware if i.what == "bracket screw")
    assert screw.length is not None
    assert float(screw.length) == 12.5 + 38
    assert "the bracket's thickness" in screw.size
    hanger = next(i for i in paper.hardware if i.what == "hanger")
    # 35.8 kg by the larger weight, over two hangers.
    assert hanger.asked.startswith("rated 17.9 kg each or more")


def test_hardware_matches_the_model(job: Job, paper: Paperwork) -> None:
    """What is bought is what the model shows: tracks, pulls."""
    assert job.assembly is not None
    nouns = [part.noun for part in job.assembly.parts if part.supplied]
    counted = by_what(paper)
    assert counted["track"][0] == nouns.count("track")
    assert counted["recessed pull"][0] == nouns.count("pull")


def test_tape_by_length_is_rounded_up(job: Job, paper: Paperwork) -> None:
    """4 x 2 x 2 x (778.5 + 515) = 20696 mm: 20.7 m are bought, not 20.6."""
    assert job.resolved is not None
    table = hardware_table(paper.hardware, printed(job.resolved))
    assert next(row for row in table.rows if row[0] == "glazing tape")[1] == "20.7"


def test_what_is_not_known_is_asked_and_not_made_up(edited: Edited) -> None:
    paper = paper_of(
        edited(
            ("fixing: solid timber ", "fixing: not known "),
            ("board over fixing: 12.5", "board over fixing: not measured"),
            (", bearing: 60", ""),
        )
    )
    screw = next(i for i in paper.hardware if i.what == "bracket screw")
    assert (screw.length, screw.known_by) == (None, "by supplier")
    assert "not known" in screw.size
    assert paper.install.screw is None
    assert all(pull.pull is None and pull.governing is None for pull in paper.install.pulls)
    assert any("not known" in point for point in paper.install.hold)


def test_brackets_are_measured_against_the_studs(edited: Edited) -> None:
    """Brackets at -50, 335.8, 721.6 ...; a stud at 300 is 35.8 from the second."""
    paper = paper_of(
        edited(
            ("fixing: solid timber ", "studs: [0, 300, 700, 1100, 1500, 1850]\n  fixing: studs ")
        )
    )
    off = [round(float(place.off_stud), 1) for place in paper.install.brackets if place.off_stud]
    assert off == [50.0, 35.8, 21.6, 7.4, 6.8, 29.0]
    assert any("50 from a stud's middle" in point for point in paper.install.hold)


def test_heights_of_the_install_sheet(paper: Paperwork) -> None:
    heights = {line.what: line.height for line in paper.install.heights}
    assert {what: float(h) for what, h in heights.items() if h is not None} == {
        "foot of the leaves": 12.0,
        "middle of the pulls": 1000.0,
        "head of the opening": 2069.0,
        "top of the leaves": 2114.0,
    }
    # The screws' height is the track's business: nothing is printed in its place.
    assert heights["bracket screws"] is None
    assert "at the right" in paper.install.datum
    assert any("Take the distance" in point for point in paper.install.hold)


def test_inside_an_opening_the_track_hangs_from_the_head(edited: Edited) -> None:
    job = edited(
        ("hung: on the wall  ", "hung: in the opening  "),
        ("  side lap: 50", "  # "),
        ("  head lap: 45", "  # "),
    )
    paper = paper_of(job)
    heights = {line.what: line.height for line in paper.install.heights}
    screws = heights["bracket screws"]
    assert screws is not None
    assert float(screws) == 2069
    load = float(job.loads[0].per_hanger) * 9.81 / 1000
    assert [round(float(p.governing), 6) for p in paper.install.pulls if p.governing] == [
        round(load, 6)
    ] * 2
    assert all("off the wall" not in step.do for step in paper.install.steps)


def test_steps_are_in_a_safe_order(paper: Paperwork) -> None:
    said = [step.do for step in paper.install.steps]
    assert [step.number for step in paper.install.steps] == list(range(1, len(said) + 1))

    def at(words: str) -> int:
        return next(i for i, text in enumerate(said) if words in text)

    assert at("Measure the opening again") == 0
    assert at("Fix the brackets") < at("Hang leaf B") < at("Glaze") < at("Set the hangers")
    assert "unglazed" in said[at("Hang leaf B")]
    assert at("track stops") == len(said) - 1
    cautions = " ".join(paper.install.cautions)
    for word in ("Two people", "cables", "lead", "Glass", "Local codes"):
        assert word in cautions


def test_floor_guides_stand_under_both_leaves_in_every_state(job: Job, paper: Paperwork) -> None:
    assert job.resolved is not None
    hung = job.resolved.door.hanging.leaves
    assert len(paper.install.guides) == len(hung)
    for guide in paper.install.guides:
        for leaf in hung:
            assert leaf.travel is not None
            for share in (0.0, 0.5, 1.0):
                foot = float(leaf.left) + share * float(leaf.travel)
                assert foot < float(guide.from_opening) < foot + float(leaf.width)


def test_light_leaf_is_glazed_in_the_shop(edited: Edited) -> None:
    paper = paper_of(edited(("finish: {", "limits: {one person: 40 kg}\nfinish: {")))
    assert not paper.delivery.glazed_on_site
    assert not any("Glaze" in step.do for step in paper.install.steps)
    assert not any(item.what.endswith("glass") for item in paper.delivery.items)


def test_people_by_weight_and_by_size() -> None:
    """7.9 kg over 1.05 m2 is one person's; 23.2 kg over 2.15 m2 is two people's; 60 kg three's."""
    limit = Figure(25.0, unit="kg")

    def hands(weight: float, area: float | None) -> int:
        return int(
            people_for(
                "people",
                Figure(weight, unit="kg"),
                limit,
                None if area is None else Figure(area, unit="m2"),
            )
        )

    assert hands(7.9, 1.05) == 1
    assert hands(23.2, 2.15) == 2
    assert hands(25.0, None) == 1
    assert hands(25.1, None) == 2
    assert hands(60.0, 1.0) == 3


def labels(paper: Paperwork) -> dict[str, Label]:
    return {label.code: label for label in paper.labels}


def test_labels_of_larch_hill(job: Job, paper: Paperwork) -> None:
    found = labels(paper)
    # 4 stiles, 8 rails, 2 panels, 4 panes have their own; two bundles of stops, one of tenons.
    assert len(found) == len(paper.labels) == 4 + 8 + 2 + 4 + 2 + 1
    stile, rail, panel = found["S1-2"], found["R3-1"], found["P1-2"]
    assert (stile.leaf, stile.place, stile.stuck_on) == ("leaf B", "right stile", "face")
    assert (stile.top, stile.arrow) == ("top", "right")
    assert (rail.place, rail.stuck_on, rail.top, rail.arrow) == (
        "lock rail",
        "face",
        "upper edge",
        "up",
    )
    assert (panel.top, panel.arrow) == ("top end", "right")
    assert found["G1-1"].place == "glass of lite 1"
    bundle = found["T1"]
    assert (bundle.number, bundle.arrow) == (20, None)
    assert job.resolved is not None
    assert job.assembly is not None
    short = mark(fingerprint(job.resolved, job.assembly))
    assert {(label.revision, label.fingerprint) for label in paper.labels} == {("B", short)}
    assert stile.readable == f"Larch Hill reading room  S1-2  leaf B  right stile  B  {short}"


def test_every_made_piece_is_on_one_label(job: Job, paper: Paperwork) -> None:
    assert job.assembly is not None
    named = [name for label in paper.labels for name in label.names]
    assert sorted(named) == sorted(p.name for p in job.assembly.parts if not p.supplied)


def test_label_arrow_points_to_the_top_as_it_is_read(job: Job, paper: Paperwork) -> None:
    """A point beyond the piece along the arrow lies above its middle in the leaf."""
    assert job.assembly is not None
    parts = {part.name: part for part in job.assembly.parts}
    for label in paper.labels:
        if label.arrow is None:
            continue
        part = parts[label.names[0]]
        front_is_high = part.placement.z[1] < 0
        # Read with the low end left: from the low face the piece is turned about its length.
        across = 1.0 if front_is_high else -1.0
        way = {
            "right": (1.0, 0.0, 0.0),
            "left": (-1.0, 0.0, 0.0),
            "up": (0.0, across, 0.0),
            "down": (0.0, -across, 0.0),
        }[label.arrow]
        assert part.placement.direction(way) == (0.0, 0.0, 1.0)


def test_panes_can_be_ordered_again(paper: Paperwork) -> None:
    assert len(paper.care.panes) == 4
    for pane in paper.care.panes:
        assert (pane.mark, pane.kind, float(pane.width), float(pane.height)) == (
            "G1",
            "toughened",
            778.5,
            515.0,
        )
    assert paper.care.panes[0].place == "lite 1 of leaf A"


def test_glass_waits_for_the_openings(paper: Paperwork) -> None:
    """778.5 + 1/16 in + 2 x 3 x a half = 783.0875: less than that and the pane is worked out again."""
    opening = paper.glazing.openings[0]
    assert float(opening.least_width) == 778.5 + 25.4 / 16 + 3
    assert float(opening.least_height) == 515 + 25.4 / 16 + 3
    assert float(opening.least_width) < float(opening.width)
    assert "Measure every opening after glue-up" in paper.glazing.gate


def test_least_sizes_are_never_printed_smaller(job: Job) -> None:
    assert job.resolved is not None
    said = printed(job.resolved)
    assert (said.up(783.0875), said.up(783.1), said.up(783.0)) == ("783.1", "783.1", "783")
    assert (said.gauge(15.2), said.gauge(19.925)) == ("15.2", "19.95")
    inches = Printed(unit="inch", shop=job.resolved.shop)
    assert inches.up(25.4 * 30.83) == "30-27/32"
    # A gauge of 15.2 against one of 14.8 is lost in thirty-seconds.
    assert (inches.gauge(15.2), inches.gauge(14.8)) == ("0.598", "0.583")


def test_tables_are_the_same_bytes_twice(job: Job, paper: Paperwork) -> None:
    assert job.resolved is not None
    said = printed(job.resolved)
    once, again = fixing_table(paper.install, said), fixing_table(paper_of(job).install, said)
    assert write_csv(once.header, once.rows) == write_csv(again.header, again.rows)
