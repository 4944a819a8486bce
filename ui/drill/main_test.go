package drill

import "capscye/ui/internal/props"

// commands are what the tests of this room run.
var commands = props.Commands{Command}

var run = commands.Run
