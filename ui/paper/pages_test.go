package paper

import (
	"errors"
	"os"
	"strings"
	"testing"

	"capscye/ui/internal/props"
)

// pages writes the card of the coat, with a change, in an SVG for each page.
func pages(t *testing.T, name, from, to string) (said string, status int) {
	t.Helper()
	sheet := props.Read(t, props.Example("archive-coat"))
	if !strings.Contains(sheet, from) {
		t.Fatalf("%q is not in the worksheet", from)
	}
	os.WriteFile("sheet.toml", []byte(strings.Replace(sheet, from, to, 1)), 0o644)
	status, out, errs := run("", "card", "sheet.toml", "-o", name)
	return out + errs, status
}

// A card that has become shorter leaves no page of before beside it: a template true to
// scale with old amounts would be cut out. One that somebody wrote on is left, and named.
// Without the height of its cap no corner of the coat's sleeve is known, and so no template.
func TestAPageThatTheCardHasNoLongerGoes(t *testing.T) {
	const height, none = "cap_height ", "# cap_height "
	t.Chdir(t.TempDir())
	said, _ := pages(t, "x.svg", "", "")
	last := pageName("x.svg", strings.Count(said, "Saved "))
	noted := strings.Replace(props.Read(t, last), "</svg>", "<!-- mine --></svg>", 1)
	os.WriteFile("x-99.svg", []byte("<svg/>"), 0o644)
	said, status := pages(t, "x.svg", height, none)
	if !strings.Contains(said, "Removed "+last+": this card has ") || status != 0 {
		t.Errorf("status %d, %s", status, said)
	}
	if _, err := os.Stat(last); err == nil {
		t.Errorf("%s is still there", last)
	}
	if props.Read(t, "x-99.svg") != "<svg/>" {
		t.Error("what is no page of ours was removed")
	}

	pages(t, "x.svg", "", "")
	os.WriteFile(last, []byte(noted), 0o644)
	if said, _ := pages(t, "x.svg", height, none); !strings.Contains(said, last+" is an old page, changed") || props.Read(t, last) != noted {
		t.Errorf("a page with a note on it: %s", said)
	}
}

// A page is written over by the same page of the same card, and by no other: neither does
// a.svg take a-2.svg that is a card, nor a card called a-2.svg the second page of a.svg.
func TestAPageOfAnotherCardIsLeftAlone(t *testing.T) {
	for _, order := range [][2]string{{"a.svg", "a-2.svg"}, {"a-2.svg", "a.svg"}} {
		t.Chdir(t.TempDir())
		if said, status := pages(t, order[0], "", ""); status != 0 {
			t.Fatal(status, said)
		}
		before := props.Read(t, "a-2.svg")
		said, status := pages(t, order[1], `bicep       = "36,4"`, `bicep = "38"`)
		if status != 2 || !strings.Contains(said, "a-2.svg is a page of another card; left alone") || props.Read(t, "a-2.svg") != before {
			t.Errorf("%s, then %s: status %d, %s", order[0], order[1], status, said)
		}
		if said, status := pages(t, order[0], "", ""); status != 0 || strings.Contains(said, "Removed") {
			t.Errorf("%s again: status %d, %s", order[0], status, said)
		}
	}
	// A card that was renamed is still a card: its first page may be written over.
	t.Chdir(t.TempDir())
	pages(t, "a.svg", "", "")
	if err := errors.Join(os.Rename("a.svg", "b.svg"), os.Remove("a-2.svg")); err != nil {
		t.Fatal(err)
	}
	if said, status := pages(t, "b.svg", "", ""); status != 0 {
		t.Errorf("status %d, %s", status, said)
	}
}
