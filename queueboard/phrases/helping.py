"""What can be done on each screen, in sentences: the first thing that its help says, before the keys."""

ANNOUNCE = (
    "Note a box that is to come: who sends it, how many knives, when it should be here. It gets its number and a date "
    "now, and is opened when it is in the door."
)
BENCH = (
    "See the belts with their hours, the tester with its wobble, and trials of a belt. The line under the cursor says "
    "what can be done with it."
)
BOARD = (
    "See where every knife and every box stands, and move them. The arrows lead the cursor, a number typed leads to a "
    "box or a knife, and the letters below act on what is under the cursor. Everything is stored at once, and u takes "
    "it back."
)
BOX = (
    "See everything of one box, and do what concerns it. The cursor chooses a knife or a thing, the letters act on it."
)
BOX_HISTORY = "Read what was done to this box and its knives, when and by whom."
BOXES = "See all open boxes in one table, sorted as you like."
CLOSE_OUT = (
    "Lead the box out of the shop, one question after the other: count without looking, tick the knives, compare the "
    "names, label, money. Each answer is stored at once; leave whenever you must, it goes on from there. / begins "
    "again, - says no, + says yes."
)
DAY = (
    "Work the runs in this order: knives with the same belts stand together, and who must leave first comes first. "
    "Begin a run, and its clock goes; finish it, and its knives move on."
)
EDGE = (
    "Read the edge at its marked spots: type the grams-force shown by the tester, then Enter, spot by spot. The "
    "sentence below says at once whether it is under the line. Then say whether the knife is OK, by the readings or by"
    " eye."
)
EVENING = (
    "End the day: count the money, empty the dust tray and look at it again, see what was done, and close the day. The"
    " line under the cursor says what comes next."
)
FIND = (
    "Answer the phone: type a surname, a tag, a town or the last four of the phone, and read the sentence aloud. Boxes"
    " that are gone are found too."
)
FIRST = (
    "Say what your shop is like: hours, country, currency, the first prices. Each line has an answer that Enter takes;"
    " all of it can be changed later. At the end the shop's file is made and the board opens."
)
FOUND = "See the knives that were found and belong to no box, note another one, and say what became of it."
GONE = (
    "Read about a box that has left: the sentence can be read to its customer. Knives that came back not sharp begin a"
    " new box here."
)
INITIALS = "Type your initials, then Enter. They stand beside everything you do from here on."
LABELS = "See the return labels by their last day. Close out while a label holds, ask for a new one, or buy one."
LATE = "See the boxes that are late or will be, with the reason and what could be told."
LOOSE = (
    "Find out where a loose knife belongs: type what you see, such as chef 20 black handle. The knives it could be "
    "stand below, with where they were seen last."
)
MARKET = (
    "Type the paper of the stall, a line for each customer: tag, count, name, phone; a star when it is paid. Enter "
    "keeps the line. + on an empty line takes all lines in as one step, which u takes back. On a line before, k asks "
    "for the next one who may be meant, and x takes the line off. Nothing is lost when you leave."
)
MESSAGE = (
    "Read or send what the customer should be told; the program sends nothing by itself. Choose what it is about, take"
    " the text along, then note that it was told."
)
MONTH = (
    "See what the shop did in a month: what came and went, how much was on time, where the minutes and the belts went,"
    " what was earned."
)
NUMBERS = (
    "See and change the shop's own numbers: hours, closed days, prices, kinds, lines, belts. Enter opens a section."
)
SECTION = (
    "Change a number: put the cursor on it, then Enter. What is not right is said before anything is stored, and u "
    "takes a change back."
)
OWING = "See who owes for boxes that have left, and take the money."
PAPERS = "Choose what is written to a file, to be printed."
RECEIVE = (
    "Type one box from the top: whose it is, how many knives you counted, then the knives, a line for each sort, such "
    "as 4 chef 20 dull. What is understood stands below the line, and what is in doubt is asked back. Enter steps on; "
    "behind the last field the box is taken in."
)
RECEIVED = "The box is taken in. Write its stub and tags to a file, or go back to the board."
RUN = "Several boxes are about to move as one run. Look at the numbers, then say yes or no."
SAID = "See what was told to customers beside what became of it."
SHELF = (
    "See the boxes that are ready and not yet fetched, the longest waiting first: tell the customer, note where it "
    "stands, hand it over."
)
SUMMARY = "The box is gone. Write this summary to a file, or go back to the board."
SWAPS = (
    "See the kitchens that have two sets, one there and one here, and when their next round is. Enter opens the sheet "
    "of a kitchen."
)
SWAP_SHEET = "Look a set through against its list, note a round, and say what became of a missing knife."
TRAY = (
    "A whole tray is about to move. Look at name and count. Type the knives that stay behind first, such as 3 7, then "
    "say yes."
)
TYPE_BACK = (
    "Type in what was written on the printed day sheet, line by line: + for done, * and the money for paid, then "
    "Enter. Enter alone leaves the line as it is, a tag goes to its line. Every line is stored as it is typed."
)
UNDO = (
    "Take back what you did, step by step, the newest first. Only the record is put right: a parcel that is away is "
    "not fetched back, and who was told a date wants to hear of it."
)
WALK_IN = (
    "Take in who stands at the counter: surname, count, the knives in one line such as 2 chef, paring. The day that "
    "can be told stands below; Enter tells it. What you did before waits as it is."
)
WALL = "Nothing needs to be done here: twelve boxes stand in large numbers, without names, phones or prices."
WEEK = "See how the next days fill: minutes booked against minutes there, what is due, when the shop is closed."
QUESTION = (
    "Answer from the top: Enter steps on, ↑ back, and behind the last answer it is stored. Among numbered "
    "answers a digit takes its line."
)
