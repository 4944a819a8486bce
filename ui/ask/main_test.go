package ask

import (
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/show"
)

// commands are what the tests of this room run.
var commands = props.Commands{Command, show.Command}

var run, talk = commands.Run, commands.Talk

func TestMain(m *testing.M) { props.Main(m) }
