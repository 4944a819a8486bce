package manual

import (
	"strings"

	"capscye/ui/wording"
)

// What no table of the program says.

// FirstWorksheet is the least that makes a plan: a sleeve alone.
const FirstWorksheet = `about.unit      = "in"
body.bicep      = "13 3/4"
ease.bicep      = "1 3/4"
sleeve.width    = "13"
sleeve.measured = "seam"`

const screenProse = `
The screen has six steps, in the order in which the hands work: measure the Body, choose the Ease, measure the Pattern, Split the need into
pivot and slide, check what must Match, and Trace. Steps that have their answers are drawn with double lines. Go to any step at any time.

~ before a length means rounded.

capscye words explains the sewing words; so does ctrl+e on the screen.`

const keyProse = `
Typing over a value replaces it; title, wearer and notes are added to. A key that cannot begin an answer is refused. What is half typed changes
no answer. What cannot be read says why, and waits in its field: you can go on, and the answer that was there stays. Fractions that ran together
are asked about: 141/2 offers 14 1/2, and enter takes it. Emptying a field clears the answer; undo brings it back.

A paste goes into a field or is refused whole; it presses no key. Keys within %g s behind a paste are dropped. So is what comes
faster than hands type. The screen says both.`

const whatIfProse = `
ctrl+l makes a copy of the worksheet. Change anything in it: the screen lists what differs, with both values, and the findings that are new,
gone or still there. The file changes only when you keep the copy (ctrl+x) or save it as a file of its own. %d copies are the most.

What you change in the worksheet meanwhile changes in its copies too, where they do not differ there. Ticks, notes of fittings and the card
belong to the worksheet. Undo reaches across all of it.

Where something says stop, or a girth changes that was not given, w in step 5 lists the smallest single changes that help: less ease,
another share, a wider limit, keeping a width, another rule for the slide. Each has its cost. Enter opens one as a copy. show prints them too. The program
tries one ruler mark after the other, limits up to %s and shares from %d to %d %%; those bounds are ours.

try does the same without the screen.`

const tableProse = `
Step 6 goes through the work: lay, mark, pin, turn, trace, slide, extend or taper, true, match the notches; piece by piece. The picture shows
the piece as it lies at that moment. Front and back are told apart only where they differ.

A tick is saved with the amounts that the step was done with. When they change, do the step again.

A note of a fitting is saved with its day. One that names a place, an amount and a way (upper arm 1/2 in too tight) can become a change of
ease with one key. Any other is a note and nothing more.

A new worksheet can begin with the body or the pattern of another one in the folder, and ctrl+f takes them into the one at hand. The
worksheet remembers the file. When something is measured again there, a finding says so, and w in step 5 opens the new values as a copy.`

const sizeProse = `
Another size of the same pattern; up to %d. How the pattern was measured, its allowances, style and length, and where its darts start are
in [sleeve] and [bodice], for every size. Any other key that is missing from a size is not known for that size.`

const savingProse = `
An answer is on disk as soon as you leave its field. The file is written aside and renamed, so it is whole at any moment; it keeps its
owner, its permissions, its links and its other names.

What cannot be in the file is safe in your state folder: changes to a file that cannot be written, a worksheet without a name, copies. That
folder is $XDG_STATE_HOME/capscye, or ~/.local/state/capscye; on macOS and Windows the folder for configuration. After a crash, open the
worksheet again: what was not saved is there as a copy, and you keep or drop it. What was half typed is back in its field, a note of a fitting too.

Where another program changes the file, the screen says so and overwrites nothing. ctrl+s offers to take theirs, to save mine, each with the
other beside it, or to go on with mine in a file of its own. ask leaves the file and saves your answers beside it, in NAME.mine-1.

If the program has a fault, it gives the terminal back, names the file with what was not saved, prints a report without anything you
typed, and ends with status %d.`

const methodProse = `
The need is girth plus ease less flat width, around the body. A sleeve has two sides, a bodice four, and each takes its part. The front share
says how front and back divide it.

Measured from cut edge to cut edge, a width includes seam allowances: one comes off for each seamed edge that the tape crossed. Measured from seam
line to seam line, none does. Darts, tucks, pleats and overlaps under the tape come off either way.

The sleeve side and the bodice side that are sewn together slide by the same amount. The rest of each need is pivoted, at most by the pivot
limit: 1 in (2.5 cm) a side, by common practice. The least slide changes the armhole least. The even slide, nearest to half the need, turns
less. Or choose a length; there is a range of slides that work.

Where the slide is more than a piece needs, the piece only has to match. Widen it to match, and it comes out wider (usual; in the file "let out").
Or keep its width, and it pivots back (unusual; few books do this; in the file "hold"). With the armhole kept, nothing slides but what the cap can
still ease in.

A pivot turns the pattern about its pin until the seam line below the corner passes through the mark; inward, until the corner lies straight below
the mark. The cap seam keeps its length, but the cap gets lower: an inch of pivot commonly costs an inch or more of cap height.

A short sleeve's underarm seam moves out as a whole. A long sleeve tapers to its hem and a bodice side to its waist, which stay. The taper starts
at the line where the girth is measured, so the piece has its full width there; or at the underarm corner, which is quicker and narrower at
that line. What comes out is read off the new outline.

The slide is rounded to the nearest ruler mark, halves away from zero. The pivot to mark is the rounded total less the marked slide. So the marks of
a side add up, and both sides of a seam get the same slide.`

const fileProse = `
A worksheet is a TOML 1.0 file in UTF-8, to be read and edited by hand. Every length is text in quotes, so that fractions stay as written. Empty or
absent means not measured, which is not zero.

Saving changes only the values that changed; comments, unknown keys and the order of the lines stay. A file written in a way that
does not allow this is rewritten as a whole. The screen says so first, and the old file is kept beside it, as NAME.before-1.

A value that cannot be read is reported with its line, and the rest opens. A file of more than %[1]d KiB is refused, and so is one with keys of more
than %[2]d parts or brackets more than %[2]d deep. The least that makes a plan:`

const fileSums = `
The amounts need a girth, its ease and the flat widths. Everything else is optional, and each measurement tells more. Cap height and corners
tell what the pivots turn, and what that takes off cap and armhole. Underarm and side seam tell how much longer they get; hem, elbow,
waist and hip widths, whether the taper binds; the seams of cap and armhole, the cap ease.`

const lengthProse = `
Minus signs, fraction slashes and spaces of any kind read. Feet are not used. A length stays in the
file as you typed it.`

const jsonProse = `
Lengths are millimetres, exact and unrounded. null is not known. While an answer that a girth needs is missing, both pieces are null but
for their needs: they share the slide.`

// told is a section of paragraphs.
func told(name, text string) section {
	s := section{name: name}
	s.say(text)
	return s
}

func environment() section {
	return section{"ENVIRONMENT", []part{
		{entry, "NO_COLOR", "If set, there is no colour. Nothing depends on colour anyway."},
		{entry, "TERM", "If dumb or not set, capscye FILE works like ask."},
		{entry, "XDG_STATE_HOME", "Where the state folder is; see SAVING."},
	}}
}

func cautions() section { return told("CAUTIONS", strings.Join(wording.Cautions, "\n\n")) }

const doubtProse = `
An answer outside these bounds is doubted: a check, with the likeliest slip as a guess where there is one. A doubt refuses nothing; if the
answer is right, leave it. Percentages are of widths without allowances and take-off. Ease is doubted below half the least and above
twice the most that is usual; away from arm and bust, above twice the most of the bust.`
