package desk

import "strings"

// KeyHelp is a key of the screen with a sentence about it, for the manual.
type KeyHelp struct{ Key, Says string }

// keySays says more of each key than the page of keys has room for, by what is to be
// read there; a test holds that it is complete.
var keySays = map[string]string{
	"up/down field":       "Keep the answer and go to the field before or after; so do tab and shift+tab.",
	"esc as it was":       "Brings back what was in the field; pressed again, what you typed. Goes back from a question, a list or a page.",
	"enter keep, next":    "Keeps the answer and goes to the next field.",
	"enter next step":     "Goes to the next step.",
	"^a take guess":       "Puts the guess, such as 36.5 for 365, in the place of the answer that is doubted.",
	"^b sizes":            "Lays the sizes of the pattern side by side, typed in place, with what each costs. On a name, enter takes that size in hand; ^x removes a size; the last column takes another.",
	"^g other":            "Goes from the worksheet to its copies and back.",
	"^x keep or drop":     "Shows all that differs between the worksheet and its copies; there k keeps one and drops the rest, d drops one, s saves one as a file of its own.",
	"left/right push":     "Left and right push the slide through the range of slides that work. A length can be typed too.",
	"l least":             "Takes the least slide.",
	"e even":              "Takes the even slide.",
	"left/right choose":   "Go through the choices. A first letter chooses too; more letters of a word tell it from others.",
	"left/right one mark": "Change a length by one mark of the ruler. Once you type, they move inside it; home and end go into it too.",
	"space done, next":    "Ticks the step off and goes to the next one that is open.",
	"x not done":          "Takes the tick away.",
	"left/right piece":    "Go to the piece before or after; home and end go to either end.",
	"t table view":        "Fills the screen with the step, its amount in digits to be read from across a table.",
	"n note a fitting":    "Notes what a test garment showed.",
	"c card":              "Saves the card as a PDF in the folder of the worksheet.",
	"up/down step":        "Go from step to step.",
	"w ways out":          "Lists the smallest single changes that would make it work, each with its cost. Enter opens one as a copy.",
	"up/down scroll":      "Scroll.",
	"pgdn/pgup step":      "Go to the next step and back to the one before.",
	"f1-f6 to a step":     "Go to that step.",
	"1-6 to a step":       "Go to that step.",
	"^z undo":             "Undoes the latest change, whatever step it was in.",
	"^y redo":             "Redoes what was undone.",
	"^s save":             "Saves at once. In an example it offers to begin your own worksheet.",
	"^l what if":          "Makes a copy to try things on, up to three. See WHAT IF.",
	"^f take from":        "Takes the body (in step 1) or the pattern (in step 3) from another worksheet of this folder.",
	"^t in/cm":            "Shows and reads lengths in the other unit. What was measured stays, and so does the file.",
	"^o worksheets":       "Lists the worksheets of this folder, a new one, one elsewhere, the examples and the drill. Letters find a row.",
	"^r working":          "Shows the arithmetic, from the line about the field at hand on.",
	"^d drill":            "Starts the drill, or goes on where you left it. Enter answers, ? shows the working, pgup and pgdn change the level, esc shows the score and goes back.",
	"^e words":            "Explains the sewing words, from the one about the field at hand on.",
	"^k keys":             "Lists the keys.",
	"^c end":              "Ends the program. It first says what is not saved.",
}

// Help lists every key of the worksheet with where it works, in the order of the page
// of keys, and those that are no binding because they work in a line of typing.
func Help() []KeyHelp {
	var list []KeyHelp
	for _, b := range bindings {
		key := b.show
		switch first, _, _ := strings.Cut(b.where, " "); first {
		case "in", "on", "beside", "or": // else it completes what the key does
			key += ", " + b.where
		}
		list = append(list, KeyHelp{key, keySays[b.show+" "+b.does]})
	}
	return append(list, KeyHelp{"delete, on a field just reached", "Empties the field (not title, wearer and notes)."})
}
