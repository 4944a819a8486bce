package disk

import (
	"os"
	"path/filepath"
)

// A path is never made shorter by its letters here: "linked/.." is the folder above the
// one that is linked, and only the system knows which that is.

// BehindLinks is the file that a path stands for, there or not: the folder without any
// link, and the file that a symbolic link in it stands for. What cannot be found out is
// left as it is.
func BehindLinks(path string) string {
	for range 40 { // as many as Linux follows
		folder, err := filepath.EvalSymlinks(folderOf(path))
		if err != nil {
			return path
		}
		_, name := filepath.Split(path)
		if name == "" || name == ".." { // a folder
			return path
		}
		path = filepath.Join(folder, name)
		target, err := os.Readlink(path)
		if err != nil {
			return path
		}
		if !filepath.IsAbs(target) {
			target = inFolder(folder, target)
		}
		path = target
	}
	return path
}

// Whole is the file that a path stands for, from the root on. The folder that the program
// is in counts too: it may be known by a linked name.
func Whole(path string) string {
	path = BehindLinks(path)
	if filepath.IsAbs(path) {
		return path
	}
	here, err := os.Getwd()
	if err != nil {
		return path
	}
	if real, err := filepath.EvalSymlinks(here); err == nil {
		here = real
	}
	return filepath.Join(here, path)
}

// inFolder is the path of what a folder's name for it is, steps up and all.
func inFolder(folder, name string) string {
	if folder == "." {
		return name
	}
	return folder + string(filepath.Separator) + name
}

// Beside is the path of another name in the folder of a path.
func Beside(path, name string) string {
	folder, _ := filepath.Split(path)
	return folder + name
}

// folderOf is the folder that a path names something in.
func folderOf(path string) string {
	if folder, _ := filepath.Split(path); folder != "" {
		return folder
	}
	return "."
}
