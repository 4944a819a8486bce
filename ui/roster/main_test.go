package roster

import (
	"testing"

	"capscye/ui/internal/props"
	"capscye/ui/show"
)

// commands are what the tests of this room run; show says what the roster has to say too.
var commands = props.Commands{Command, show.Command}

var run, runWith = commands.Run, commands.RunWith

func TestMain(m *testing.M) { props.Main(m) }
