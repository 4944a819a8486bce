package show

import (
	"fmt"
	"strings"

	"capscye/ui/compare"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/ui/wording"
	"capscye/worksheets"
)

// Text is the computed sheet as plain text of 80 columns, for a terminal,
// a pipe or a printer. With working, every line of arithmetic follows.
func Text(r report.Report, working bool) string {
	var out typeset.Printout
	out.Hanging("", r.Verdict().Line())
	out.Hanging("", r.Name())
	out.Hanging("", strings.TrimSpace(r.ScaleWords()+" "+r.SizeWords()))
	if notes := typeset.Plain(r.Sheet.Text(worksheets.Notes)); notes != "" {
		out.Hanging("", notes)
	}
	out.Line("")
	for _, p := range r.Pieces() {
		out.Line("%s", p.NeedWords(r.Scale))
		for _, words := range p.SidesWords(r.Scale) {
			out.Hanging("  ", words)
		}
		if words := p.FinishedWords(r.Scale); words != "" {
			out.Hanging("  ", "finished: "+words)
		}
	}
	if r.Plan.TooFar() {
		out.Hanging("", r.NothingToTrace())
	}
	for _, table := range report.Tables(r) {
		out.Line("")
		for _, row := range table {
			out.Line("%s", strings.TrimRight(row, " "))
		}
	}
	if len(r.Findings) > 0 {
		out.Line("")
		out.Line("Notes and checks")
		for _, f := range r.Findings {
			out.Hanging(fmt.Sprintf("  %-5s ", f.Asks()), f.Line())
		}
	}
	troubles := compare.Troubles(r)
	if lines, _ := compare.Lines(troubles, typeset.PrintWidth-2, true); len(lines) > 0 {
		words, kind := compare.Heading(troubles)
		out.Line("")
		out.Line("%s: %s", words, kind)
		for _, l := range lines {
			out.Line("%s", strings.TrimRight("  "+l, " "))
		}
	}
	if lines := report.FittingLines(r); len(lines) > 0 {
		out.Line("")
		out.Line("Fittings")
		for _, l := range lines {
			out.Hanging("  ", l)
		}
	}
	if working {
		out.Line("")
		out.Line("Working")
		for _, l := range r.Worked() {
			for _, text := range l.Rows(typeset.PrintWidth) {
				out.Line("%s", text)
			}
		}
	}
	wording.PrintCautions(&out)
	return out.Text()
}
