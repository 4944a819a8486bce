// Package roster lists the worksheets of a folder, with what each needs and what was
// found. To sort them, it reads them twice and keeps only what they are sorted by.
package roster

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"runtime"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"capscye/calc"
	"capscye/ui/console"
	"capscye/ui/report"
	"capscye/ui/show"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// The sheets of a folder, printed: a teacher's view of a class. Each is read,
// computed, put into words and let go, so memory stays flat. To sort them, they
// are read once for what is compared, and once more in that order.

type options struct {
	json, csv, sentences bool
	sort, level          string
}

// order is a way to sort: what is compared, a number first and then a text.
type order struct {
	name string
	by   func(Row) (int64, string)
}

var orders = []order{
	{"file", nil}, // as they are found
	{"wearer", func(r Row) (int64, string) { return 0, strings.ToLower(r.wearer) }},
	{"title", func(r Row) (int64, string) { return 0, strings.ToLower(r.title) }},
	{"finding", func(r Row) (int64, string) { return -r.gravity(), "" }},
	{"state", func(r Row) (int64, string) { return r.wanting(), "" }},
	{"saved", func(r Row) (int64, string) { return -r.written.UnixNano(), "" }},
}

// gravity puts a file that cannot be read before all findings, and a sheet
// without any behind them.
func (r Row) gravity() int64 {
	switch {
	case r.Failure != "":
		return int64(calc.Stop) + 1
	case !r.found:
		return -1
	}
	return int64(r.finding.Level)
}

// wanting is how soon a sheet wants to be looked at.
func (r Row) wanting() int64 {
	for i, t := range tallied {
		if t.state == r.verdict.State {
			return int64(i)
		}
	}
	return int64(len(tallied))
}

func orderNamed(name string) (order, error) {
	var names []string
	for _, o := range orders {
		if o.name == name {
			return o, nil
		}
		names = append(names, o.name)
	}
	return order{}, fmt.Errorf("--sort takes %s, not %q", typeset.OrList(names), name)
}

// least is the gravity from which sheets are shown.
func (o options) least() (int64, error) {
	if o.level == "" {
		return -1, nil
	}
	for _, l := range []calc.Level{calc.Note, calc.Warn, calc.Stop} {
		if l.String() == o.level {
			return int64(l), nil
		}
	}
	return 0, fmt.Errorf("--level takes note, warn or stop, not %q", o.level)
}

// Command is the command line of it.
func Command(s *console.Session) *cobra.Command {
	var o options
	c := &cobra.Command{
		Use:   "roster [DIR]",
		Short: "Print every worksheet of a folder in a table",
		Long: `Print the worksheets of DIR, or of this folder, in a table: how far each is, what it
needs, what to mark, what was found, when it was saved. A file that cannot be read is
listed with its reason, whatever the level. Where --sort finds two alike, they go by file.

The state is: not begun; unreadable, and where; answers missing, and which; stop; check;
ready; tracing, so many steps of so many; done; or fits as it is, with nothing to alter.
Findings are in a few words, the most urgent first; those that most of the folder share
come last. (Of more than 256 worksheets a sample tells.)

The CSV names the unit in every cell with a length, and has millimetres beside it. A text
that begins with =, +, -, @ or a tab has an apostrophe before it, so that no spreadsheet
takes it for a formula.

The exit status counts every worksheet of the folder, shown or not; one that cannot be
read makes it 1. It is 2 where the folder cannot be read.`,
		Args: atMostOneFolder,
		RunE: func(_ *cobra.Command, args []string) error { return print(s, append(args, ".")[0], o) },
	}
	console.Sentences(c, &o.sentences)
	c.Flags().BoolVar(&o.json, "json", false, "print JSON: an array, an object for each worksheet")
	c.Flags().BoolVar(&o.csv, "csv", false, "print comma-separated values, lengths exact and with their unit")
	c.Flags().StringVar(&o.sort, "sort", "file", "file, wearer, title, saved, finding or state, the latest or most urgent first")
	c.Flags().StringVar(&o.level, "level", "", "only those with a finding of at least this level: note, warn or stop")
	c.ValidArgsFunction = func(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
		return nil, cobra.ShellCompDirectiveFilterDirs
	}
	var names []cobra.Completion
	for _, by := range orders {
		names = append(names, by.name)
	}
	_ = c.RegisterFlagCompletionFunc("sort", cobra.FixedCompletions(names, cobra.ShellCompDirectiveNoFileComp))
	_ = c.RegisterFlagCompletionFunc("level", cobra.FixedCompletions([]cobra.Completion{"note", "warn", "stop"}, cobra.ShellCompDirectiveNoFileComp))
	return c
}

