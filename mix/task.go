package mix

import (
	"strings"

	"example.org/barrow/mix/json"
	"example.org/barrow/units"
	"example.org/barrow/units/message"
)

// Task is one piece of work: exactly one of Fill, Amend, Backfill and Cover is
// set.
type Task struct {
	Name string // what the plan calls it, or ""

	// Mix or Material says what goes in: one of the two. A backfill may have
	// neither.
	Mix, Material string

	// Settle and BlendLoss override the mix's and the catalogue's allowances;
	// nil takes those. Spare is what the grower wants on top.
	Settle, BlendLoss *units.Ratio
	Spare             units.Ratio

	Fill     *Fill
	Amend    *Amend
	Backfill *Backfill
	Cover    *Cover
}

// Kind is the word for what the task does: "fill", "amend", "backfill",
// "cover", or "" when it is not set.
func (t *Task) Kind() string {
	switch {
	case t.Fill != nil:
		return "fill"
	case t.Amend != nil:
		return "amend"
	case t.Backfill != nil:
		return "backfill"
	case t.Cover != nil:
		return "cover"
	}
	return ""
}

// kinds counts what is set.
func (t *Task) kinds() (n int) {
	for _, set := range []bool{t.Fill != nil, t.Amend != nil, t.Backfill != nil, t.Cover != nil} {
		if set {
			n++
		}
	}
	return n
}

var taskKinds = []string{"fill", "amend", "backfill", "cover"}

var taskFields = []field[*Task]{
	{"kind", "fill, amend, backfill or cover", "what the task does", func(c *checker, n *json.Node, t *Task) {}},
	{"name", "a name", "what the plan calls it", func(c *checker, n *json.Node, t *Task) { t.Name = readName(c, n) }},
	{"mix", "a mix or parts", `what goes in: "potting", or "bark-fines 3, peat 1"; or material`, func(c *checker, n *json.Node, t *Task) { t.Mix = readWord(c, n, "a mix") }},
	{"material", "a material", "what goes in; or mix", func(c *checker, n *json.Node, t *Task) { t.Material = readWord(c, n, "a material") }},
	{"settle", "share", "loose volume lost in place; for a layer, 0% when left out", func(c *checker, n *json.Node, t *Task) { t.Settle = readLoss(c, n) }},
	{"blend_loss", "share", "volume lost when the parts are mixed, over the mix's own", func(c *checker, n *json.Node, t *Task) { t.BlendLoss = readLoss(c, n) }},
	{"spare", "share", "what you want on top; 0% when left out", func(c *checker, n *json.Node, t *Task) { t.Spare = readShare(c, n, tenfold) }},
}

var tenfold = units.Percent(1000)

// readTask reads a task: its kind first, wherever it stands, since that says
// which other fields it takes.
func readTask(c *checker, n *json.Node, t *Task) {
	kind := ""
	if k := n.Field("kind"); k != nil {
		c.path.push("kind")
		kind = oneOf(c, k, taskKinds...)
		c.path.pop()
	} else if n.Kind == json.Object {
		c.problemAt("kind", "field.missing", "say what the task does: fill, amend, backfill or cover")
	}
	switch kind {
	case "fill":
		t.Fill = &Fill{}
		readObject(c, n, t, "a fill task", taskFields, fillFields)
	case "amend":
		t.Amend = &Amend{}
		readObject(c, n, t, "an amend task", taskFields, amendFields)
	case "backfill":
		t.Backfill = &Backfill{}
		readObject(c, n, t, "a backfill task", taskFields, backfillFields)
	case "cover":
		t.Cover = &Cover{}
		readObject(c, n, t, "a cover task", taskFields, coverFields)
	default: // its fields wait until its kind is known
		if n.Kind != json.Object {
			readObject(c, n, t, "a task", taskFields)
		}
	}
}

// filling returns what goes in, ready to split; nil with a problem when it
// names nothing, and nil without one when neither is given and it is optional.
func (t *Task) filling(c *checker, b *book, optional bool) *blend {
	switch {
	case t.Mix != "" && t.Material != "":
		c.problemAt("material", "field.both", "give mix or material, not both")
	case t.Mix != "":
		return t.namedMix(c, b)
	case t.Material != "":
		return t.namedMaterial(c, b)
	case !optional && c.clean("mix", "material"):
		c.problemAt("material", "field.missing", "say what goes in: a material, or a mix")
	}
	return nil
}

func (t *Task) namedMix(c *checker, b *book) *blend {
	if bl, ok := b.blends[t.Mix]; ok {
		return bl
	}
	if _, ok := b.mixes[t.Mix]; ok {
		return nil // a mix with problems of its own
	}
	c.path.push("mix")
	defer c.path.pop()
	if strings.ContainsAny(t.Mix, " ,") {
		return b.spelledOut(c, t.Mix)
	}
	if _, ok := b.material[t.Mix]; ok {
		c.problem("mix.unknown", message.Of(`a material, not a mix: write "material": "{0}"`, t.Mix))
	} else {
		c.add(c.unknown("mix.unknown", t.Mix, b.mixNames(), `name its parts, such as "bark-fines 3, peat 1", or define it under mixes; barrow list mixes shows some`))
	}
	return nil
}

// spelledOut makes ready a mix that a task spells out in place of a name.
func (b *book) spelledOut(c *checker, text string) *blend {
	m, err := ParseMix(text)
	if err != nil {
		c.unitsError(err)
		return nil
	}
	m.Name = b.tongue.Print(byNumbers, m.numbers)
	if b.checkParts(c, &m); !c.sound() {
		return nil
	}
	if b.leaves(&m, map[string]int{}) > maxLeaves {
		c.problem("mix.large", "too many materials once its mixes are opened up")
		return nil
	}
	return b.ready(&m)
}

func (t *Task) namedMaterial(c *checker, b *book) *blend {
	if index, ok := b.material[t.Material]; ok {
		return b.pure(index)
	}
	c.path.push("material")
	if _, ok := b.mixes[t.Material]; ok {
		c.problem("material.unknown", message.Of(`a mix, not a material: write "mix": "{0}"`, t.Material))
	} else {
		b.unknownMaterial(c, t.Material)
	}
	c.path.pop()
	return nil
}
