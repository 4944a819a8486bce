package typeset_test

import (
	"slices"
	"testing"

	"capscye/ui/typeset"
)

func TestSpeechHasNoSigns(t *testing.T) {
	for text, want := range map[string][]string{
		"The cap gets ~1/2 in longer. It is 18 1/4 in.":  {"The cap gets about 1/2 in longer.", "It is 18 1/4 in."},
		"1 + 1/4 in, less -2":                            {"1 plus 1/4 in, less minus 2."},
		"Perhaps half a girth?":                          {"Perhaps half a girth?"},
		"Bicep 13.9 in? 139 in is far out.?":             {"Bicep 13.9 in?", "139 in is far out?"},
		"2 x allowance 5/8, 3 in x wide":                 {"2 times allowance 5/8, 3 in x wide."},
		"need = 13 + 1 - 12 = 2 in":                      {"need: 13 plus 1 minus 12, that is 2 in."},
		"[x]  a set-in   sleeve -> b.toml":               {"x a set-in sleeve to b.toml."},
		" [] ":                                           nil,
		"need = 13 - 12 (-1/2)":                          {"need is 13 minus 12 (minus 1/2)."},
		"Say 3.5 cm. (From 15 degrees on.) No more. ok!": {"Say 3.5 cm.", "From 15 degrees on.", "No more. ok."},
	} {
		var s typeset.Speech
		if s.SayEach(text); !slices.Equal(s.Lines(), want) {
			t.Errorf("%q is said as %q", text, s.Lines())
		}
	}
}
