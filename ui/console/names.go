package console

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"capscye/ui/typeset"
	"capscye/worksheets"
)

// What a new worksheet may be called.

// longestName is in bytes: most file systems take 255, and copies beside it have longer
// names.
const longestName = 200

// FreeName is the file of this folder that a new worksheet with that name goes to, or
// says why it cannot.
func FreeName(text string) (path, refusal string) {
	path = strings.TrimSpace(text)
	if stem, end := split(path); stem != strings.TrimSpace(stem) { // blouse .toml
		path = strings.TrimSpace(stem) + end
	}
	switch stem, end := split(path); {
	case stem == "":
		return "", "Type a name, such as blouse."
	case strings.ContainsAny(stem, `/\`):
		return "", "A name has no slash in it. Type one such as blouse."
	case strings.HasPrefix(stem, "."):
		return "", "A name that begins with a dot is hidden. Type one such as blouse."
	case len(stem) > longestName:
		return "", "This name is too long. Type one such as blouse."
	case end == "":
		path += worksheets.Ending
	}
	if Exists(path) {
		return "", typeset.Plain(path) + " exists already; choose another name."
	}
	return path, ""
}

// split takes the ending of a worksheet from a name.
func split(name string) (stem, end string) {
	if at := len(name) - len(worksheets.Ending); at >= 0 && strings.EqualFold(name[at:], worksheets.Ending) {
		return name[:at], name[at:]
	}
	return name, ""
}

// MayBegin says why no worksheet can be begun at a path that nothing has; nil where one
// can.
func MayBegin(path string) error {
	folder, name := filepath.Split(path)
	stem, _ := split(name)
	switch info, err := os.Stat(filepath.Clean(folder)); {
	case strings.TrimSpace(stem) == "":
		return fmt.Errorf("a worksheet needs a name, such as blouse.toml")
	case stem != strings.TrimSpace(stem):
		return fmt.Errorf("%q begins or ends with a space. Write it like blouse.toml", typeset.Plain(stem))
	case err != nil || !info.IsDir():
		return fmt.Errorf("there is no folder %s. Make it first, or write a name like blouse.toml", typeset.Plain(filepath.Clean(folder)))
	}
	return nil
}

// ForShell is the path of a file as a shell takes it behind a command; "" where it has what
// cannot be shown, and so cannot be copied. Double quotes are what every shell knows.
func ForShell(path string) string {
	isOrdinary := func(r rune) bool {
		return unicode.IsLetter(r) || unicode.IsDigit(r) || strings.ContainsRune("_-./,:+@%", r)
	}
	switch {
	case typeset.Plain(path) != path:
		return ""
	case strings.HasPrefix(path, "-"): // which would be a flag
		return ForShell("./" + path)
	case !strings.ContainsFunc(path, func(r rune) bool { return !isOrdinary(r) && r != filepath.Separator }):
		return path
	case !strings.ContainsAny(path, "\"$`\\!") || filepath.Separator == '\\':
		return `"` + path + `"`
	}
	return "'" + strings.ReplaceAll(path, "'", `'\''`) + "'"
}

// FileNameFor suggests a file name for a title.
func FileNameFor(title string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(title) {
		switch {
		case 'a' <= r && r <= 'z' || '0' <= r && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	const longest = 60 // of a name that is still read
	name := strings.Trim(b.String(), "-")
	if name == "" {
		name = "worksheet"
	}
	return strings.TrimRight(name[:min(len(name), longest)], "-") + worksheets.Ending
}
