package sizes

import (
	"capscye/ui/internal/props"
	"capscye/ui/show"
)

// commands are what the tests of this room run.
var commands = props.Commands{Command, show.Command}

var run = commands.Run
