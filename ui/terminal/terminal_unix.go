//go:build unix

package terminal

import (
	"os"
	"os/signal"
	"syscall"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"golang.org/x/sys/unix"
)

// PassSuspension gives the terminal back while the program is suspended from
// outside, and takes it again when it goes on. The key for that is undo here, as in
// any editor of forms, so nobody suspends it from within. The leader of a session
// has nobody who could let it go on, and is not suspended.
func PassSuspension(program *tea.Program) (stop func()) {
	signal.Ignore(syscall.SIGTTOU) // ended while it is suspended, it gives the terminal back from behind
	signals, goOn := make(chan os.Signal, 1), make(chan os.Signal, 1)
	signal.Notify(signals, syscall.SIGTSTP)
	signal.Notify(goOn, syscall.SIGCONT)
	go func() {
		for range signals {
			if leader, err := unix.Getsid(0); err != nil || leader == os.Getpid() {
				continue
			}
			if program.ReleaseTerminal() == nil {
				for len(goOn) > 0 { // of an earlier time
					<-goOn
				}
				_ = syscall.Kill(os.Getpid(), syscall.SIGSTOP)
				<-goOn // the stop takes a moment to come
				_ = program.RestoreTerminal()
			}
		}
	}()
	return func() {
		signal.Stop(signals)
		signal.Stop(goOn)
		close(signals)
	}
}

// comes tells that more is to be read, within a time.
func (k *Keyboard) comes(within time.Duration) bool {
	for until := time.Now().Add(within); ; {
		left := max(0, time.Until(until))
		n, err := unix.Poll([]unix.PollFd{{Fd: int32(k.File.Fd()), Events: unix.POLLIN}}, int(left.Milliseconds()))
		if err != unix.EINTR {
			return err != nil || n > 0 // where nobody can say, reading will
		}
	}
}
