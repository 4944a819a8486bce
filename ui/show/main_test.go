package show

import "capscye/ui/internal/props"

// commands are what the tests of this room run.
var commands = props.Commands{Command, TraceCommand}

var run, runWith = commands.Run, commands.RunWith
