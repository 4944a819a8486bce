// Package disktest is for tests that lay files and look at them, watch what reaches a disk, or
// fill one.
package disktest

import "strings"

// WholeCalls are the lines of a trace of system calls (strace -f), without the thread's
// number, with the halves put together of a call that another thread came between:
// "fsync(3</x> <unfinished ...>" and, later, "<... fsync resumed>) = 0".
func WholeCalls(traced string) []string {
	begun, lines := map[string]string{}, []string{}
	for line := range strings.Lines(traced) {
		thread, call, _ := strings.Cut(strings.TrimRight(line, "\n"), " ")
		if head, cut := strings.CutSuffix(call, " <unfinished ...>"); cut {
			begun[thread] = head
			continue
		}
		if _, tail, resumed := strings.Cut(call, " resumed>"); resumed {
			call = begun[thread] + tail
		}
		lines = append(lines, call)
	}
	return lines
}
