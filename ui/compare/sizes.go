package compare

import (
	"fmt"

	"capscye/calc"
	"capscye/ui/report"
	"capscye/ui/typeset"
	"capscye/worksheets"
)

// sizeOffers are the measured sizes of the pattern in which a trouble is gone, in the
// order of the file. A bodice that is cut is of no other size.
func sizeOffers(r report.Report, f calc.Finding) (list []Offer) {
	if r.Input.Method.Armhole == calc.KeepArmhole {
		return nil
	}
	now := r.Sheet.Text(worksheets.PatternSize)
	for i, z := range r.Sheet.Sizes[:min(len(r.Sheet.Sizes), worksheets.MostSizes)] {
		if z.Name() == "" || !removes(r.With(r.Sheet.SizeAlone(i)).Plan, f) {
			continue
		}
		o := Offer{Change: "size " + typeset.Plain(z.Name()) + " of the pattern", Sheet: r.Sheet.TakeInHand(i), Try: tryText(worksheets.PatternSize, z.Name())}
		o.Asked = "take " + o.Change
		if now != "" {
			o.Change += fmt.Sprintf(" instead of %s", typeset.Plain(now))
			o.Asked += fmt.Sprintf(", instead of %s", typeset.Plain(now))
		}
		after := r.With(o.Sheet)
		o.Price, o.Said = Price(r, after), PriceSaid(r, after)
		list = append(list, o)
	}
	return list
}

// removes tells that a plan can be carried out, and has a finding no more.
func removes(p calc.Plan, f calc.Finding) bool {
	if p.Open || !p.Whole() {
		return false
	}
	for _, of := range p.Findings {
		if of.Code == f.Code && of.About == f.About {
			return false
		}
	}
	return true
}
