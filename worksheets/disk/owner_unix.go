//go:build !windows

package disk

import (
	"errors"
	"io/fs"
	"os"
	"syscall"
	"time"
)

// atOnce makes opening what is no file after all, a pipe say, wait for nobody.
const atOnce = syscall.O_NONBLOCK

// Number is the number of a file on its disk. It is the same by every name of the file;
// a new version that is renamed over it has another.
func Number(info fs.FileInfo) (number uint64, ok bool) {
	stat, ok := info.Sys().(*syscall.Stat_t)
	if !ok {
		return 0, false
	}
	return uint64(stat.Ino), true
}

// HasOtherNames tells that a file has more than one name: a new file renamed
// over one of them would leave the others behind.
func HasOtherNames(info fs.FileInfo) bool {
	stat, ok := info.Sys().(*syscall.Stat_t)
	return ok && stat.Nlink > 1
}

// keepOwner gives a new file the owner and the group of the one that it replaces.
func keepOwner(f *os.File, before fs.FileInfo) error {
	now, err := f.Stat()
	if err != nil {
		return err
	}
	is, ok := now.Sys().(*syscall.Stat_t)
	was, known := before.Sys().(*syscall.Stat_t)
	if !ok || !known || is.Uid == was.Uid && is.Gid == was.Gid {
		return nil
	}
	return f.Chown(int(was.Uid), int(was.Gid))
}

// losesBits tells that writing into a file would take a part of its mode away that only
// its owner could give back.
func losesBits(info fs.FileInfo) bool {
	stat, ok := info.Sys().(*syscall.Stat_t)
	return ok && info.Mode()&(fs.ModeSetuid|fs.ModeSetgid) != 0 && os.Geteuid() != 0 && os.Geteuid() != int(stat.Uid)
}

// mayWrite tells that who made one file could have written the other as well.
func mayWrite(made, other fs.FileInfo) bool {
	by, known := made.Sys().(*syscall.Stat_t)
	of, ok := other.Sys().(*syscall.Stat_t)
	return known && ok && (by.Uid == 0 || by.Uid == of.Uid || int(by.Uid) == os.Geteuid() || other.Mode()&0o022 != 0)
}

// isMounted tells that nothing can be renamed over a file because it is mounted there.
func isMounted(err error) bool { return errors.Is(err, syscall.EBUSY) }

// isGone tells that there is no program of that number any more.
func isGone(pid int) bool { return errors.Is(syscall.Kill(pid, 0), syscall.ESRCH) }

// lock keeps other programs from saving in a folder until it is let go. Where it cannot
// be had it goes on without: a program that hangs must not take the saves of all others.
func lock(folder string) (letGo func()) {
	f, err := os.Open(folder)
	if err != nil {
		return func() {}
	}
	unlock := lockFile(f)
	return func() { unlock(); _ = f.Close() }
}

// lockWait is how long a lock is waited for: longer than a save takes on a disk that is
// busy, and on a machine that is.
const lockWait = 3 * time.Second

// lockFile is [lock] for what is open.
func lockFile(f *os.File) (letGo func()) {
	for until := time.Now().Add(lockWait); ; time.Sleep(time.Millisecond) {
		err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
		if err == nil {
			return func() { _ = syscall.Flock(int(f.Fd()), syscall.LOCK_UN) }
		}
		if !errors.Is(err, syscall.EWOULDBLOCK) && !errors.Is(err, syscall.EINTR) || time.Now().After(until) {
			return func() {}
		}
	}
}
