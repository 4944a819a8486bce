package screen

import (
	"fmt"
	"slices"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"capscye/ui/console"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// What is not in a sheet's file is kept elsewhere against a crash, and offered at
// the next start.

// unsaved is what is in no file: the sheet, where it was changed since, and the
// copies beside it.
func (d *desk) unsaved() []worksheets.Sheet {
	if d.doc.Changed() && !d.doc.Saved() && d.doc.ReadOnly == "" {
		return append([]worksheets.Sheet{d.doc.Sheet}, d.copies...)
	}
	return d.copies
}

// unkept is what would be lost now: what is unsaved, but for a sheet that is being
// saved.
func (d *desk) unkept(saving bool) []worksheets.Sheet {
	if saving && !d.conflict && !d.failed {
		return d.copies
	}
	return d.unsaved()
}

// keepUp brings what is kept up to date, one writing at a time.
func (m *root) keepUp() tea.Cmd {
	d := m.desk
	if d == nil || d.recovery == nil || d.keeping {
		return nil
	}
	list := d.unkept(m.saving)
	if slices.EqualFunc(list, d.kept, worksheets.Sheet.Equal) {
		return nil
	}
	d.kept, d.keeping = list, true
	return keepLeftover(d, list)
}

// keptUp takes the outcome, and says once that nothing can be kept.
func (m *root) keptUp(msg keptMsg) {
	msg.desk.keeping = false
	if msg.err == nil {
		msg.desk.unsafe = false
		return
	}
	msg.desk.kept = nil // tried again with the next message
	if !msg.desk.unsafe {
		msg.desk.unsafe = true
		m.complain("What is not saved cannot be kept against a crash either: " + typeset.Plain(console.FileWords(msg.err)) + ".")
	}
}

// layLeftover lays what earlier runs did not save beside the sheet, to be looked at.
// What the file says already is no news.
func (d *desk) layLeftover(l worksheets.Leftover) {
	if len(l.Unreadable) > 0 {
		d.message = "What an earlier run did not save cannot be read: it is in " + typeset.Plain(strings.Join(l.Unreadable, ", ")) + "."
	}
	if len(l.Versions) == 0 {
		return
	}
	d.kept = l.Versions
	news := slices.DeleteFunc(slices.Clone(l.Versions), d.doc.Sheet.Equal)
	if len(news) == 0 {
		return
	}
	d.copies = append(news, d.copies...)
	d.reckon()
	d.message = fmt.Sprintf("Beside it lies what was not saved on %s: ^x shows all of it.", console.DayAndTime(l.At))
}

// leave is the end of the work on a sheet: what is not saved is kept where the
// program was stopped, and dropped where the person agreed to that.
func (m *root) leave(stopped bool) error {
	d := m.desk
	if d == nil || d.recovery == nil {
		return nil
	}
	defer d.recovery.Close()
	if list := d.unsaved(); stopped && len(list) > 0 {
		return d.recovery.Keep(worksheets.Leftover{At: time.Now(), Versions: list})
	}
	return d.recovery.Drop()
}
