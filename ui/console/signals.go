package console

import (
	"os"
	"os/signal"
	"syscall"
)

// OnSignals tells of the signals that end a program, instead of letting them. The
// status is 128 and the signal's number, as shells have it.
func OnSignals(tell func(status int)) (stop func()) {
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, syscall.SIGHUP, syscall.SIGINT, syscall.SIGTERM, syscall.SIGQUIT)
	go func() {
		for s := range signals {
			if n, ok := s.(syscall.Signal); ok {
				tell(ExitSignal + int(n))
			}
		}
	}()
	return func() {
		signal.Stop(signals)
		close(signals)
	}
}
