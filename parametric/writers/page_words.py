"""Every word the client's page says of itself, and the words of the slip; the rest comes with the job."""

from __future__ import annotations

WORDS = {
    "language": "en",
    # the strip
    "shut": "Shut",
    "clear": "Open: {0} clear to walk through",
    "ajar": "Open: no way through yet",
    "open all": "Open all",
    "shut all": "Shut all",
    "open_by mm": "{0} millimetres open",
    "open_by in": "{0} inches open",
    "open_turned": "{0} degrees open",
    "seen from above": "seen from above",
    "strip": "The doors seen from above",
    # the picture
    "waiting": "Hanging the doors…",
    "no picture": "This screen cannot draw the doors in the round. The drawing is to scale.",
    "no script": "The drawing and the sizes are here; sliding the doors needs a browser with script.",
    "hint touch": "Slide a door with your finger",
    "hint mouse": "Drag a door to slide it",
    "canvas": (
        "Picture of the doors in their opening. Drag a door to slide it, drag beside the doors "
        "to look round. Arrow keys look round, plus and minus step closer and back."
    ),
    "drawing": "Drawing of the doors seen from the front",
    "hour": "Time of day",
    "day": "Day",
    "evening": "Evening",
    # options of one job
    "options": "Which of these doors",
    "option of": "{0}, {1}",
    "option shown": "{0}, {1}: shown now",
    # the tabs
    "tabs": "What to look at",
    "stand": "Stand",
    "finish": "Finish",
    "sizes": "Sizes",
    "yes": "Say yes",
    # stand
    "where": "Where you stand",
    "facing": "Facing the doors",
    "facing how": "the whole of them",
    "sofa": "From the sofa",
    "sofa how": "sitting",
    "own place": "From {0}",
    "standing left": "standing, to the left",
    "standing middle": "standing",
    "standing right": "standing, to the right",
    "seated left": "sitting, to the left",
    "seated middle": "sitting",
    "seated right": "sitting, to the right",
    "pull": "At the pull",
    "pull how": "arm’s length",
    "beyond": "From the other room",
    "beyond how": "looking back",
    "also": "Also show",
    "person mm": "A person, 1.70 m",
    "person in": "A person, 5′ 7″",
    "inside": "See inside",
    "cut": "Cut through the doors",
    "cut at": "Where to cut, left to right",
    "cut said": "{0} from the left of the opening",
    # finish
    "paint": "Paint",
    "timber": "Clear timber",
    "glass": "Glass",
    "metal": "Pulls",
    "quoted": "quoted",
    "any quoted": "quoted, the colour is yours to choose",
    "none named": "none is named yet",
    "named wood": "The price is for {0}, which has no picture here.",
    "sample": "Choose colours by a real sample. No two screens agree, and no two boards.",
    "chosen": "{0} chosen",
    # sizes
    "unit mm": "in millimetres · touch one to see it",
    "unit in": "in inches · touch one to see it",
    "measure": "Measure between two points",
    "measure first": "Touch a first point in the picture",
    "measure second": "Touch a second point",
    "measure done": "Measured: {0}. Touch again to start anew",
    "measure stop": "Stop measuring",
    "measure keys": "Arrow keys move the cross, Enter sets a point.",
    "no wood there": "Nothing to measure there: touch a door.",
    # yes
    "what": "What you are saying yes to",
    "said revision": "Revision",
    "said of": "{0}, of {1}",
    "said option": "Option",
    "said mark": "Mark",
    "said thing": "Doors",
    "said finish": "In",
    "to agree": "{0} (to be agreed)",
    "in paint": "{0} paint",
    "in timber": "{0}, clear",
    "in glass": "{0} glass",
    "in metal": "{0} pulls",
    "differs": (
        "You have chosen something other than what was quoted. "
        "Your maker will confirm the price first."
    ),
    "superseded": "If your maker has sent you a later page than this one, say yes there.",
    "your name": "Your name",
    "say it": "Yes, make these doors",
    "not yet": "Not yet: I want to change something",
    "why ticks": "Tick what stands above first.",
    "why name": "Write your name first.",
    "why both": "Tick what stands above and write your name first.",
    "said yes": "You said yes to revision {0}",
    "said yes bare": "You said yes",
    "said yes option": "{0}, option {1}: {2}",
    "said by": "{0}, {1}",
    "nothing left": "Nothing has left this device yet. Now send the slip to your maker.",
    "send": "Send the slip",
    "save": "Save the slip",
    "copy": "Copy the words",
    "sent": "Handed to the program that you chose.",
    "saved": "Saved as {0}. Send it to your maker.",
    "copied": "Copied. Paste it into a message to your maker.",
    "not copied": "This browser does not let a page copy. Mark the words below and copy them.",
    "take back": "Take it back",
    "taken back": "Taken back. You have not said yes.",
    "change": "Write to your maker what should be other. Nothing has been said yes to.",
    "change made": "Revision {0}, mark {1}: I want to change something.",
    "change option": "Option {0}. {1}",
    "slip": "The slip",
    # the foot
    "revision": "Revision {0}",
    "option": "option {0}",
    "mark": "mark {0}",
    "maker": "Drawn by {0} from the measured opening.",
    "made with": "Made with stilewright",
}

