package worksheets

import "io/fs"

// hasOtherNames is not known on Windows.
func hasOtherNames(fs.FileInfo) bool { return false }
