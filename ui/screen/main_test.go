package screen

import (
	"testing"

	"capscye/ui/ask"
	"capscye/ui/internal/program"
	"capscye/ui/internal/props"
	"capscye/ui/show"
	"capscye/ui/try"
)

// commands are those that the screen has to agree with.
var commands = props.Commands{show.Command, try.Command, ask.Command}

var run, talk = commands.Run, commands.Talk

// insteadOfTests makes the test binary another program, where it was started as one;
// not every system can run those.
var insteadOfTests func()

func TestMain(m *testing.M) {
	if insteadOfTests != nil {
		insteadOfTests()
	}
	props.Main(m, program.Remove)
}