MOVED_WORDS: dict[str, dict[str, str]] = {
    "slide": {},
    "swing": {
        "no script": (
            "The drawing and the sizes are here; swinging the doors needs a browser with script."
        ),
        "hint touch": "Swing a door with your finger",
        "hint mouse": "Drag a door to swing it",
        "canvas": (
            "Picture of the doors in their opening. Drag a door to swing it, drag beside the "
            "doors to look round. Arrow keys look round, plus and minus step closer and back."
        ),
    },
    "fold": {
        "no script": (
            "The drawing and the sizes are here; folding the doors needs a browser with script."
        ),
        "hint touch": "Fold the doors with your finger",
        "hint mouse": "Drag a door to fold it",
        "canvas": (
            "Picture of the doors in their opening. Drag a door to fold it, drag beside the "
            "doors to look round. Arrow keys look round, plus and minus step closer and back."
        ),
    },
    "open": {
        "no script": (
            "The drawing and the sizes are here; opening the doors needs a browser with script."
        ),
        "hint touch": "Open a door with your finger",
        "hint mouse": "Drag a door to open it",
        "canvas": (
            "Picture of the doors in their openings. Drag a door to open it, drag beside the "
            "doors to look round. Arrow keys look round, plus and minus step closer and back."
        ),
    },
}
"""What the page says otherwise of doors that swing or fold, or move in several ways; `WORDS` is of doors that slide."""

_ONE = {
    "waiting": "Hanging the door…",
    "no picture": "This screen cannot draw the door in the round. The drawing is to scale.",
    "strip": "The door seen from above",
    "drawing": "Drawing of the door seen from the front",
    "facing": "Facing the door",
    "facing how": "the whole of it",
    "cut": "Cut through the door",
    "no wood there": "Nothing to measure there: touch the door.",
    "said thing": "Door",
    "say it": "Yes, make this door",
}
_ONE_MOVED = (
    "Picture of the door in its opening. Drag the door to {0} it, drag beside it to look round. "
    "Arrow keys look round, plus and minus step closer and back."
)
ONE_WORDS: dict[str, dict[str, str]] = {
    "slide": _ONE
    | {
        "no script": (
            "The drawing and the sizes are here; sliding the door needs a browser with script."
        ),
        "hint touch": "Slide the door with your finger",
        "hint mouse": "Drag the door to slide it",
        "canvas": _ONE_MOVED.format("slide"),
    },
    "swing": _ONE
    | {
        "no script": (
            "The drawing and the sizes are here; swinging the door needs a browser with script."
        ),
        "hint touch": "Swing the door with your finger",
        "hint mouse": "Drag the door to swing it",
        "canvas": _ONE_MOVED.format("swing"),
    },
    "fold": {},
}
"""What the page says otherwise of one door alone; a door that folds has two leaves at the least."""

NO_WAY_WORDS = {"clear": "", "ajar": "Open"}
"""What it says of what nobody walks through, the fronts of a case: never how much is clear."""

CASE_WORDS = NO_WAY_WORDS | {
    "no script": "The drawing and the sizes are here; opening the doors needs a browser with script.",
    "no picture": "This screen cannot draw the cabinets in the round. The drawing is to scale.",
    "hint touch": "Open a door with your finger",
    "hint mouse": "Drag a door to open it",
    "canvas": (
        "Picture of the cabinets where they will stand. Drag a door or a drawer to open it, drag "
        "beside them to look round. Arrow keys look round, plus and minus step closer and back."
    ),
    "strip": "The cabinets seen from above",
    "drawing": "Drawing of the cabinets seen from the front",
    "options": "Which of these cabinets",
    "facing": "Facing the cabinets",
    "cut": "Cut through the cabinets",
    "cut said": "{0} from the left",
    "no wood there": "Nothing to measure there: touch a cabinet.",
    "said thing": "Cabinets",
    "say it": "Yes, make these cabinets",
}
"""What it says of cases and their fronts."""

