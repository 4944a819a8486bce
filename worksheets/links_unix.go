//go:build !windows

package worksheets

import (
	"io/fs"
	"syscall"
)

// hasOtherNames tells that a file has more than one name: a new file renamed
// over one of them would leave the others behind.
func hasOtherNames(info fs.FileInfo) bool {
	stat, ok := info.Sys().(*syscall.Stat_t)
	return ok && stat.Nlink > 1
}
