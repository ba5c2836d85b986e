"""Every word the client's page says of itself, and the words of the slip; the rest comes with the job."""

from __future__ import annotations

WORDS = {
    "language": "en",
    # the strip
    "shut": "Shut",
    "clear": "Open: {0} clear to walk through",
    "open_by mm": "{0} millimetres open",
    "open_by in": "{0} inches open",
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
    "pull": "At the pull",
    "pull how": "arm’s length",
    "beyond": "From the other room",
    "beyond how": "looking back",
    "also": "Also show",
    "person mm": "A person, 1.70 m",
    "person in": "A person, 5′ 7″",
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
    "slip": "The slip",
    # the foot
    "revision": "Revision {0}",
    "mark": "mark {0}",
    "maker": "Drawn by {0} from the measured opening.",
    "made with": "Made with stilewright",
}

SLIP_WORDS = {
    "head": "I say yes to these doors: please make them.",
    "job": "Job: {0}",
    "revision": "Revision: {0}",
    "revision of": "Revision: {0}, of {1}",
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

SLIP_FORMAT = 1