func atMostOneFolder(_ *cobra.Command, args []string) error {
	if len(args) > 1 {
		return errors.New("list one folder at a time, such as roster class")
	}
	return nil
}

// print prints the sheets of a folder.
func print(s *console.Session, folder string, o options) error {
	order, err := orderNamed(o.sort)
	if err != nil {
		return err
	}
	least, err := o.least()
	if err != nil {
		return err
	}
	if o.json && o.csv {
		return console.NotBoth("json", "csv")
	}
	paths, err := worksheets.Files(folder)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: there is no such folder", folder)
	case err != nil:
		return errors.New(console.FileWords(err))
	}
	if order.by != nil {
		paths = sorted(s, paths, order)
	}
	face := o.face(folder, func() survey { return surveyOf(s, paths, least) })
	if err := s.Write(face.head()); err != nil {
		return err
	}
	by := report.Reckoner{Today: s.Today, Brief: !o.json}
	err = console.InOrder(paths, runtime.GOMAXPROCS(0), func(path string) entry { return entryOf(path, by, least, face) },
		func(_ int, e entry) error {
			s.Worse(e.status)
			if e.text == nil || e.err != nil {
				return e.err
			}
			return s.Write(face.next(e))
		})
	if err != nil {
		return err
	}
	return s.Write(face.tail())
}

// entry is one sheet ready to be written; without text it is not shown.
type entry struct {
	text   []byte
	state  report.State
	status int
	err    error
}

// entryOf reads a file, and puts it into words where it is to be shown. The
// status counts all the same.
func entryOf(path string, by report.Reckoner, least int64, face face) (e entry) {
	row, r, ok := RowOf(path, by)
	if !ok {
		return entry{}
	}
	e.state = row.verdict.State
	if row.Failure != "" || !r.Whole() {
		e.status = console.ExitUnfinished
	}
	if row.gravity() >= least {
		e.text, e.err = face.entry(row, r)
	}
	return e
}

// sorted reads every sheet for what it is sorted by, and keeps no more of it.
func sorted(s *console.Session, paths []string, by order) []string {
	type sortable struct {
		path, text string
		number     int64
	}
	var list []sortable
	// Nothing here can fail: what cannot be read has its place too.
	_ = console.InOrder(paths, runtime.GOMAXPROCS(0), func(path string) sortable {
		row, _, ok := RowOf(path, report.Reckoner{Today: s.Today, Brief: true})
		if !ok {
			return sortable{}
		}
		number, text := by.by(row)
		return sortable{path, text, number}
	}, func(_ int, one sortable) error {
		if one.path != "" {
			list = append(list, one)
		}
		return nil
	})
	slices.SortStableFunc(list, func(a, b sortable) int {
		return cmp.Or(cmp.Compare(a.number, b.number), strings.Compare(a.text, b.text))
	})
	paths = make([]string, len(list))
	for i, one := range list {
		paths[i] = one.path
	}
	return paths
}

// jsonRow is a sheet of a folder, with the shapes of show.
type jsonRow struct {
	File     string         `json:"file"`
	Title    string         `json:"title"`
	Wearer   string         `json:"wearer"`
	State    string         `json:"state"`
	Saved    string         `json:"saved"`
	Need     show.Need      `json:"need"`
	Sides    show.Sides     `json:"sides"`
	Findings []show.Finding `json:"findings"`
}

// jsonFailure stands for a file that cannot be read.
type jsonFailure struct {
	File  string `json:"file"`
	State string `json:"state"`
	Error string `json:"error"`
}

// JSONKeys are the keys of a sheet of a folder.
func JSONKeys() []show.JSONKey {
	return show.JSONKeys(jsonRow{}, map[string]string{
		"file":     "The file.",
		"title":    "The title.",
		"wearer":   "The wearer.",
		"state":    "How far it is: not begun; N answers missing, and which; unreadable, and where; stop; check; ready; tracing k of n; done; fits as it is.",
		"saved":    "When the file was written, in RFC 3339 and UTC.",
		"need":     "As in show --json.",
		"sides":    "As in show --json.",
		"findings": "As in show --json.",
	}, show.Need{}, show.Sides{}, show.Finding{})
}

func jsonOf(row Row, r report.Report) any {
	if row.Failure != "" {
		return jsonFailure{row.Path, row.state(), row.Failure}
	}
	all := show.SheetOf(r, false)
	return jsonRow{row.Path, row.title, row.wearer, row.state(), row.written.UTC().Format(time.RFC3339), all.Need, all.Sides, all.Findings}
}
