package ui

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"capscye/ui/screen"
	"capscye/ui/typeset"
	"capscye/ui/wording"
)

// manual is a page of the manual in the making, in roff with its macros for
// manual pages.
type manual struct{ strings.Builder }

// roffSigns are the characters that roff would not print as they are.
var roffSigns = strings.NewReplacer(`\`, `\e`, "-", `\-`, `"`, `\(dq`, "'", `\(aq`, "`", `\(ga`, "^", `\(ha`, "~", `\(ti`)

// macro prints a macro, and the words that it sets, if any.
func (m *manual) macro(name, words string) {
	if words != "" {
		name += ` "` + roffSigns.Replace(words) + `"`
	}
	m.WriteString(name + "\n")
}

// text prints lines; one that begins with a point would be a macro.
func (m *manual) text(text string) {
	for _, l := range strings.Split(strings.Trim(text, "\n"), "\n") {
		if l = roffSigns.Replace(l); strings.HasPrefix(l, ".") {
			l = `\&` + l
		}
		m.WriteString(l + "\n")
	}
}

// paragraphs prints a text below a heading.
func (m *manual) paragraphs(text string) {
	for i, p := range strings.Split(text, "\n\n") {
		if i > 0 {
			m.macro(".PP", "")
		}
		m.text(p)
	}
}

// entry prints a text under a lead in bold.
func (m *manual) entry(lead, text string) {
	m.macro(".TP", "")
	m.macro(".B", lead)
	m.text(text)
}

// manPage is the table of commands as a page of the manual, with the keys of the
// screen.
func manPage(root *cobra.Command) string {
	var m manual
	fmt.Fprintf(&m, ".TH CAPSCYE 1 \"\" \"capscye %s\" \"User commands\"\n", roffSigns.Replace(Version))
	m.macro(".SH", "NAME")
	m.text("capscye - " + strings.ToLower(root.Short[:1]) + root.Short[1:])
	m.macro(".SH", "SYNOPSIS")
	m.macro(".B", root.Use)
	var commands manual
	for _, c := range root.Commands() {
		if c.Hidden {
			continue
		}
		use := "capscye " + c.Use
		m.macro(".br", "")
		m.macro(".B", use)
		commands.macro(".SS", use)
		commands.paragraphs(c.Long)
		if flags := c.LocalNonPersistentFlags(); flags.HasFlags() && flags.Lookup("help") == nil { // which the one that runs has
			commands.macro(".PP", "")
			commands.macro(".nf", "")
			commands.text(flags.FlagUsages())
			commands.macro(".fi", "")
		}
	}
	m.macro(".SH", "DESCRIPTION")
	m.paragraphs(root.Long)
	m.macro(".SH", "COMMANDS")
	m.WriteString(commands.String())
	m.macro(".SH", "OPTIONS")
	m.entry("-h, --help", "Explain the program, or behind a command that command.")
	m.entry("-v, --version", "Print the version.")
	m.macro(".SH", "KEYS")
	m.paragraphs("On the screen; ^s is ctrl and s together.")
	for _, b := range screen.Keys {
		text := typeset.Capitalised(b.Does)
		if b.Where != "" {
			text += " (" + b.Where + ")"
		}
		m.entry(b.Show, text+".")
	}
	m.macro(".SH", "EXIT STATUS")
	m.entry("0", "All well.")
	m.entry("1", "A required answer is missing or a finding says stop, or something was left unsaved.")
	m.entry("2", "A file could not be read, or the call is wrong.")
	m.entry("3", "A fault of the program, which is reported.")
	m.entry("128 and more", "A signal ended it: 128 and its number.")
	m.macro(".SH", "CAUTIONS")
	m.paragraphs(strings.Join(wording.Cautions, "\n\n"))
	return m.String()
}
