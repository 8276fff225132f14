package mix

import (
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Mix is materials, or other mixes, in parts by volume.
type Mix struct {
	ID, Name string
	Parts    []Part
	// BlendLoss is the share of the parts' summed volume lost because fine
	// fills between coarse; nil for the catalogue's common allowance.
	BlendLoss *units.Ratio
	// Settle is the share of the loose mix lost in a pot after watering; nil
	// for the catalogue's common allowance.
	Settle     *units.Ratio
	Source     Source
	Confidence string

	numbers string // 3:1:1, of a mix that a task spells out
}

// Part is one ingredient of a mix: Num/Den parts of a material or a mix.
type Part struct {
	Of       string
	Num, Den int64
}

// String writes the part as [ParseMix] reads it: "bark-fines 3", "sand 1/2".
func (p Part) String() string {
	if p.Den == 1 {
		return p.Of + " " + itoa(p.Num)
	}
	return p.Of + " " + itoa(p.Num) + "/" + itoa(p.Den)
}

// Bounds on mixes, which keep every split inside 64 bits and a hostile job
// from growing.
const (
	maxParts  = 50         // of one mix
	maxLeaves = 200        // parts of a mix when its mixes are opened up
	maxSteps  = 200_000    // parts of all tasks together
	maxWhole  = 10_000_000 // parts of one mix in all, in their smallest common part
)

var mixFields = []field[*Mix]{
	{"id", "a short name", "what tasks call it", func(c *checker, n *json.Node, m *Mix) { m.ID = readID(c, n) }},
	{"name", "a name", "what lists show", func(c *checker, n *json.Node, m *Mix) { m.Name = readName(c, n) }},
	{"parts", "object", `materials (or mixes) and how many parts by volume: {"bark-fines": 3, "peat": 1}`, func(c *checker, n *json.Node, m *Mix) { m.Parts = readParts(c, n) }},
	{"blend_loss", "share", "volume lost when the parts are mixed", func(c *checker, n *json.Node, m *Mix) { m.BlendLoss = readLoss(c, n) }},
	{"settle", "share", "loose volume lost in a pot after watering", func(c *checker, n *json.Node, m *Mix) { m.Settle = readLoss(c, n) }},
	{"source", "text", "where the recipe comes from", func(c *checker, n *json.Node, m *Mix) { m.Source = jobSource(readName(c, n)) }},
}

func readParts(c *checker, n *json.Node) []Part {
	if n.Kind != json.Object {
		c.problem("json.kind", message.Of(`parts are an object such as {"bark-fines": 3, "peat": 1}, not {=0}`, n.Kind.String()))
		return nil
	}
	parts := make([]Part, len(n.Keys))
	for i, key := range n.Keys {
		c.path.push(key)
		num, den := readNumber(c, &n.Items[i])
		if num == 0 && c.sound() {
			c.problem("quantity.zero", "more than zero parts; leave out what is not in the mix")
		}
		parts[i] = Part{key, num, den}
		c.path.pop()
	}
	return parts
}

// byNumbers is what a mix without a name is called.
const byNumbers message.Text = "{0} mix"

// ParseMix reads a mix in one line, "bark-fines 3, peat 1, perlite 1": each part
// a name and a number, either way round. The mix is called by its numbers. The
// error is a [*units.Error]; whether the parts exist is for the job to say.
func ParseMix(s string) (Mix, error) {
	m := Mix{ID: oneLine(s), Source: fromJob}
	bad := func(hint message.Text) (Mix, error) {
		return Mix{}, &units.Error{Code: "mix.form", Value: clip(s), Hint: hint}
	}
	var numbers []string
	seen := map[string]bool{}
	for text := range strings.SplitSeq(s, ",") {
		var name, number []string
		for word := range strings.FieldsSeq(text) {
			if figure, _ := units.Looks(word); figure && word[0] != '-' {
				number = append(number, word)
			} else {
				name = append(name, word)
			}
		}
		id := strings.Join(name, "-")
		num, den, err := units.ParseNumber(strings.Join(number, " "))
		switch {
		case id == "" || len(number) == 0:
			return bad(`write each part as a name and a number, such as "bark-fines 3, peat 1"`)
		case err != nil:
			return bad(message.Of("the parts of {0}: {=1}", id, string(err.(*units.Error).Hint)))
		case num == 0:
			return bad(message.Of("more than zero parts of {0}", id))
		case seen[id]:
			return bad(message.Of("{0} stands twice: give each part once", id))
		}
		seen[id] = true
		m.Parts = append(m.Parts, Part{id, num, den})
		numbers = append(numbers, strings.Join(number, " "))
	}
	m.numbers = strings.Join(numbers, ":")
	m.Name = message.Of(byNumbers, m.numbers).String()
	return m, nil
}

// check holds a mix to what the rest relies on; what its parts name is looked
// up once every mix is known.
func (m *Mix) check(c *checker) {
	if m.ID == "" {
		c.problemAt("id", "field.missing", `name it, such as "id": "potting"`)
	}
	if len(m.Parts) == 0 {
		c.problemAt("parts", "mix.empty", `a mix has parts, such as {"bark-fines": 3, "peat": 1}`)
	}
	c.path.push("parts")
	for _, p := range m.Parts { // a document's parts are checked as they are read
		if p.Num < 1 || p.Den < 1 {
			c.problemAt(p.Of, "quantity.zero", "more than zero parts")
		}
		if p.Num > maxWhole || p.Den > maxWhole {
			c.problemAt(p.Of, "quantity.large", "write the parts as smaller numbers")
		}
	}
	c.path.pop()
	if len(m.Parts) > maxParts {
		c.problemAt("parts", "mix.large", "at most 50 parts")
	}
	if m.Name == "" {
		m.Name = m.ID
	}
	if m.Source == (Source{}) {
		m.Source = fromJob
	}
}

// blend is a mix made ready to split: its parts in whole numbers, in the order
// of the mix, each a material or a blend.
type blend struct {
	mix   *Mix
	parts []int64
	whole int64 // their sum
	of    []ingredient
	steps int         // parts, mixes opened up: what a task of it writes
	loss  units.Ratio // its blend loss
	from  Source      // of the loss
	// settleFrom is where mix.Settle comes from, when that is set.
	settleFrom Source
}

// ingredient is a material's index in the book, or a blend.
type ingredient struct {
	material int
	blend    *blend
}

// wholeParts multiplies the parts up until all are whole; ok is false past
// maxWhole.
func wholeParts(parts []Part) (out []int64, sum int64, ok bool) {
	common := int64(1)
	for _, p := range parts {
		common = common / gcd(common, p.Den) * p.Den
		if common > maxWhole {
			return nil, 0, false
		}
	}
	out = make([]int64, len(parts))
	shared := int64(0)
	for i, p := range parts {
		out[i] = p.Num * (common / p.Den)
		shared = gcd(shared, out[i])
	}
	for i := range out {
		out[i] /= max(shared, 1)
		sum += out[i]
	}
	return out, sum, sum <= maxWhole
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// spread adds what v of the blend, loose, takes of each material to needs,
// which the book's material indexes address. A mix inside the mix loses its
// own volume first. ok is false past [units.MaxVolume].
func (b *blend) spread(v Span, needs []Span) (ok bool) {
	var room [3][16]units.Volume
	low := appendSplit(room[0][:0], v.Low, b.parts)
	plan := appendSplit(room[1][:0], v.Plan, b.parts)
	high := appendSplit(room[2][:0], v.High, b.parts)
	for i, in := range b.of {
		part := Span{low[i], plan[i], high[i]}
		if in.blend != nil {
			grown, ok := part.mulDiv(without(in.blend.loss))
			if !ok || !in.blend.spread(grown, needs) {
				return false
			}
			continue
		}
		if needs[in.material], ok = needs[in.material].plus(part); !ok {
			return false
		}
	}
	return true
}

// without returns n/d, the factor that makes up for a loss: 1 / (1 - loss).
func without(loss units.Ratio) (n, d int64) { return loss.Den(), loss.Den() - loss.Num() }