DOOR_WORDS = {
    # what they are, under the job's name: by how they move and how many they are
    "slide 1": "Sliding door",
    "slide 2": "Sliding pair",
    "slide n": "{0} sliding doors",
    "swing 1": "Hinged door",
    "swing 2": "Hinged pair",
    "swing n": "{0} hinged doors",
    "fold 1": "Folding door",
    "fold 2": "Folding pair",
    "fold n": "{0} folding doors",
    "halves": "Hinged door in two halves",
    "fronts 1": "Cabinet front",
    "fronts n": "{0} cabinet fronts",
    # which of them
    "only": "The door",
    "left": "Left door",
    "middle": "Middle door",
    "right": "Right door",
    "nth": "{0} door from the left",
    "drawer": "Drawer {0}",
    "flap": "Flap {0}",
    "door": "Door {0}",
    "upper": "Upper half",
    "lower": "Lower half",
    "which and how": "{0}, {1}",
    "in front": "in front",
    "between": "between the others",
    "behind": "behind",
    "hung left": "hung on its left",
    "hung right": "hung on its right",
    "lifts up": "lifts up",
    "drops down": "drops down",
    "opens first": "opens first",
    "folds": "folds",
    "drawn out": "drawn out",
    # the thing that is said yes to
    "thing": "{0}, {1} wide × {2} high, {3}",
    "thing each": "{0} {1} wide × {2} high",
    "slide": "sliding",
    "swing": "hinged",
    "fold": "folding",
    "draw": "drawn out",
    "towards": "opening towards you",
    "away": "opening away from you",
    "first": "the {0} first",
    # of one of several doors of a job
    "of one": "{0}: {1}",
}
"""What the doors are called and how they move, chosen by what there is of them."""

FACT_WORDS = {
    # each door
    "each door": "Each door",
    "the door": "The door",
    "wide high": "{0} wide, {1} high",
    "thick": "{0} thick",
    "opening": "Your opening",
    "tightest": "Where it is tightest, as it was measured.",
    # the clear way
    "clear way": "Clear to walk through",
    "slide clear 1": "With the door slid open, at the narrowest part of your opening.",
    "slide clear 2": "With both doors slid to one side, at the narrowest part of your opening.",
    "slide clear n": "With the doors slid to one side, at the narrowest part of your opening.",
    "slide clear apart": "With both doors slid apart, at the narrowest part of your opening.",
    "swing clear halves": "With both halves standing open square to the wall.",
    "open clear halves": "With both halves open.",
    "swing clear 1": "With the door standing open square to the wall.",
    "swing clear 2": "With both doors standing open square to the wall.",
    "swing clear n": "With all the doors standing open square to the wall.",
    "open clear 1": "With the door open.",
    "open clear 2": "With both doors open.",
    "open clear n": "With all the doors open.",
    # what they swing over
    "swing": "Swing",
    "fold": "Room to fold",
    "towards value": "{0} into the room",
    "away value": "{0} into the room beyond",
    "towards 1": "The door opens towards you: keep that much floor clear before it.",
    "towards n": "The doors open towards you: keep that much floor clear before them.",
    "away 1": "The door opens away from you: keep that much floor clear behind it.",
    "away n": "The doors open away from you: keep that much floor clear behind them.",
    "first": " The {0} opens first and shuts last.",
    # under them
    "gap under 1": "Gap under the door",
    "gap under n": "Gap under the doors",
    "floor rises 1": "Your floor rises {0} across the opening; the door hangs level.",
    "floor rises n": "Your floor rises {0} across the opening; the doors hang level.",
    "level floor": "Your floor is level.",
    "gap swinging n": "Least gap as they open",
    "gap swinging 1": "Least gap as it opens",
    "gap swinging value": "{0} over the floor",
    "floor in the way n": "Your floor rises {0} on their way, above that under them shut.",
    "floor in the way 1": "Your floor rises {0} on its way, above that under it shut.",
    "floor level n": "Your floor does not rise on their way.",
    "floor level 1": "Your floor does not rise on its way.",
    "floor not known n": "Not measured on their way: a floor that rises there can catch them.",
    "floor not known 1": "Not measured on its way: a floor that rises there can catch it.",
    "not known": "not known yet",
    # round them
    "laps": "Over the wall",
    "laps value": "{0} each side, {1} above",
    "laps why": "So that no daylight shows round the edge.",
    "laps case": "Over the cabinet",
    "laps case why": "The fronts lie over the edges of the cabinet.",
    "gaps n": "Gaps round the doors",
    "gaps 1": "Gaps round the door",
    "gaps sides": "{0} at the sides",
    "gaps left right": "{0} at the left, {1} at the right",
    "gaps middle": "{0} where they meet",
    "gaps head": "{0} above",
    "gaps why n": "So that they open freely in a damp season too.",
    "gaps why 1": "So that it opens freely in a damp season too.",
    "passing": "Between the doors",
    "passing why": "Where they pass one another. Fingers can be caught: mind children.",
    "fingers": " Fingers can be caught at the hinges: mind children.",
    # what is on them
    "pulls": "Height of the pulls",
    "pull": "Height of the pull",
    "pulls from": "From the highest floor to their middle.",
    "pull from": "From the highest floor to its middle.",
    "weight n": "Weight of each door",
    "weight 1": "Weight of the door",
    "weight heavier": "Weight of the heavier door",
    "weight half": "Weight of the heavier half",
    "weight heaviest": "Weight of the heaviest door",
    "weight of": "Wood and glass, without the fittings.",
    "weight of wood": "Wood alone, without the fittings.",
    "head": "Shaped head",
    "head value": "rises {0}",
    "head of each": "From where it springs at the sides to its highest point.",
    "head across": "From where it springs to its highest point: one line across the doors.",
    "glass": "Glass",
    "glass value": "{0} thick, {1}",
    "glass value true": "{0} ({2} true) thick, {1}",
    "glass value unit": "insulated, {2} and {4} with {3} between, {1}",
    "bars planted": "Bars lie on both its faces.",
    "bars planted n": "Bars lie on both their faces.",
    "panes alike": "{0} panes, each {1} wide and {2} high.",
    "pane alone": "One pane, {1} wide and {2} high.",
    "panes differ": "{0} panes, the largest {1} wide and {2} high.",
}
"""The words about sizes; {0} and on are the job's own numbers."""

