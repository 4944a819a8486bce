package props

import "syscall"

// roomy tells that programs can be laid on a disk and run from there, and that it has room
// for the tests.
func roomy(disk string) bool {
	const noExec, enough = 8, 256 << 20 // ST_NOEXEC of statfs(2)
	var is syscall.Statfs_t
	err := syscall.Statfs(disk, &is)
	return err == nil && is.Flags&noExec == 0 && is.Bavail*uint64(is.Bsize) > enough && syscall.Access(disk, 7) == nil
}
