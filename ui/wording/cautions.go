package wording

import "capscye/ui/typeset"

// Cautions are said wherever somebody goes from the answer to the cloth.
var Cautions = []string{
	"Cut a test garment first: no figure replaces a fitting.",
	"Mind pins, blades and hot irons.",
	"A child's nightwear can be lawful only because it fits tightly; ask your local rules before widening it.",
}

// PrintCautions prints the cautions, set off.
func PrintCautions(p *typeset.Printout) {
	p.Line("")
	for _, c := range Cautions {
		p.Hanging("", c)
	}
}
