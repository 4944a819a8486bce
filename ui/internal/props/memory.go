package props

import (
	"os"
	"runtime/debug"
)

// measuring tells that the program itself is measured.
var measuring = os.Getenv("CAPSCYE_MEASURE") != ""

// The rooms make thousands of short texts and keep none: collected at every 4 MB, as is
// usual, they cost a tenth of the time of all tests. What measures the program itself has
// the usual setting, as has whoever sets it.
func init() {
	if !measuring && os.Getenv("GOGC") == "" {
		debug.SetGCPercent(400)
	}
}

// layInMemory has the folders of the tests in memory, where there is a disk of that: they
// save thousands of files, and none of them cuts the power. A thorough run, as in CI, has
// them on the disk of the machine, as have the tests of worksheets and worksheets/disk.
func layInMemory() {
	const memory = "/dev/shm"
	if Thorough() || measuring || os.Getenv("TMPDIR") != "" || !roomy(memory) {
		return
	}
	os.Setenv("TMPDIR", memory)
}
