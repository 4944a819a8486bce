package screen

import (
	"testing"

	"capscye/ui/internal/props"
	"capscye/worksheets"
)

// An arm without its point is asked about at its field and wherever the hands are; one
// key takes the guess, and one undoes that.
func TestAGuessIsTakenWithOneKey(t *testing.T) {
	r := sitWithFile(t, "archive-coat", 80, 24)
	r.DoesNotSee("^a").Types("365").Press("enter").Sees("Do not cut: is the bicep 36,5 cm?", "^a take guess")
	r.Press("up").Sees("36,5 cm? ^a takes it").Press("ctrl+a").Sees("Bicep is now 36.5 cm. ^z undoes that.", "[saved]").DoesNotSee("^a takes it")
	if got := props.AnswerIn(t, "sheet.toml", worksheets.Bicep); got != "36,5" {
		t.Errorf("the file has %q", got)
	}
	r.Press("ctrl+z").Sees("36,5 cm? ^a takes it")
	if got := props.AnswerIn(t, "sheet.toml", worksheets.Bicep); got != "365" {
		t.Errorf("after undo the file has %q", got)
	}
	r.Press("f5", "ctrl+a").Sees("Bicep is now 36.5 cm.") // on a page too
	// Without a guess the key is that of the line of input, and nothing is taken.
	r.Press("f1").Types("36").Press("ctrl+a").DoesNotSee("is now")
}

// Arm and bust that were exchanged go back with one key, both.
func TestExchangedAnswersGoBackTogether(t *testing.T) {
	r := sitWithFile(t, "costume-tunic", 80, 24).Types("88").Press("enter")
	r.Press("down").Types("29").Press("enter").Sees("bicep and bust the other way round?").Press("ctrl+a")
	if bicep, bust := props.AnswerIn(t, "sheet.toml", worksheets.Bicep), props.AnswerIn(t, "sheet.toml", worksheets.Bust); bicep != "29" || bust != "88" {
		t.Errorf("bicep %q, bust %q", bicep, bust)
	}
	r.Press("ctrl+z")
	if bicep, bust := props.AnswerIn(t, "sheet.toml", worksheets.Bicep), props.AnswerIn(t, "sheet.toml", worksheets.Bust); bicep != "88" || bust != "29" {
		t.Errorf("after undo bicep %q, bust %q", bicep, bust)
	}
}

// Whole widths of front and back, where half of each is asked, are halved with one key.
func TestWholeWidthsAreHalvedTogether(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f3", "down", "down", "down", "down").Sees("> Front width").Types("20").Press("down").Types("19 1/2").Press("enter")
	r.Sees("Do not cut: are front and back width 10 and 9 3/4 in, halved?").Press("up", "up").Sees("10 and 9 3/4 in, halved? ^a takes it").Press("ctrl+a").DoesNotSee("halved?").Sees("Bodice front width is now 10 in, bodice back width 9 3/4 in. ^z undoes that.")
	if front, back := props.AnswerIn(t, "sheet.toml", worksheets.BodiceFront), props.AnswerIn(t, "sheet.toml", worksheets.BodiceBack); front != "10" || back != "9 3/4" {
		t.Errorf("front %q, back %q", front, back)
	}
}

// A width that is doubted says so in its row when the hands have left it, while the
// verdict still tells of other answers that are missing.
func TestADoubtIsSeenAtItsField(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("f3", "down", "down", "down").Sees("> Sleeve width").Types("133").Press("down", "down", "delete", "up")
	r.Sees("Answers missing: bodice back width", "Sleeve width        133 in            13 in?")
}

// A bust typed after the first arm, where the other arm is asked, goes to its field.
func TestABustTypedTooSoonGoesToItsField(t *testing.T) {
	r := sitWithFile(t, "choir-blouse", 80, 24).Press("down", "down", "delete", "up").Types("38 1/2").Press("enter").Sees("other arm and bust the other way round?").Press("ctrl+a")
	r.Sees("Other arm is now empty, bust 38 1/2 in. ^z undoes that.")
	if other, bust := props.AnswerIn(t, "sheet.toml", worksheets.BicepOther), props.AnswerIn(t, "sheet.toml", worksheets.Bust); other != "" || bust != "38 1/2" {
		t.Errorf("other arm %q, bust %q", other, bust)
	}
}
