package mix

import (
	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Material is what goes in a pot or on a bed: bark fines, peat, mulch. A job
// may define its own over the catalogue's. Zero fields are unknown.
type Material struct {
	ID, Name string
	Grade    string        // what to ask for at the yard
	Dry, Wet units.Density // loose it lies between the two
	// PackedLow and PackedHigh are what a sealed pack weighs by its own volume,
	// where that is known to be less than Dry to Wet: it is sold dry, or
	// compressed. Zero when it is not known.
	PackedLow, PackedHigh units.Density

	// Settle is the share of the loose volume lost in place, nil for the
	// catalogue's common allowance. SettleLow and SettleHigh bound it.
	Settle                *units.Ratio
	SettleLow, SettleHigh units.Ratio

	Packs []Size // loose bags commonly sold
	Bulk  bool   // sold loose by the yard
	Bales []Size // commonly sold compressed; they open by OpensLow to OpensHigh
	// OpensLow and OpensHigh are how many times its compressed volume a bale
	// opens to; zero when it is not sold compressed.
	OpensLow, OpensHigh units.Ratio

	Traits     []string // see [traits]
	Source     Source
	Confidence string // "high", "medium", "low"

	SettleSource, OpensSource, PackedSource Source
}

// traits are what cautions ask of a material.
var traits = []string{"dust", "legionella", "mulch", "salt", "sand", "soil", "woody"}

// has reports whether m has a trait.
func (m *Material) has(trait string) bool {
	for _, t := range m.Traits {
		if t == trait {
			return true
		}
	}
	return false
}

// Size is a volume with the words it was given in: "1 1/2 cu ft". The zero
// value is no size.
type Size struct {
	Text   string // "" for the volume's own
	Volume units.Volume
}

// String gives the words.
func (s Size) String() string {
	if s.Text == "" {
		return units.US.Volume(s.Volume)
	}
	return s.Text
}

func readSize(c *checker, n *json.Node, into *Size) {
	into.Volume = readVolume(c, n)
	into.Text = oneLine(n.Text)
	if into.Volume > 0 && into.Volume <= Slack {
		c.problem("quantity.small", "a pack holds more than 1 mL")
	}
}

var materialFields = []field[*Material]{
	{"id", "a short name", "what mixes, tasks and offers call it", func(c *checker, n *json.Node, m *Material) { m.ID = readID(c, n) }},
	{"name", "a name", "what lists show", func(c *checker, n *json.Node, m *Material) { m.Name = readName(c, n) }},
	{"grade", "text", "what to ask for at the yard", func(c *checker, n *json.Node, m *Material) { m.Grade = readName(c, n) }},
	{"dry", "weight per volume", `the lightest it comes, "303 lb/cu yd"`, func(c *checker, n *json.Node, m *Material) { m.Dry = readDensity(c, n) }},
	{"wet", "weight per volume", "the heaviest it comes, drained", func(c *checker, n *json.Node, m *Material) { m.Wet = readDensity(c, n) }},
	{"settle", "share", "the loose volume lost in a pot after watering", func(c *checker, n *json.Node, m *Material) { m.Settle = readLoss(c, n) }},
	{"packs", "list of volumes", "bags commonly sold", func(c *checker, n *json.Node, m *Material) { m.Packs = readList(c, n, "packs", readSize) }},
	{"bulk", "true or false", "whether it is sold loose by the yard", func(c *checker, n *json.Node, m *Material) { m.Bulk = readBool(c, n) }},
	{"bales", "list of volumes", "compressed bales commonly sold", func(c *checker, n *json.Node, m *Material) { m.Bales = readList(c, n, "bales", readSize) }},
	{"opens_low", "number", "a bale opens to at least this many times its volume", func(c *checker, n *json.Node, m *Material) { m.OpensLow = readFactor(c, n) }},
	{"opens_high", "number", "and to at most this many", func(c *checker, n *json.Node, m *Material) { m.OpensHigh = readFactor(c, n) }},
	{"traits", "list of words", or(traits).String(), func(c *checker, n *json.Node, m *Material) {
		m.Traits = readList(c, n, "traits", func(c *checker, n *json.Node, into *string) { *into = oneOf(c, n, traits...) })
	}},
	{"source", "text", "where the figures come from", func(c *checker, n *json.Node, m *Material) { m.Source = jobSource(readName(c, n)) }},
}

// readLoss reads a share that is lost: less than the whole.
func readLoss(c *checker, n *json.Node) *units.Ratio {
	r := readShare(c, n, most)
	return &r
}

// most bounds a loss: a loss of everything needs without end.
var most = units.Percent(95)

func readBool(c *checker, n *json.Node) bool {
	if n.Kind != json.Bool {
		c.problem("json.kind", "write true or false, without quotes")
	}
	return n.Bool
}

// readFactor reads a plain number from 1 to 10, as text or bare.
func readFactor(c *checker, n *json.Node) units.Ratio {
	num, den := readNumber(c, n)
	if r, err := units.NewRatio(num, den); err == nil && num >= den && num <= 10*den {
		return r
	}
	c.problem("number.range", "write a number from 1 to 10, such as 1.5")
	return units.Ratio{}
}

// readNumber reads a plain number, as text or bare, as a fraction.
func readNumber(c *checker, n *json.Node) (num, den int64) {
	if n.Kind != json.String && n.Kind != json.Number {
		c.problem("json.kind", message.Of("write a number, not {=0}", n.Kind.String()))
		return 0, 1
	}
	num, den, err := units.ParseNumber(n.Text)
	if err != nil {
		c.unitsError(err)
	}
	return num, den
}

// checkSizes holds packs to a size that can be counted.
func checkSizes(c *checker, field string, sizes []Size) {
	c.path.push(field)
	for i, s := range sizes {
		c.path.pushIndex(i)
		if c.sound() && (s.Volume <= Slack || s.Volume > units.MaxVolume) {
			c.problem("quantity.small", "a pack holds more than 1 mL")
		}
		c.path.pop()
	}
	c.path.pop()
}

// check holds a job's own material to what the rest relies on.
func (m *Material) check(c *checker) {
	if m.ID == "" {
		c.problemAt("id", "field.missing", `name it, such as "id": "my-bark"`)
	}
	if m.Wet > 0 && m.Dry > m.Wet {
		c.problemAt("wet", "density.order", "wet is at least as heavy as dry")
	}
	if m.Dry > 0 && m.Wet == 0 {
		c.problemAt("wet", "field.missing", "give wet beside dry: the weight to haul lies between")
	}
	if m.Wet > 0 && m.Dry == 0 {
		c.problemAt("dry", "field.missing", "give dry beside wet: the weight to haul lies between")
	}
	checkSizes(c, "packs", m.Packs)
	checkSizes(c, "bales", m.Bales)
	for i, s := range m.Bales {
		if _, ok := s.Volume.MulDiv(m.OpensHigh.Num(), m.OpensHigh.Den()); !ok {
			c.path.push("bales")
			c.path.pushIndex(i)
			c.problem("volume.large", "it opens to more than can be worked out")
			c.path.pop()
			c.path.pop()
		}
	}
	if m.OpensHigh.Less(m.OpensLow) {
		c.problemAt("opens_high", "number.range", "at least opens_low")
	}
	if len(m.Bales) > 0 && m.OpensLow == (units.Ratio{}) {
		c.problemAt("opens_low", "field.missing", "say how far a bale opens: opens_low and opens_high, such as 1.5 and 2")
	}
	if m.Name == "" {
		m.Name = m.ID
	}
	if m.Source == (Source{}) {
		m.Source = fromJob
	}
	if m.OpensSource == (Source{}) {
		m.OpensSource = m.Source
	}
	if m.SettleSource == (Source{}) {
		m.SettleSource = m.Source
	}
}
