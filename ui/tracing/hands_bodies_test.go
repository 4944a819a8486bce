package tracing_test

import (
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"capscye/ui/internal/props"
)

// someBodies is how many of the survey's people are traced on each example, unless
// CAPSCYE_TEST_BODIES is "all".
var someBodies = props.OfMany(16, 48)

// dressed is an example made for a body: the girths that the survey has, where the
// example says an ease for them, and a bust line 0 to 3 in down.
func dressed(example sheet, n int, body map[string]string) sheet {
	s := maps.Clone(example)
	delete(s, "body.bicep_other")
	for key, usual := range map[string]string{"ease.bicep": "2 in", "ease.bust": "3 in"} {
		if s[key] == "" {
			s[key] = usual
		}
	}
	for key, column := range map[string]string{"bicep": "biceps_flexed_mm", "bust": "chest_mm", "waist": "waist_mm", "hip": "buttock_mm", "wrist": "wrist_mm"} {
		if s["ease."+key] != "" {
			s["body."+key] = body[column] + " mm"
		}
	}
	s["bodice.bust_down"] = []string{"", "1 in", "2 in", "3 in"}[n%4]
	return s
}

func TestHandsTraceBodies(t *testing.T) {
	people, p := props.Bodies(t), newProgram(t)
	step := len(people) / someBodies
	if os.Getenv("CAPSCYE_TEST_BODIES") == "all" {
		step = 1
	}
	for _, file := range exampleFiles(t) {
		example := exampleSheet(t, file)
		traced := 0
		for n := 0; n < len(people); n += step {
			s := dressed(example, n/step, people[n])
			tr := trace(s, p.ask(s), cut(s, false))
			tr.judge()
			if len(tr.faults) > 0 {
				t.Fatalf("%s, body %d:\n  %s\n%s\n%s", filepath.Base(file), n, strings.Join(tr.faults, "\n  "), s.toml(), tr.answer.printed)
			}
			traced++
		}
		t.Logf("%-20s %d bodies traced", filepath.Base(file), traced)
	}
}
