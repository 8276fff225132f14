package main

import (
	"bytes"
	"fmt"
	"html"
	"strings"

	"example.org/barrow/mix"
	"example.org/barrow/mix/yard"
	"example.org/barrow/units"
)

// The measures of the plot, in its own units.
const (
	plotWide, plotHigh = 640, 300 // one panel
	plotLeft           = 70
	plotRight          = 20
	plotTop            = 46
	plotBottom         = 44
)

// plot draws, as SVG, cost against volume in bags and in bulk, with a panel for
// each material that is offered in both. It only places what the plan says.
func plot(p *mix.Plan) []byte {
	list := p.Crossings()
	var b bytes.Buffer
	high := max(len(list), 1) * plotHigh
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" role="img"`+
		` font-family="sans-serif" font-size="13">`+"\n", plotWide, high)
	fmt.Fprintf(&b, "<title>Cost against volume, in bags and in bulk</title>\n"+
		`<rect width="%d" height="%d" fill="#fff"/>`+"\n", plotWide, high)
	if len(list) == 0 {
		fmt.Fprintf(&b, `<text x="20" y="40">No material is offered both in bags and in bulk, with prices.</text>`+"\n")
	}
	for i := range list {
		fmt.Fprintf(&b, `<g transform="translate(0 %d)">`+"\n", i*plotHigh)
		panel(&b, p, &list[i])
		b.WriteString("</g>\n")
	}
	b.WriteString("</svg>\n")
	return b.Bytes()
}

// scale maps volumes and costs to a panel.
type scale struct {
	top  units.Volume
	cost units.Money
}

func (s scale) x(v units.Volume) float64 {
	return plotLeft + float64(v)/float64(s.top)*(plotWide-plotLeft-plotRight)
}

func (s scale) y(m units.Money) float64 {
	return plotHigh - plotBottom - float64(m)/float64(max(s.cost, 1))*(plotHigh-plotTop-plotBottom)
}

// panel draws the axes, the two lines and the marks for one material.
func panel(b *bytes.Buffer, p *mix.Plan, k *yard.Crossing) {
	var s scale
	for _, at := range k.Points {
		s.top, s.cost = max(s.top, at.Volume), max(s.cost, at.Bags, at.Bulk)
	}
	sentence := k.Sentence(p.Printer())
	fmt.Fprintf(b, "<desc>%s</desc>\n", html.EscapeString(sentence))
	fmt.Fprintf(b, `<text x="%d" y="22" font-weight="bold">%s</text>`+"\n", 12, html.EscapeString(k.Material.Name))
	fmt.Fprintf(b, `<path d="M%d %dV%dH%d" fill="none" stroke="#333"/>`+"\n",
		plotLeft, plotTop, plotHigh-plotBottom, plotWide-plotRight)
	tick := func(x, y int, text string) {
		fmt.Fprintf(b, `<text x="%d" y="%d" text-anchor="end">%s</text>`+"\n", x, y, html.EscapeString(text))
	}
	tick(plotLeft-6, plotTop+6, p.Currency+s.cost.String())
	tick(plotLeft-6, plotHigh-plotBottom, "0")
	tick(plotWide-plotRight, plotHigh-plotBottom+18, p.Measure.Volume(s.top))
	stairs(b, s, k.Points, "#8a3b12", 1.5, func(at yard.CrossingPoint) units.Money { return at.Bags })
	stairs(b, s, k.Points, "#1f5a7a", 4, func(at yard.CrossingPoint) units.Money { return at.Bulk })
	upright(b, s.x(k.Need), plotTop-4, "need")
	for _, st := range k.Stretches {
		if st.Cheaper == yard.CheaperBulk {
			fmt.Fprintf(b, `<path d="M%.1f %dH%.1f" stroke="#1f5a7a" stroke-width="8"/>`, s.x(st.Over), plotHigh-plotBottom, s.x(st.UpTo))
		}
	}
	fmt.Fprintf(b, `<text x="%d" y="%d">bulk costs less where this line is thick</text>`+"\n", plotLeft, plotHigh-plotBottom+36)
	fmt.Fprintf(b, `<text x="%d" y="%d" fill="#8a3b12">bags, thin</text>`, plotLeft+10, plotTop+14)
	fmt.Fprintf(b, `<text x="%d" y="%d" fill="#1f5a7a">bulk, thick</text>`+"\n", plotLeft+10, plotTop+32)
}

// stairs draws costs as steps, and leaves out volumes that the stock does not
// cover.
func stairs(b *bytes.Buffer, s scale, points []yard.CrossingPoint, colour string, thick float64,
	cost func(yard.CrossingPoint) units.Money) {
	var d strings.Builder
	from, last := units.Volume(0), units.Money(-1)
	for _, at := range points {
		m := cost(at)
		switch {
		case m >= 0 && m == last:
			fmt.Fprintf(&d, "H%.1f", s.x(at.Volume))
		case m >= 0:
			fmt.Fprintf(&d, "M%.1f %.1fH%.1f", s.x(from), s.y(m), s.x(at.Volume))
		}
		from, last = at.Volume, m
	}
	fmt.Fprintf(b, `<path d="%s" fill="none" stroke="%s" stroke-width="%.1f"/>`+"\n", d.String(), colour, thick)
}

// upright marks a volume, with its label at height y.
func upright(b *bytes.Buffer, x float64, y int, label string) {
	fmt.Fprintf(b, `<path d="M%.1f %dV%d" stroke="#555" stroke-dasharray="2 3"/>`, x, plotTop, plotHigh-plotBottom)
	fmt.Fprintf(b, `<text x="%.1f" y="%d" text-anchor="middle" fill="#333">%s</text>`+"\n", x, y, label)
}
