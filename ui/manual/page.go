// Package manual is the page of the manual, and what --help prints of it. What can be
// made from a table of the program is: keys, file, lengths, JSON, findings, exit status.
package manual

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"capscye/ui/console"
	"capscye/ui/typeset"
)

// Page is the page for a table of commands, in roff.
func Page(root *cobra.Command, version string) string {
	var m roff
	fmt.Fprintf(&m, ".TH CAPSCYE 1 \"\" \"capscye %s\" \"User commands\"\n", escaped(version))
	m.section(section{"NAME", []part{{paragraph, "", "capscye - " + typeset.Uncapitalised(root.Short)}}})
	m.macro(".SH", "SYNOPSIS")
	m.macro(".B", root.Use)
	for _, c := range root.Commands() {
		if !c.Hidden {
			m.macro(".br", "")
			m.macro(".B", "capscye "+c.Use)
		}
	}
	described := section{name: "DESCRIPTION"}
	described.say(root.Long)
	described.say(screenProse)
	m.section(described)
	m.section(commands(root))
	m.section(section{"OPTIONS", []part{
		{entry, "-h, --help", "Explain the program; behind a command, that command."}, {entry, "-v, --version", "Print the version."}}})
	for _, s := range []section{keys(), whatIf(), told("AT THE TABLE", tableProse), told("SAVING", fmt.Sprintf(savingProse, console.ExitFault)),
		told("METHOD", methodProse), ease(), file(), lengths(), json(), findings(), doubts(), statuses(), environment(), cautions()} {
		m.section(s)
	}
	return m.String()
}

// commands tells every command, with its options.
func commands(root *cobra.Command) section {
	s := section{name: "COMMANDS"}
	for _, c := range root.Commands() {
		if c.Hidden {
			continue
		}
		s.below("capscye " + c.Use)
		s.say(c.Long)
		if flags := c.LocalNonPersistentFlags(); flags.HasFlags() && flags.Lookup("help") == nil { // which the one that runs has
			fitFlags(flags)
			s.lines(flags.FlagUsages())
		}
	}
	return s
}

// Fit breaks what help says of a command to the width of print. Behind a command only: in
// the table a shell would show the first line of a flag alone.
func Fit(c *cobra.Command) {
	paragraphs := strings.Split(c.Long, "\n\n")
	for i, p := range paragraphs {
		paragraphs[i] = strings.Join(typeset.Wrap(strings.Join(strings.Fields(p), " "), typeset.PrintWidth), "\n")
	}
	c.Long = strings.Join(paragraphs, "\n\n")
	fitFlags(c.LocalFlags())
}

// fitFlags breaks the texts of flags, which stand in a column behind their names.
func fitFlags(flags *pflag.FlagSet) {
	lines := strings.Split(flags.FlagUsages(), "\n")
	flags.VisitAll(func(f *pflag.Flag) {
		for _, l := range lines {
			if lead, usual, ok := strings.Cut(l, f.Usage); ok && strings.Contains(lead, "--"+f.Name) && typeset.Width(l) > typeset.PrintWidth {
				room := typeset.PrintWidth - typeset.Width(lead)
				texts := typeset.Wrap(f.Usage, room)
				if typeset.Width(texts[len(texts)-1]+usual) > room {
					texts = typeset.Wrap(f.Usage, room-typeset.Width(usual))
				}
				f.Usage = strings.Join(texts, "\n")
			}
		}
	})
}

// Help is what --help of a command prints behind its usage.
func Help(c *cobra.Command) string {
	var out strings.Builder
	for _, p := range printed {
		if p.command == c.Name() {
			s := section{name: "Keys of the JSON"}
			s.say(jsonProse)
			s.say(p.shape)
			for _, k := range p.keys() {
				s.entry(k.Path, k.Says)
			}
			out.WriteString(s.plain())
		}
	}
	if c.Name() == "ask" {
		s := lengths()
		s.name = "Lengths"
		out.WriteString(s.plain())
	}
	s := statuses()
	s.name = "Exit status"
	out.WriteString(s.plain())
	if !c.HasParent() {
		out.WriteString("\nKeys of the screen, the file, lengths, JSON and findings: capscye man.\n")
	}
	return out.String()
}
