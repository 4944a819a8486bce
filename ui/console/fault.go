package console

import (
	"fmt"
	"path"
	"runtime"
	"strings"

	"capscye/ui/typeset"
)

// Fault is a fault of the program itself: what went wrong and where, and nothing
// of what anybody typed.
type Fault struct {
	What  string
	Where []string
}

// NewFault describes what was recovered. Only what the runtime says is said in
// words; any other value could hold what somebody typed, so its type stands for
// it.
func NewFault(recovered any) Fault {
	if f, ok := recovered.(Fault); ok { // it was caught before, in a command
		return f
	}
	f := Fault{What: fmt.Sprintf("%T", recovered)}
	if err, ok := recovered.(runtime.Error); ok {
		f.What = err.Error()
	}
	var counters [40]uintptr
	frames := runtime.CallersFrames(counters[:runtime.Callers(2, counters[:])])
	for {
		frame, more := frames.Next()
		if strings.HasPrefix(frame.Function, "capscye/") && !strings.Contains(frame.Function, "NewFault") {
			f.Where = append(f.Where, fmt.Sprintf("%s (%s:%d)", path.Base(frame.Function), path.Base(frame.File), frame.Line))
		}
		if !more || len(f.Where) == 8 {
			return f
		}
	}
}

// Report is what is printed once the terminal is as it was. kept is where what
// was not saved is, "" where everything was.
func (f Fault) Report(version, kept string) string {
	var out typeset.Printout
	out.Hanging("", "capscye stopped because of a fault of its own. Your terminal is as it was.")
	if kept == "" {
		out.Hanging("", "Every answer that you had left is in the file of the worksheet.")
	} else {
		out.Hanging("", "What was not saved is in "+kept+"; open the worksheet again to get it back.")
	}
	out.Line("Please report this (nothing that you typed is in it):")
	out.Line("  %s, version %s, %s/%s", f.What, version, runtime.GOOS, runtime.GOARCH)
	for _, w := range f.Where {
		out.Line("  at %s", w)
	}
	return out.String()
}