TICK_WORDS = {
    "swing towards n": (
        "I have seen that the doors open towards me{0} and come {1} into the room: nothing may "
        "stand there."
    ),
    "swing away n": (
        "I have seen that the doors open away from me{0} and go {1} into the room beyond: nothing "
        "may stand there."
    ),
    "swing towards 1": (
        "I have seen that the door is hung on its {0}, opens towards me and comes {1} into the "
        "room: nothing may stand there."
    ),
    "swing away 1": (
        "I have seen that the door is hung on its {0}, opens away from me and goes {1} into the "
        "room beyond: nothing may stand there."
    ),
    "first": ", the {0} first,",
    "not safety n": ("I know that glass in these doors is not safety glass, and what that can do."),
    "not safety 1": "I know that glass in this door is not safety glass, and what that can do.",
    "gap n": "I have seen that the gap under the doors is ",
    "gap 1": "I have seen that the gap under the door is ",
    "gap swinging n": ", and {0} at the least on their way",
    "gap swinging 1": ", and {0} at the least on its way",
    "hinges": "I know that fingers can be caught at the hinges, and what that can do.",
    "because": ", because the floor is not level.",
    "gap not known n": ", and that the floor was not measured on their way.",
    "gap not known 1": ", and that the floor was not measured on its way.",
}
"""What a client says to have seen, beside the cautions."""

SLIP_WORDS = {
    "head": "I say yes to these doors: please make them.",
    "job": "Job: {0}",
    "revision": "Revision: {0}",
    "revision of": "Revision: {0}, of {1}",
    "option": "Option: {0}, {1}",
    "mark": "Mark: {0}",
    "finish": "In: {0}",
    "quoted": "As quoted.",
    "differs": "Other than quoted: the price is to be confirmed first.",
    "ticks": "I have seen and I know:",
    "tick": "- {0}",
    "name": "Name: {0}",
    "date": "Date: {0}",
    "whole": "Please leave the line below as it is; it is for your maker’s tool.",
}
"""The slip line by line. The page writes it and `receive` writes it again to compare."""

ONE_SLIP_WORDS = SLIP_WORDS | {"head": "I say yes to this door: please make it."}
"""The slip of one door alone."""

CASE_SLIP_WORDS = SLIP_WORDS | {"head": "I say yes to these cabinets: please make them."}
"""The slip of cases."""

SLIP_FORMAT = 1
